import { expect, test } from "vitest";
import { celsiusFromKelvin } from "../../src/units/index.js";
import type { MetarReport } from "../../src/weather/metar.js";
import { readMetar } from "./reports.js";

const reference = Date.UTC(2026, 0, 10) / 1000;

function one(text: string): MetarReport {
  const reading = readMetar(text, { reference });
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  expect(reading.warnings).toEqual([]);
  expect(reading.reports).toHaveLength(1);
  return reading.reports[0]!;
}

function issuesOf(text: string) {
  const reading = readMetar(text, { reference });
  return reading.ok ? reading.warnings : reading.issues;
}

test("a plain report in SI", () => {
  const report = one("METAR XXRV 092350Z 24008G18KT 9999 FEW030 SCT045 M27/M30 Q1013=");
  expect(report).toMatchObject({
    station: "XXRV",
    time: Date.UTC(2026, 0, 9, 23, 50) / 1000,
    automatic: false,
    corrected: false,
    tempMax6h: undefined,
  });
  expect(celsiusFromKelvin(report.tempAir!)).toBeCloseTo(-27, 9);
  expect(celsiusFromKelvin(report.tempDewPoint!)).toBeCloseTo(-30, 9);
  expect(report.windSpeed).toBeCloseTo((8 * 1852) / 3600, 9);
  expect(report.cloudCover).toBeCloseTo(3.5 / 8, 9);
});

test("M00 is zero, not minus zero, also as tenths", () => {
  expect(one("METAR XXRV 092350Z 24008KT CAVOK M00/M00 Q1013").tempAir).toBe(273.15);
  expect(Object.is(celsiusFromKelvin(one("METAR XXRV 092350Z CAVOK M00/M01").tempAir!), -0)).toBe(false);
});

test.each([
  ["24008KT", (8 * 1852) / 3600],
  ["VRB02MPS", 2],
  ["24036KMH", 10],
  ["00000KT", 0],
  ["240P99KT", (99 * 1852) / 3600],
  ["/////KT", undefined],
  ["", undefined],
])("wind %s", (group, expected) => {
  const { windSpeed } = one(`METAR XXRV 092350Z ${group} 9999 M27/M30 Q1013`);
  if (expected === undefined) expect(windSpeed).toBeUndefined();
  else expect(windSpeed).toBeCloseTo(expected, 9);
});

test.each([
  ["CAVOK", 0],
  ["9999 NSC", 0],
  ["10SM CLR", 0],
  ["9999 NCD", 0],
  ["9999 FEW030 BKN045CB", 0.75],
  ["0300 FG VV001", 1],
  ["0300 FG VV///", 1],
  ["9999 OVC///", 1],
  ["9999 //////", undefined],
  ["9999", undefined],
])("sky %s", (groups, expected) => {
  expect(one(`METAR XXRV 092350Z 24008KT ${groups} M27/M30 Q1013`).cloudCover).toBe(expected);
});

test.each([
  ["M27/", -27],
  ["M27///", -27],
  ["M27/XX", -27],
  ["/////", undefined],
])("missing parts of the temperature group %s", (group, celsius) => {
  const report = one(`METAR XXRV 092350Z 24008KT CAVOK ${group} Q1013`);
  if (celsius === undefined) expect(report.tempAir).toBeUndefined();
  else expect(celsiusFromKelvin(report.tempAir!)).toBeCloseTo(celsius, 9);
  expect(report.tempDewPoint).toBeUndefined();
});

test("a malformed temperature group refuses the report, and others are still read", () => {
  const issues = issuesOf("METAR XXRV 092350Z 24008KT CAVOK 201/16 Q1013=");
  expect(issues).toHaveLength(1);
  expect(issues[0]).toMatchObject({ place: "METAR XXRV 092350Z, group 201/16", received: "201/16" });
  const reading = readMetar("METAR XXRV 092250Z CAVOK M26/M29= METAR XXRV 092350Z CAVOK 201/16=", {
    reference,
  });
  expect(reading).toMatchObject({ ok: true, reports: [{ time: Date.UTC(2026, 0, 9, 22, 50) / 1000 }] });
});

test("tenths that contradict the body are not used, and neither is a dew point above the air", () => {
  const text = "METAR XXRV 092350Z CAVOK M27/M30 RMK T10731101";
  expect(issuesOf(text)[0]?.place).toBe("METAR XXRV 092350Z, remark T");
  const reading = readMetar(text, { reference });
  expect(reading.ok && celsiusFromKelvin(reading.reports[0]!.tempAir!)).toBeCloseTo(-27, 9);
  const swapped = readMetar("METAR XXRV 092350Z CAVOK M30/M27", { reference });
  expect(swapped.ok && swapped.reports[0]).toMatchObject({ tempDewPoint: undefined });
  expect(issuesOf("METAR XXRV 092350Z CAVOK M80/M82")[0]?.received).toBe("-80 °C");
});

test("several reports, line breaks, bulletins, comments and corrections", () => {
  const reading = readMetar(
    `# invented
SAXX31 XXRV 092350
METAR XXRV 092250Z 24008KT
   CAVOK M26/M29
   Q1013=
XXRV 092350Z 24008KT CAVOK M27/M30 Q1013=
METAR COR XXRV 092350Z 24008KT CAVOK M28/M31 Q1013=
TAF XXRV 091700Z 0918/1018 24008KT CAVOK=
SPECI XXRW 100010Z AUTO 24008KT CAVOK M20/M21`,
    { reference },
  );
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  expect(reading.warnings).toEqual([]);
  expect(
    reading.reports.map((r) => [r.station, new Date(r.time * 1000).toISOString(), r.corrected, r.automatic]),
  ).toEqual([
    ["XXRV", "2026-01-09T22:50:00.000Z", false, false],
    ["XXRV", "2026-01-09T23:50:00.000Z", true, false],
    ["XXRW", "2026-01-10T00:10:00.000Z", false, true],
  ]);
  expect(celsiusFromKelvin(reading.reports[1]!.tempAir!)).toBeCloseTo(-28, 9);
});

test("a correction stands even when the uncorrected report comes after it", () => {
  const report = one("METAR COR XXRV 092350Z CAVOK M28/M31= METAR XXRV 092350Z CAVOK M27/M30=");
  expect(celsiusFromKelvin(report.tempAir!)).toBeCloseTo(-28, 9);
});

test.each([
  ["", "text"],
  ["TAF XXRV 091700Z 0918/1018 24008KT CAVOK", "text"],
  ["hello there", "text outside reports"],
  ["METAR XXRV 24008KT CAVOK M27/M30", "report METAR XXRV"],
  ["METAR XXRV 092350Z NIL=", "METAR XXRV 092350Z"],
  ["METAR XXRV 092450Z CAVOK M27/M30", "METAR XXRV 092450Z"],
  ["METAR XXRV 322350Z CAVOK M27/M30", "METAR XXRV 322350Z"],
])("nothing to read in %j is an issue at %s", (text, place) => {
  const reading = readMetar(text, { reference });
  expect(reading.ok).toBe(false);
  expect(issuesOf(text).map((issue) => issue.place)).toContain(place);
});

test("the trend after a report does not change what is reported", () => {
  const report = one("METAR XXRV 092350Z 24008KT CAVOK M27/M30 Q1013 BECMG 30030KT BKN010 RMK BASE OVC010");
  expect(report.windSpeed).toBeCloseTo((8 * 1852) / 3600, 9);
  expect(report.cloudCover).toBe(0);
});

test("a reference that is no number of seconds is refused", () => {
  expect(() => readMetar("METAR XXRV 092350Z CAVOK M27/M30", { reference: Number.NaN })).toThrow(
    /invalid reference/,
  );
  expect(() => readMetar("METAR XXRV 092350Z CAVOK M27/M30", { reference: reference * 1000 })).toThrow(
    /invalid/,
  );
});
