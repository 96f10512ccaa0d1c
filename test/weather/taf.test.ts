import { expect, test } from "vitest";
import { celsiusFromKelvin, METRES_PER_SECOND_OF_KNOT } from "../../src/units/index.js";
import type { TafReport } from "../../src/weather/taf-report.js";
import { cautiousChanges, tafConditionsAt } from "../../src/weather/taf-timeline.js";
import { readTaf } from "./reports.js";

const reference = Date.UTC(2026, 0, 9, 18) / 1000;
const at = (day: number, hour: number, minute = 0) => Date.UTC(2026, 0, day, hour, minute) / 1000;
const knots = (value: number) => value * METRES_PER_SECOND_OF_KNOT;

function one(text: string): TafReport {
  const reading = readTaf(text, { reference });
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  expect(reading.warnings).toEqual([]);
  expect(reading.reports).toHaveLength(1);
  return reading.reports[0]!;
}

const FULL = `TAF AMD XXRV 091700Z 0918/1018 24008KT 9999 BKN030 TXM14/0918Z TXM12/1012Z TNM27/1006Z TNM00/1018Z
  BECMG 0920/0922 31015KT SCT010
  TEMPO 1000/1006 CAVOK
  PROB30 TEMPO 1006/1010 33020G35KT OVC008
  PROB40 1010/1011 33004KT
  FM101230 VRB02KT 9999 OVC020=`;

test("every part of a TAF", () => {
  const taf = one(FULL);
  expect(taf).toMatchObject({
    station: "XXRV",
    issued: at(9, 17),
    from: at(9, 18),
    to: at(10, 18),
    amended: true,
  });
  expect(taf.changes.map((c) => [c.kind, c.from, c.to, c.probability])).toEqual([
    ["BECMG", at(9, 20), at(9, 22), undefined],
    ["TEMPO", at(10, 0), at(10, 6), undefined],
    ["TEMPO", at(10, 6), at(10, 10), 30],
    ["PROB", at(10, 10), at(10, 11), 40],
    ["FM", at(10, 12, 30), at(10, 18), undefined],
  ]);
});

test("every TX and TN is kept, in order of time", () => {
  const { lows, highs } = one(FULL);
  expect(highs.map((p) => [p.time, Math.round(celsiusFromKelvin(p.tempAir))])).toEqual([
    [at(9, 18), -14],
    [at(10, 12), -12],
  ]);
  expect(lows.map((p) => p.time)).toEqual([at(10, 6), at(10, 18)]);
  expect(lows[1]!.tempAir).toBe(273.15);
});

test("prevailing wind and sky: steps at FM, straight lines through BECMG", () => {
  const taf = one(FULL);
  expect(tafConditionsAt(taf, at(9, 19)).windSpeed).toBeCloseTo(knots(8), 9);
  expect(tafConditionsAt(taf, at(9, 21)).windSpeed).toBeCloseTo(knots(11.5), 9);
  expect(tafConditionsAt(taf, at(9, 21)).cloudCover).toBeCloseTo((0.75 + 3.5 / 8) / 2, 9);
  expect(tafConditionsAt(taf, at(9, 23)).windSpeed).toBeCloseTo(knots(15), 9);
  expect(tafConditionsAt(taf, at(10, 12)).windSpeed).toBeCloseTo(knots(15), 9);
  expect(tafConditionsAt(taf, at(10, 12, 30))).toEqual({ windSpeed: knots(2), cloudCover: 1 });
});

test("TEMPO and PROB count only where they are windier or clearer, and leave the rest unchanged", () => {
  const taf = one(FULL);
  expect(tafConditionsAt(taf, at(10, 3))).toEqual({ windSpeed: knots(15), cloudCover: 0 });
  expect(tafConditionsAt(taf, at(10, 8))).toEqual({ windSpeed: knots(20), cloudCover: 3.5 / 8 });
  expect(tafConditionsAt(taf, at(10, 10, 30))).toEqual({ windSpeed: knots(15), cloudCover: 3.5 / 8 });
  expect(cautiousChanges(taf).map((c) => c.from)).toEqual([at(10, 0), at(10, 6)]);
});

test("a validity to hour 24 ends at midnight", () => {
  expect(one("TAF XXRV 091700Z 0918/0924 24008MPS 9999 NSC=").to).toBe(at(10, 0));
});

test("a turn of the month and of the year", () => {
  const reading = readTaf("TAF XXRV 311700Z 3118/0118 24008KT CAVOK TNM20/0106Z", { reference: at(1, 0) });
  expect(reading).toMatchObject({
    ok: true,
    reports: [{ issued: Date.UTC(2025, 11, 31, 17) / 1000, to: at(1, 18), lows: [{ time: at(1, 6) }] }],
  });
});

test.each([
  ["TAF XXRV 091700Z NIL=", "a forecast"],
  ["TAF XXRV 091700Z 0918/1018 CNL=", "a forecast"],
  ["TAF XXRV 091700Z 250024 24008KT 9999 FEW030 TX32/06Z TN27/22Z", "validity such as 0918/1018"],
  ["TAF XXRV 091700Z 1018/0918 24008KT CAVOK", "validity such as 0918/1018, of at most 36 h"],
  ["TAF XXRV 0918/1018 24008KT CAVOK", "a station and the time of the report, such as XXRV 092350Z"],
  ["METAR XXRV 092350Z CAVOK M27/M30", "a TAF"],
])("%s is refused", (text, expected) => {
  const reading = readTaf(text, { reference });
  expect(reading).toMatchObject({ ok: false, issues: [{ expected }] });
});

test.each([
  ["TX32/06Z", "group TX32/06Z"],
  ["TNM99/1006Z", "group TNM99/1006Z"],
  ["TEMPO 0306 30020KT", "TAF XXRV 091700Z"],
  ["BECMG 1020/1022 30020KT", "BECMG 1020/1022 30020KT"],
])("the faulty part %s is named and the rest is read", (part, place) => {
  const reading = readTaf(`TAF XXRV 091700Z 0918/1018 24008KT CAVOK ${part}`, { reference });
  if (!reading.ok) throw new Error("refused");
  expect(reading.warnings).toHaveLength(1);
  expect(reading.warnings[0]!.place).toContain(place);
  expect(reading.reports[0]).toMatchObject({ base: { windSpeed: knots(8), cloudCover: 0 }, changes: [] });
});
