import { describe, expect, test } from "vitest";
import { readMessage } from "../../src/devices/mqtt-probes.js";
import type { BaseProbe } from "../../src/logbook/index.js";

const ARRIVED = Date.UTC(2026, 0, 14, 4);

/** A probe that is read from a place of its message, if any. */
function probe(pointer: string | undefined, more: object = {}): BaseProbe {
  const via = { kind: "mqtt" as const, topic: "lynx/t", ...(pointer === undefined ? {} : { pointer }) };
  return { id: "sump", name: "sump", at: "sump", unit: "c", via, ...more };
}

const sump = probe("/sump/t");
const timed = { ...sump, via: { ...sump.via!, time_pointer: "/at" } };

function read(probes: readonly BaseProbe[], payload: string, retained = false) {
  const sources = probes.map((one) => ({ aircraft: "lynx", probe: one }));
  return readMessage(sources, { payload, retained }, ARRIVED);
}

function one(of: BaseProbe, payload: string, retained = false) {
  return read([of], payload, retained);
}

test("one topic feeds several probes, each in its unit", () => {
  const { readings, issues } = read(
    [
      sump,
      probe("/heads/2", { id: "head", unit: "f", offset_c: 1 }),
      probe("/a~1b/m~0n", { id: "case", unit: "k" }),
    ],
    '{"sump":{"t":-21.5},"heads":[1,2,-40],"a/b":{"m~n":273.15}}',
  );
  expect(issues).toEqual([]);
  expect(readings).toEqual([
    { aircraft: "lynx", probe: "sump", time: ARRIVED, tempC: -21.5 },
    { aircraft: "lynx", probe: "head", time: ARRIVED, tempC: -39 },
    { aircraft: "lynx", probe: "case", time: ARRIVED, tempC: 0 },
  ]);
  expect(one(probe(undefined), " -18.25\n").readings[0]?.tempC).toBe(-18.25);
});

describe("time", () => {
  const at = (time: unknown) => one(timed, JSON.stringify({ sump: { t: 1 }, at: time }));

  test.each<[unknown, number]>([
    [ARRIVED / 1000 - 5, ARRIVED - 5000],
    [String(ARRIVED / 1000), ARRIVED],
    ["2026-01-14T05:00:00+01:00", ARRIVED],
    ["2026-01-14T04:00:00.5Z", ARRIVED + 500],
    [ARRIVED / 1000 + 120, ARRIVED + 120_000],
  ])("%j", (time, expected) => {
    expect(at(time).readings[0]?.time).toBe(expected);
  });

  test.each([
    [ARRIVED / 1000 + 121, "no later than 120 s"],
    [ARRIVED, "no later than 120 s"],
    [0, "since 2020"],
    ["2026-01-14T05:00:00", "with offset"],
    ["yesterday", "with offset"],
    [null, "with offset"],
    [undefined, "with offset"],
  ])("%j is refused: %s", (time, expected) => {
    const { readings, issues } = at(time);
    expect(readings).toEqual([]);
    expect(issues[0]).toMatchObject({ aircraft: "lynx", probe: "sump", path: "lynx/t /at" });
    expect(issues[0]?.expected).toContain(expected);
  });

  test("what the broker kept does not pass for fresh, unless it says its time", () => {
    expect(one(sump, '{"sump":{"t":1}}', true).issues[0]?.received).toBe("a kept one");
    expect(one(timed, `{"sump":{"t":1},"at":${ARRIVED / 1000 - 60}}`, true).readings[0]?.time).toBe(
      ARRIVED - 60_000,
    );
  });
});

describe("bad payloads are told, never thrown", () => {
  test.each([
    ["", "JSON", ""],
    ["{", "JSON", "{"],
    ['{"sump":{}}', "a number", "nothing"],
    ['{"sump":{"t":null}}', "a number", "null"],
    ['{"sump":{"t":true}}', "a number", "true"],
    ['{"sump":{"t":""}}', "a number", ""],
    ['{"sump":{"t":"NaN"}}', "a number", "NaN"],
    ['{"sump":{"t":"0x10"}}', "a number", "0x10"],
    ['{"sump":{"t":"-12,5"}}', "a number", "-12,5"],
    ['{"sump":{"t":-127}}', "a temperature of -90 to 400 °C", "-127 °C"],
    ['{"sump":{"t":401}}', "a temperature of -90 to 400 °C", "401 °C"],
    ['{"sump":{"t":1e999}}', "a number", "null"],
    ["[1,2]", "a number", "nothing"],
  ])("%s", (payload, expected, received) => {
    const { readings, issues } = one(sump, payload);
    expect(readings).toEqual([]);
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ expected, received });
  });

  test("empty text without a pointer is no zero", () => {
    const plain = probe(undefined);
    for (const payload of ["", " ", "off", "null"]) expect(one(plain, payload).readings).toEqual([]);
    expect(one(plain, "-0.5e1").readings[0]?.tempC).toBe(-5);
  });

  test("a number as text is taken", () => {
    expect(one(sump, '{"sump":{"t":"-12.5"}}').readings[0]?.tempC).toBe(-12.5);
  });

  test("keys of the language are no keys of the document", () => {
    expect(one(probe("/constructor/length"), "{}").readings).toEqual([]);
    expect(one(probe("/01"), "[5,6]").readings).toEqual([]);
  });
});
