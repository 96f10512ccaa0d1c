import fc from "fast-check";
import { expect, test } from "vitest";
import { finding } from "../../src/findings/index.js";
import { cutSeries, HOLD_HOURS, type WeatherSeries, weatherAt } from "../../src/weather/index.js";
import { english } from "../../src/words/index.js";

const HOUR = 3600;
const START = Date.UTC(2026, 0, 9, 18) / 1000;

const FIRST = finding("own-words", { text: "first hour" });
const REST = finding("own-words", { text: "rest" });

const SERIES: WeatherSeries = {
  time: Float64Array.of(START, START + HOUR, START + 3 * HOUR),
  tempAir: Float64Array.of(260, 256, 250),
  windSpeed: Float64Array.of(2, 6, 0),
  tempDewPoint: Float64Array.of(257, 253, 247),
  cloudCover: Float64Array.of(0, 1, 0.5),
  issued: START,
  origin: "invented",
  assumptions: [
    { quantity: "windSpeed", from: START, to: START + HOUR, text: FIRST },
    { quantity: "tempAir", from: START + HOUR, to: START + 3 * HOUR, text: REST },
  ],
};

function cut(from: number, to: number, holdHours?: number): WeatherSeries {
  const reading = cutSeries(SERIES, from, to, holdHours);
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading.series;
}

test("values between knots run in a straight line, and outside nothing is made up", () => {
  expect(weatherAt(SERIES, START)).toEqual({ tempAir: 260, windSpeed: 2, tempDewPoint: 257, cloudCover: 0 });
  expect(weatherAt(SERIES, START + 2 * HOUR)).toEqual({
    tempAir: 253,
    windSpeed: 3,
    tempDewPoint: 250,
    cloudCover: 0.75,
  });
  expect(weatherAt(SERIES, START + 3 * HOUR).tempAir).toBe(250);
  for (const time of [START - 1, START + 3 * HOUR + 1, Number.NaN]) {
    expect(() => weatherAt(SERIES, time)).toThrow(/invalid time/);
  }
  const single = { ...SERIES, time: Float64Array.of(START) };
  expect(weatherAt(single, START).tempAir).toBe(260);
});

test("a cut has knots at both ends, the assumptions that touch it, and the rest of the series' facts", () => {
  const part = cut(START + 0.5 * HOUR, START + 2 * HOUR);
  expect([...part.time]).toEqual([0.5, 1, 2].map((h) => START + h * HOUR));
  expect([...part.tempAir]).toEqual([258, 256, 253]);
  expect(part.assumptions.map((a) => [a.text, a.from - START, a.to - START])).toEqual([
    [FIRST, 0.5 * HOUR, HOUR],
    [REST, HOUR, 2 * HOUR],
  ]);
  expect(part).toMatchObject({ issued: START, origin: "invented" });
  expect(cut(START + 2 * HOUR, START + 2.5 * HOUR).assumptions.map((a) => a.text)).toEqual([REST]);
});

test("reaching past the ends holds the last values, each listed", () => {
  const longer = cut(START - HOUR, START + 5 * HOUR);
  expect([...longer.time].map((t) => (t - START) / HOUR)).toEqual([-1, 0, 1, 3, 5]);
  expect([longer.tempAir[0], longer.tempAir[4]]).toEqual([260, 250]);
  const held = longer.assumptions.filter((a) => english(a.text).startsWith("held"));
  expect(held).toHaveLength(8);
  expect(held.filter((a) => a.quantity === "windSpeed").map((a) => [a.from - START, a.to - START])).toEqual([
    [-HOUR, 0],
    [3 * HOUR, 5 * HOUR],
  ]);
  expect(cut(START + 4 * HOUR, START + 5 * HOUR).tempAir).toEqual(Float64Array.of(250, 250));
});

test("reaching further than is allowed is an issue at the end that fails", () => {
  const limit = START + (3 + HOLD_HOURS) * HOUR;
  expect(cutSeries(SERIES, START, limit).ok).toBe(true);
  expect(cutSeries(SERIES, START, limit + 1)).toEqual({
    ok: false,
    issues: [
      {
        place: "end of the weather (invented)",
        expected: "no later than 2026-01-10T03:00Z",
        received: "2026-01-10T03:00Z",
      },
    ],
  });
  expect(cutSeries(SERIES, START - 1, START + HOUR, 0)).toMatchObject({
    ok: false,
    issues: [{ place: "beginning of the weather (invented)" }],
  });
  expect(() => cutSeries(SERIES, START, START)).toThrow(/invalid to/);
  expect(() => cutSeries(SERIES, Number.NaN, START)).toThrow(/invalid from/);
  expect(() => cutSeries(SERIES, START, START + 1, -1)).toThrow(/invalid holdHours/);
});

test("law: cutting changes nothing inside the cut", () => {
  const inside = fc.double({ min: 0, max: 3 * HOUR, noNaN: true });
  fc.assert(
    fc.property(inside, inside, inside, (a, b, c) => {
      const [from, time, to] = [a, b, c].sort((x, y) => x - y).map((x) => START + x);
      fc.pre(from! < to!);
      const whole = weatherAt(SERIES, time!);
      const part = weatherAt(cut(from!, to!), time!);
      for (const key of ["tempAir", "windSpeed", "tempDewPoint", "cloudCover"] as const) {
        expect(part[key]).toBeCloseTo(whole[key], 6);
      }
    }),
    { numRuns: 100 },
  );
});
