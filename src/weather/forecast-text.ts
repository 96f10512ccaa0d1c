import { combineForecast } from "./combine.js";
import { metarsOf } from "./metar.js";
import { splitReports } from "./reports.js";
import type { WeatherIssue, WeatherReading } from "./series.js";
import { tafsOf } from "./taf.js";
import type { TafReport, TempPoint } from "./taf-report.js";

export interface ForecastTextOptions {
  /** [s since epoch] near the reports, to settle month and year. */
  readonly reference: number;
  /** [s since epoch]: end of the series wanted. */
  readonly until: number;
  readonly lows?: readonly TempPoint[];
  readonly highs?: readonly TempPoint[];
}

/**
 * A series from pasted text with METARs, a TAF or both: `combineForecast` of every METAR and the newest TAF, that of
 * the METARs' station before any other.
 */
export function readForecastText(text: string, options: ForecastTextOptions): WeatherReading {
  const { reference, until, lows, highs } = options;
  const { reports, issues } = splitReports(text);
  const observations = metarsOf(reports, reference, issues);
  const tafs = tafsOf(reports, reference, issues);
  const taf = chosenTaf(tafs, observations.at(-1)?.station, issues);
  const reading = combineForecast({ observations, taf, lows, highs, until });
  return reading.ok
    ? { ...reading, warnings: [...issues, ...reading.warnings] }
    : { ok: false, issues: [...issues, ...reading.issues] };
}

function chosenTaf(
  tafs: readonly TafReport[],
  station: string | undefined,
  issues: WeatherIssue[],
): TafReport | undefined {
  const chosen = tafs.findLast((taf) => taf.station === station) ?? tafs.at(-1);
  for (const other of new Set(tafs.map((taf) => taf.station))) {
    if (other === chosen?.station) continue;
    issues.push({
      place: `TAF ${other}`,
      expected: `one station, here ${chosen?.station}`,
      received: `${other}, TAF left out`,
    });
  }
  return chosen;
}
