import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { celsiusFromKelvin, METRES_PER_SECOND_OF_KNOT } from "../../src/units/index.js";
import type { CsvOptions } from "../../src/weather/csv.js";
import { readHourlyCsv, type WeatherReading } from "../../src/weather/index.js";
import { english } from "../../src/words/index.js";

function read(text: string, options: CsvOptions = {}) {
  const reading = readHourlyCsv(text, options);
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading;
}

function faults(reading: WeatherReading) {
  return (reading.ok ? reading.warnings : reading.issues).map((issue) => [issue.place, issue.received]);
}

test("the example log", () => {
  const { series, warnings } = read(readFileSync("examples/weather/ravnholt-hourly.csv", "utf8"), {
    name: "ravnholt-hourly.csv",
  });
  expect(warnings).toEqual([]);
  expect(series.assumptions).toEqual([]);
  expect(series.issued).toBeUndefined();
  expect(series.time).toHaveLength(49);
  expect(series.time[0]).toBe(Date.UTC(2026, 0, 8, 23) / 1000);
  expect(celsiusFromKelvin(series.tempAir[0]!)).toBeCloseTo(-22.5, 9);
  expect(series.cloudCover[0]).toBe(2 / 8);
  expect(series.origin).toBe("file ravnholt-hourly.csv, lines 3-51");
});

test("units in the names of the columns", () => {
  const { series } = read("time,air_f,wind_kt,dew_point_f,cloud_tenths\n2026-01-10T05:00Z,-40,10,-49,3\n");
  expect(celsiusFromKelvin(series.tempAir[0]!)).toBeCloseTo(-40, 9);
  expect(series.windSpeed[0]).toBeCloseTo(10 * METRES_PER_SECOND_OF_KNOT, 9);
  expect(celsiusFromKelvin(series.tempDewPoint[0]!)).toBeCloseTo(-45, 9);
  expect(series.cloudCover[0]).toBeCloseTo(0.3, 9);
  expect(read("time,air_c,wind_kmh,cloud_fraction\n2026-01-10T05:00Z,-4,36,0.5\n").series).toMatchObject({
    windSpeed: new Float64Array([10]),
    cloudCover: new Float64Array([0.5]),
  });
});

test("relative humidity over liquid water becomes a dew point", () => {
  const { series } = read(
    "time,air_c,relative_humidity_percent\n2026-01-10T05:00Z,-20,70\n2026-01-10T06:00Z,-20,104\n",
  );
  // Inverse Magnus formula over liquid water of WMO-No. 8, Annex 4.B: e = 0.7 * 6.112 exp(17.62 t / (243.12 + t)).
  const logRatio = Math.log(0.7) + (17.62 * -20) / (243.12 - 20);
  expect(celsiusFromKelvin(series.tempDewPoint[0]!)).toBeCloseTo((243.12 * logRatio) / (17.62 - logRatio), 1);
  expect(celsiusFromKelvin(series.tempDewPoint[1]!)).toBeCloseTo(-20, 9);
});

test.each([
  ["comma", "time,air_c,wind_mps\n2026-01-10T05:00Z,-12.5,3\n"],
  ["quoted decimal comma", 'time,air_c,wind_mps\n"2026-01-10T05:00Z","-12,5","3"\n'],
  ["semicolon and decimal comma", "\ufefftime;air_c;wind_mps\r\n2026-01-10T05:00Z;-12,5;3,0\r\n"],
  ["tab and typographic minus", "time\tair_c\twind_mps\n2026-01-10T05:00Z\t\u221212.5\t3\n"],
  [
    "capitals, spaces, comments, blank lines",
    "# log\n\nTime , AIR_C , Wind_mps\n\n# x\n2026-01-10T05:00Z, -12.5 , 3\n",
  ],
])("%s", (_, text) => {
  const { series } = read(text);
  expect(celsiusFromKelvin(series.tempAir[0]!)).toBeCloseTo(-12.5, 9);
  expect(series.windSpeed[0]).toBe(3);
});

test("every faulty cell is named with its line and column, and nothing is read", () => {
  const reading = readHourlyCsv(
    "# comment\ntime,air_c,wind_mps\n2026-01-10T05:00Z,minus ten,3\n\n10 January,-10,-3\n2026-01-10T07:00Z,-99.9,4.0.1\n",
  );
  expect(reading.ok).toBe(false);
  expect(faults(reading)).toEqual([
    ["line 5, column time", "10 January"],
    ["line 3, column air_c", "minus ten"],
    ["line 5, column wind_mps", "-3"],
    ["line 6, column air_c", "-99.9"],
    ["line 6, column wind_mps", "4.0.1"],
  ]);
});

test.each([
  ["", "file"],
  ["time,air_c\n", "file"],
  ["when,air_c\n2026-01-10T05:00Z,-10\n", "header"],
  ["time,wind_mps\n2026-01-10T05:00Z,3\n", "header"],
  ["time,air_c,air_f\n2026-01-10T05:00Z,-10,14\n", "header, column 3"],
  ["time,time,air_c\n2026-01-10T05:00Z,2026-01-10T05:00Z,-10\n", "header, column 2"],
  ["time,air_c\n2026-01-10T05:00Z\n", "line 2"],
  ["time,air_c\n2026-01-10T05:00Z,-10,5\n", "line 2"],
  ['time,air_c\n"2026-01-10T05:00Z,-10\n2026-01-10T06:00Z,-10\n', "line 2"],
  ["time,air_c\n2026-01-10T05:00,-10\n", "line 2, column time"],
  ["time,air_c\n2026-01-10T05:00Z,\n", "file CSV, lines 2-2"],
])("%j is refused at %s", (text, place) => {
  const reading = readHourlyCsv(text);
  expect(reading.ok).toBe(false);
  expect(faults(reading)[0]![0]).toBe(place);
});

test("an unknown zone is an issue once and not once a row", () => {
  const reading = readHourlyCsv("time,air_c\n2026-01-10T05:00,-10\n2026-01-10T06:00,-10\n", {
    zone: "Nowhere/Ravnholt",
  });
  expect(faults(reading)).toEqual([["zone", "Nowhere/Ravnholt"]]);
});

test("an unknown column is warned of, and dew point goes before humidity", () => {
  const { series, warnings } = read(
    "time,air_c,door,dew_point_c,relative_humidity_percent\n2026-01-10T05:00Z,-10,open,-12,50\n",
  );
  expect(warnings.map((w) => w.received)).toEqual(["door, column not used", "both, dew point used"]);
  expect(celsiusFromKelvin(series.tempDewPoint[0]!)).toBeCloseTo(-12, 9);
});

test("columns that are missing are assumed on the cautious side and listed", () => {
  const { series, warnings } = read("time,air_c\n2026-01-10T05:00Z,-10\n2026-01-10T06:00Z,-12\n");
  expect(warnings).toEqual([]);
  expect([...series.windSpeed]).toEqual([5, 5]);
  expect([...series.cloudCover]).toEqual([0, 0]);
  expect(celsiusFromKelvin(series.tempDewPoint[1]!)).toBeCloseTo(-14, 9);
  expect(series.assumptions.map((a) => [a.quantity, a.to - a.from])).toEqual([
    ["windSpeed", 3600],
    ["tempDewPoint", 3600],
    ["cloudCover", 3600],
  ]);
});

test("empty cells are bridged in a straight line, at the ends held, and listed; long ones are warned of", () => {
  const hours = [0, 1, 2, 3, 4, 5];
  const wind = ["", "2", "", "", "", "6"];
  const air = ["-10", "-10", "", "-14", "-14", ""];
  const { series, warnings } = read(
    `time,air_c,wind_mps\n${hours.map((h) => `2026-01-10T0${h}:00Z,${air[h]},${wind[h]}`).join("\n")}\n`,
  );
  expect([...series.tempAir].map((t) => Math.round(celsiusFromKelvin(t)))).toEqual([-10, -10, -12, -14, -14]);
  // The last row has no air and is left out with its wind.
  expect([...series.windSpeed]).toEqual([2, 2, 2, 2, 2]);
  expect(warnings.map((w) => w.place)).toEqual(["first and last rows"]);
  const bridge = read(
    `time,air_c,wind_mps\n${hours.map((h) => `2026-01-10T0${h}:00Z,-10,${wind[h]}`).join("\n")}\n`,
  );
  expect([...bridge.series.windSpeed]).toEqual([2, 2, 3, 4, 5, 6]);
  expect(faults(bridge)).toEqual([
    ["line 4 to line 6, windSpeed", "none for 4.0 h, bridged by a straight line"],
  ]);
  const said = bridge.series.assumptions.filter((a) => a.quantity === "windSpeed").map((a) => a.text);
  expect(said.map(english)).toEqual([
    "wind missing in rows (1): nearest value held",
    "wind missing in rows (3): bridged by a straight line",
  ]);
});

test("a gap of time over 3 h is warned of with its place, length and bridge, and one of 3 h is not", () => {
  const { series, warnings } = read(
    "time,air_c\n2026-01-10T05:00Z,-10\n2026-01-10T08:00Z,-12\n2026-01-10T13:30Z,-20\n",
  );
  expect(warnings).toEqual([
    {
      place: "line 3 to line 4",
      expected: "a row at least every 3 h",
      received: "none for 5.5 h from 2026-01-10T08:00Z, bridged by a straight line",
    },
  ]);
  expect(series.assumptions.filter((a) => a.quantity === "time")).toHaveLength(1);
});

test("rows out of order are moved, repeated rows left out, contradictions refused", () => {
  const moved = read("time,air_c\n2026-01-10T06:00Z,-12\n2026-01-10T05:00Z,-10\n2026-01-10T06:00Z,-12\n");
  expect([...moved.series.tempAir].map((t) => Math.round(celsiusFromKelvin(t)))).toEqual([-10, -12]);
  expect(faults(moved)).toEqual([
    ["line 3, column time", "an earlier one, row moved to its place"],
    ["line 4, column time", "the same row again, left out"],
  ]);
  const refused = readHourlyCsv("time,air_c\n2026-01-10T06:00Z,-12\n2026-01-10T06:00Z,-13\n");
  expect(faults(refused)).toEqual([["line 3, column time", "the same time with other values"]]);
});

test("spring: the hour that does not exist is an issue", () => {
  const reading = readHourlyCsv(
    "time,air_c\n2026-03-29T01:00,-2\n2026-03-29T02:00,-2\n2026-03-29T03:00,-2\n",
    {
      zone: "Europe/Oslo",
    },
  );
  expect(faults(reading)).toEqual([["line 3, column time", "2026-03-29T02:00"]]);
});

test("autumn: the hour that comes twice is told apart by its order, or by choice where it stands once", () => {
  const log =
    "time,air_c\n2026-10-25T01:00,1\n2026-10-25T02:00,0\n2026-10-25T02:00,-1\n2026-10-25T03:00,-2\n";
  const both = read(log, { zone: "Europe/Oslo" });
  expect([...both.series.time].map((t) => (t - Date.UTC(2026, 9, 24, 23) / 1000) / 3600)).toEqual([
    0, 1, 2, 3,
  ]);
  expect(faults(both)).toEqual([
    ["line 3, column time", "2026-10-25T02:00, taken as 2026-10-25T02:00+02:00"],
    ["line 4, column time", "2026-10-25T02:00, taken as 2026-10-25T02:00+01:00"],
  ]);
  const once = "time,air_c\n2026-10-25T02:00,0\n";
  expect(faults(readHourlyCsv(once, { zone: "Europe/Oslo" }))).toEqual([
    ["line 2, column time", "2026-10-25T02:00"],
  ]);
  const chosen = read(once, { zone: "Europe/Oslo", overlap: "later" });
  expect(chosen.series.time[0]).toBe(Date.UTC(2026, 9, 25, 1) / 1000);
});

test("a file that is a forecast keeps its time of issue", () => {
  const issued = Date.UTC(2026, 0, 10) / 1000;
  expect(read("time,air_c\n2026-01-10T05:00Z,-10\n", { issued }).series.issued).toBe(issued);
});

test("law: what is written comes back, with either decimal sign", () => {
  const row = fc.record({
    air: fc.integer({ min: -600, max: 300 }),
    wind: fc.integer({ min: 0, max: 300 }),
  });
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 20 }), fc.boolean(), (rows, comma) => {
      const number = (tenths: number) => (tenths / 10).toFixed(1).replace(".", comma ? "," : ".");
      const cut = comma ? ";" : ",";
      const text = ["time", "air_c", "wind_mps"].join(cut);
      const lines = rows.map(({ air, wind }, i) =>
        [new Date(i * 3_600_000).toISOString(), number(air), number(wind)].join(cut),
      );
      const { series } = read(`${text}\n${lines.join("\n")}`);
      rows.forEach(({ air, wind }, i) => {
        expect(celsiusFromKelvin(series.tempAir[i]!)).toBeCloseTo(air / 10, 9);
        expect(series.windSpeed[i]).toBeCloseTo(wind / 10, 9);
      });
    }),
    { numRuns: 60 },
  );
});
