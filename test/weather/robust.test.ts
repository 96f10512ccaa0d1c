import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { readEpw, readForecastText, readHourlyCsv, type WeatherReading } from "../../src/weather/index.js";

const example = (file: string) => readFileSync(`examples/weather/${file}`, "utf8");
const REPORTS = example("xxrv-metars.txt").split("\n").slice(-5).join("\n") + example("xxrv-taf.txt");
const CSV = example("ravnholt-hourly.csv").split("\n").slice(0, 12).join("\n");
const EPW = example("ravnholt.epw").split("\r\n").slice(0, 14).join("\r\n");
const reference = Date.UTC(2026, 0, 9, 18) / 1000;

/** A text with some of its characters replaced, dropped or doubled. */
function damaged(text: string) {
  const damage = fc.record({
    at: fc.nat({ max: text.length - 1 }),
    put: fc.oneof(
      fc.constantFrom("", "/", "M", "9", "-", ",", ";", "\n", '"', "T", "Z", " ", "="),
      fc.string({ maxLength: 2 }),
    ),
  });
  return fc
    .array(damage, { minLength: 1, maxLength: 8 })
    .map((edits) => edits.reduce((out, { at, put }) => out.slice(0, at) + put + out.slice(at + 1), text));
}

/** Whatever a reader accepts is a complete series; whatever it refuses it refuses with a reason. */
function sound(reading: WeatherReading): void {
  if (!reading.ok) {
    expect(reading.issues.length).toBeGreaterThan(0);
    expect(reading.issues.every((issue) => issue.place !== "" && issue.received !== "")).toBe(true);
    return;
  }
  const { time, tempAir, windSpeed, tempDewPoint, cloudCover } = reading.series;
  const knots = Array.from(time.keys()).filter(
    (i) =>
      (i === 0 || time[i]! > time[i - 1]!) &&
      tempAir[i]! > 150 &&
      tempAir[i]! < 340 &&
      windSpeed[i]! >= 0 &&
      windSpeed[i]! < 120 &&
      tempDewPoint[i]! <= tempAir[i]! + 1e-9 &&
      cloudCover[i]! >= 0 &&
      cloudCover[i]! <= 1,
  );
  expect(knots).toHaveLength(time.length);
}

test.each([
  ["reports", REPORTS, (text: string) => readForecastText(text, { reference, until: reference + 86400 })],
  ["hourly CSV", CSV, (text: string) => readHourlyCsv(text, { zone: "Europe/Oslo" })],
  ["EPW", EPW, (text: string) => readEpw(text)],
] as const)("damaged %s are read soundly or refused with a reason, never thrown at", (_, text, read) => {
  fc.assert(
    fc.property(damaged(text), (broken) => sound(read(broken))),
    { numRuns: 100 },
  );
});
