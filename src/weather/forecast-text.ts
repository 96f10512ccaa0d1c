import { SECONDS_OF_HOUR } from "../units/index.js";
import { combineForecast, forecastReach } from "./combine.js";
import { metarsOf } from "./metar.js";
import { splitReports } from "./reports.js";
import type { WeatherIssue, WeatherReading } from "./series.js";
import { tafsOf } from "./taf.js";
import type { TafReport, TempPoint } from "./taf-report.js";

export interface ForecastTextOptions {
  /** [s since epoch] near the reports, to settle month and year. */
  readonly reference: number;
  /** [s since epoch]: end of the series wanted; a day after the reference, or as far as it reaches, where left out. */
  readonly until?: number;
  readonly lows?: readonly TempPoint[];
  readonly highs?: readonly TempPoint[];
}

/** [s] */
const DAY = 24 * SECONDS_OF_HOUR;

/** [s since epoch] up to which `readForecastText` can read a text. */
export function reachOfForecastText(text: string, options: Omit<ForecastTextOptions, "until">): number {
  const { reports } = splitReports(text);
  const observations = metarsOf(reports, options.reference, []);
  const taf = chosenTaf(tafsOf(reports, options.reference, []), observations.at(-1)?.station, []);
  return forecastReach({ observations, taf, lows: options.lows, highs: options.highs });
}

/**
 * A series from pasted text with METARs, a TAF or both: `combineForecast` of every METAR and the newest TAF, that of
 * the METARs' station before any other.
 */
export function readForecastText(text: string, options: ForecastTextOptions): WeatherReading {
  const { reference, lows, highs } = options;
  const { reports, issues } = splitReports(text);
  const observations = metarsOf(reports, reference, issues);
  const tafs = tafsOf(reports, reference, issues);
  const taf = chosenTaf(tafs, observations.at(-1)?.station, issues);
  const sources = { observations, taf, lows, highs };
  const until = options.until ?? Math.min(reference + DAY, forecastReach(sources));
  const reading = combineForecast({ ...sources, until });
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
