import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { celsiusFromKelvin } from "../../src/units/index.js";
import type { EpwOptions } from "../../src/weather/epw.js";
import { readEpw } from "../../src/weather/index.js";

const EXAMPLE = readFileSync("examples/weather/ravnholt.epw", "utf8");
const HEADER = EXAMPLE.split("\r\n").slice(0, 8).join("\n");

function read(text: string, options: EpwOptions = {}) {
  const reading = readEpw(text, options);
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading;
}

/** A row whose columns 1-5, 7-9, 22 and 23 are given; the rest as in the example. */
function row(date: string, hour: number, values: Record<number, string> = {}): string {
  const cells = EXAMPLE.split("\r\n")[8]!.split(",");
  const [year, month, day] = date.split("-").map((part) => String(Number(part)));
  cells.splice(0, 4, year!, month!, day!, String(hour));
  for (const [column, value] of Object.entries(values)) cells[Number(column) - 1] = value;
  return cells.join(",");
}

function file(rows: readonly string[]): string {
  return `${HEADER}\n${rows.join("\n")}\n`;
}

test("the example file: place, local standard time, every row", () => {
  const { series, warnings, location } = read(EXAMPLE, { name: "ravnholt.epw" });
  expect(warnings).toEqual([]);
  expect(series.assumptions).toEqual([]);
  expect(location).toEqual({
    name: "Ravnholt Strip (invented)",
    latitude: 66.6,
    longitude: 15,
    zoneHours: 1,
    elevation: 140,
  });
  expect(series.time).toHaveLength(168);
  // Hour 1 of 12 January ends at 01:00 local standard time, UTC+1.
  expect(series.time[0]).toBe(Date.UTC(2026, 0, 12) / 1000);
  expect(series.time[167]).toBe(Date.UTC(2026, 0, 18, 23) / 1000);
  expect(celsiusFromKelvin(series.tempAir[0]!)).toBeCloseTo(-22.5, 9);
  expect(series.windSpeed[0]).toBeCloseTo(2.8, 9);
  expect(series.cloudCover[0]).toBeCloseTo(0.2, 9);
  expect(series.origin).toBe("file ravnholt.epw, lines 9-176");
});

test("a span of days", () => {
  const { series } = read(EXAMPLE, { from: "01-13", to: "01-14" });
  expect(series.time).toHaveLength(48);
  expect(series.time[0]).toBe(Date.UTC(2026, 0, 13) / 1000);
  expect(readEpw(EXAMPLE, { from: "03-01", to: "03-02" })).toMatchObject({
    ok: false,
    issues: [{ place: "span" }],
  });
  expect(() => readEpw(EXAMPLE, { from: "13-01" })).toThrow(/invalid from/);
  expect(() => readEpw(EXAMPLE, { to: "02-30" })).toThrow(/invalid to/);
  expect(() => readEpw(EXAMPLE, { year: 26.5 })).toThrow(/invalid year/);
});

test("a winter over New Year out of one calendar year, in order of time, its years listed", () => {
  const text = file([
    row("2026-01-01", 1),
    row("2026-01-01", 2),
    row("2026-12-31", 23),
    row("2026-12-31", 24),
  ]);
  const { series } = read(text, { from: "12-31", to: "01-01" });
  expect([...series.time]).toEqual([22, 23, 24, 25].map((h) => Date.UTC(2026, 11, 31, h) / 1000));
  expect(series.assumptions).toMatchObject([
    { quantity: "time", text: { code: "years-moved", values: { to: "2026, 2027" } } },
  ]);
});

test("months of different years need a year to be placed in", () => {
  const text = file([row("2003-01-31", 24), row("1998-02-01", 1)]);
  expect(readEpw(text)).toMatchObject({
    ok: false,
    issues: [{ place: "option year", received: "2003, 1998" }],
  });
  const { series } = read(text, { year: 2026 });
  expect([...series.time]).toEqual([23, 24].map((h) => Date.UTC(2026, 0, 31, h) / 1000));
  const leap = file([row("2004-02-29", 1)]);
  expect(readEpw(leap, { year: 2026 })).toMatchObject({ ok: false, issues: [{ received: "29 February" }] });
  expect(read(leap).series.time).toHaveLength(1);
});

test("years that run on need no year", () => {
  const { series } = read(file([row("2025-12-31", 24), row("2026-01-01", 1)]));
  expect([...series.time]).toEqual([23, 24].map((h) => Date.UTC(2025, 11, 31, h) / 1000));
  expect(series.assumptions).toEqual([]);
});

test("missing codes: bridged, made of humidity, or assumed throughout", () => {
  const missing = { 7: "99.9", 8: "99.9", 9: "999", 22: "999", 23: "99" };
  const { series } = read(
    file([
      row("2026-01-12", 1),
      row("2026-01-12", 2, missing),
      row("2026-01-12", 3, { 7: "-26.5", 8: "99.9", 9: "100" }),
    ]),
  );
  expect(celsiusFromKelvin(series.tempAir[1]!)).toBeCloseTo((-22.5 - 26.5) / 2, 9);
  expect(celsiusFromKelvin(series.tempDewPoint[2]!)).toBeCloseTo(-26.5, 6);
  expect(series.assumptions.map((a) => a.quantity)).toEqual([
    "tempAir",
    "windSpeed",
    "tempDewPoint",
    "cloudCover",
  ]);
  const bare = { 8: "99.9", 9: "999", 22: "999", 23: "99" };
  const assumed = read(file([row("2026-01-12", 1, bare), row("2026-01-12", 2, bare)])).series;
  expect([...assumed.windSpeed, ...assumed.cloudCover]).toEqual([5, 5, 0, 0]);
});

test("a hole of more than 3 h is warned of", () => {
  const rows = [1, 2, 3, 4, 5, 6].map((hour) =>
    row("2026-01-12", hour, hour > 1 && hour < 6 ? { 22: "999" } : {}),
  );
  expect(read(file(rows)).warnings).toMatchObject([
    { place: "line 10 to line 13, windSpeed", received: "none for 5.0 h, bridged by a straight line" },
  ]);
});

test("faulty cells are named with line and column", () => {
  const reading = readEpw(
    file([
      row("2026-01-12", 1, { 7: "cold" }),
      row("2026-01-12", 25),
      row("2026-01-12", 3, { 23: "11" }),
      "2026,1,12",
    ]),
  );
  expect(reading.ok ? [] : reading.issues.map((issue) => [issue.place, issue.received])).toEqual([
    ["line 12", "2026,1,12"],
    ["line 9, column 7 (dry bulb °C)", "cold"],
    ["line 10, column 4 (hour)", "25"],
    ["line 11, column 23 (total sky cover, tenths)", "11"],
  ]);
});

test("a file that is no EPW is refused by its header, and endless faults are cut short", () => {
  expect(readEpw("time,air_c\n2026-01-10T05:00Z,-10\n")).toMatchObject({
    ok: false,
    issues: expect.arrayContaining([{ place: "line 1", expected: "LOCATION", received: "TIME" }]),
  });
  const rows = Array.from({ length: 80 }, () => row("2026-01-12", 1, { 7: "x" }));
  const reading = readEpw(file(rows));
  expect(reading.ok ? 0 : reading.issues.length).toBe(51);
  expect(readEpw(EXAMPLE.replace(",66.60,", ",96.60,"))).toMatchObject({
    ok: false,
    issues: [{ place: "line 1, column 7 (latitude)" }],
  });
});

test("several records an hour use the minute column", () => {
  const text = file([row("2026-01-12", 1, { 5: "30" }), row("2026-01-12", 1, { 5: "60" })]).replace(
    "DATA PERIODS,1,1",
    "DATA PERIODS,1,2",
  );
  expect([...read(text).series.time]).toEqual([
    Date.UTC(2026, 0, 11, 23, 30) / 1000,
    Date.UTC(2026, 0, 12) / 1000,
  ]);
});
