import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { createTemplateSource, readTaf } from "../../src/weather/index.js";

const TEMPLATE = "https://weather.example/{kind}?station={station}";
const RECORDED: Readonly<Record<string, string>> = {
  "https://weather.example/taf?station=XXRV": readFileSync("examples/weather/recorded-taf-reply.txt", "utf8"),
  "https://weather.example/metar?station=XXRV": " \n",
};

const source = createTemplateSource(TEMPLATE, async (url) => {
  const text = RECORDED[url];
  if (text === undefined) throw new Error("404");
  return text;
});

test("the recorded reply is fetched from the filled template and reads as the TAF of the examples", async () => {
  const reply = await source.fetchText({ station: "XXRV", kind: "TAF" });
  if (!reply.ok) throw new Error(JSON.stringify(reply.issues));
  const reference = Date.UTC(2026, 0, 9, 18) / 1000;
  const taf = readTaf(reply.text, { reference });
  const example = readTaf(readFileSync("examples/weather/xxrv-taf.txt", "utf8"), { reference });
  expect(taf).toMatchObject({ ok: true, warnings: [] });
  expect(taf).toEqual(example);
});

test.each([
  ["XXRW", "TAF", "https://weather.example/taf?station=XXRW", "404"],
  ["XXRV", "METAR", "https://weather.example/metar?station=XXRV", "an empty reply"],
  ["../x", "TAF", "station", "../x"],
] as const)("%s %s is an issue at %s", async (station, kind, place, received) => {
  expect(await source.fetchText({ station, kind })).toMatchObject({
    ok: false,
    issues: [{ place, received }],
  });
});

test.each(["weather.example/{station}", "https://weather.example/taf"])(
  "template %s is refused",
  (template) => {
    expect(() => createTemplateSource(template, async () => "")).toThrow(/invalid template/);
  },
);
