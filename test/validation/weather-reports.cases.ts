import { celsiusFromKelvin } from "../../src/units/index.js";
import type { MetarReport } from "../../src/weather/metar.js";
import type { TafReport } from "../../src/weather/taf-report.js";
import { readMetar, readTaf } from "../weather/reports.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const FM15 = "WMO-No. 306 Volume I.1, FM 15, as reproduced with python-metar";
const FMH1 = "FMH-1 (1995) 12.7.2, as reproduced with python-metar";
const PYTHON_METAR = "tests of python-metar";
const HKO = "Hong Kong Observatory, table of the change of the TAF code, November 2008";

const reference = Date.UTC(2026, 0, 26) / 1000;

function metar(groups: string): MetarReport {
  const reading = readMetar(`METAR XXRV 252350Z 24010KT 9999 FEW030 ${groups}`, { reference });
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading.reports[0]!;
}

function taf(text: string): TafReport {
  const reading = readTaf(text, { reference });
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading.reports[0]!;
}

/** [°C] temperatures of a METAR, in the order of the name. */
function celsius(groups: string, field: keyof MetarReport, expected: number, source: string): ValidationCase {
  return {
    name: `${field} of "${groups}"`,
    source,
    mark: "published",
    unit: "°C",
    expected,
    tolerance: 1e-9,
    toleranceReason: "decoding; rounding of the shift to kelvin only",
    got: () => celsiusFromKelvin(metar(groups)[field] as number),
  };
}

const PUBLISHED_TAF = "TAF XXRV 250430Z 2500/2606 24010KT 9999 FEW030 TX32/2506Z TN27/2522Z";

function tafCase(
  name: string,
  unit: string,
  expected: number,
  got: (report: TafReport) => number,
): ValidationCase {
  return {
    name: `${name} of "2500/2606 … TX32/2506Z TN27/2522Z"`,
    source: HKO,
    mark: "published",
    unit,
    expected,
    tolerance: 1e-9,
    toleranceReason: "decoding; rounding of the shift to kelvin only",
    got: () => got(taf(PUBLISHED_TAF)),
  };
}

export const WEATHER_REPORTS_VALIDATION: ValidationGroup = {
  title: "weather reports",
  part: "mathematics",
  cases: [
    celsius("M09/M12 Q0995", "tempAir", -9, `${FM15}, 15.11`),
    celsius("M00/M01 Q0995", "tempAir", 0, `${FM15}, 15.11: -0.5 is M00`),
    celsius("03/M01 A2992 RMK T00261015", "tempAir", 2.6, `${FMH1} d`),
    celsius("03/M01 A2992 RMK T00261015", "tempDewPoint", -1.5, `${FMH1} d`),
    celsius("03/ A2992 RMK T0026", "tempAir", 2.6, `${FMH1} d: dew point missing`),
    celsius("M02/M05 A2992 RMK 11021", "tempMax6h", -2.1, `${FMH1} e`),
    celsius("14/05 A2992 RMK 10142", "tempMax6h", 14.2, `${FMH1} e`),
    celsius("M00/M05 A2992 RMK 21001", "tempMin6h", -0.1, `${FMH1} f`),
    celsius("02/M05 A2992 RMK 20012", "tempMin6h", 1.2, `${FMH1} f`),
    celsius("02/M05 A2992 RMK 401001015", "tempMax24h", 10, `${FMH1} g`),
    celsius("02/M05 A2992 RMK 401001015", "tempMin24h", -1.5, `${FMH1} g`),
    celsius("10/M05 A2992 RMK 401120084", "tempMax24h", 11.2, `${FMH1} g`),
    celsius("10/M05 A2992 RMK 401120084", "tempMin24h", 8.4, `${FMH1} g`),
    celsius("18/16 A2992 RMK T01820159", "tempAir", 18.2, PYTHON_METAR),
    celsius("18/16 A2992 RMK T01820159", "tempDewPoint", 15.9, PYTHON_METAR),
    celsius("27/23 A2992", "tempAir", 27, PYTHON_METAR),
    celsius("27/23 A2992", "tempDewPoint", 23, PYTHON_METAR),
    celsius("M01/M01 A2992 RMK T10071007", "tempAir", -0.7, PYTHON_METAR),
    celsius("02/01 A2992", "tempDewPoint", 1, PYTHON_METAR),
    celsius("M05/M10 A2992 $", "tempAir", -5, PYTHON_METAR),
    celsius("M05/M10 A2992 R24/190092 $", "tempDewPoint", -10, PYTHON_METAR),
    {
      name: "wind of 24010KT",
      source: "SI Brochure, 9th edition, Table 8 note: 1 kt = 1852/3600 m/s",
      mark: "published",
      unit: "m/s",
      expected: 5.14444,
      tolerance: 5e-6,
      toleranceReason: "six figures of 10 * 1852/3600",
      got: () => metar("M05/M10").windSpeed ?? Number.NaN,
    },
    tafCase("beginning", "s", Date.UTC(2026, 0, 25) / 1000, (report) => report.from),
    tafCase("end", "s", Date.UTC(2026, 0, 26, 6) / 1000, (report) => report.to),
    tafCase("TX", "°C", 32, (report) => celsiusFromKelvin(report.highs[0]!.tempAir)),
    tafCase("time of TX", "s", Date.UTC(2026, 0, 25, 6) / 1000, (report) => report.highs[0]!.time),
    tafCase("TN", "°C", 27, (report) => celsiusFromKelvin(report.lows[0]!.tempAir)),
    tafCase("time of TN", "s", Date.UTC(2026, 0, 25, 22) / 1000, (report) => report.lows[0]!.time),
  ],
};
