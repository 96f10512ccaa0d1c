import type { WeatherIssue } from "../../src/weather/index.js";
import { type MetarReport, metarsOf } from "../../src/weather/metar.js";
import { splitReports } from "../../src/weather/reports.js";
import { tafsOf } from "../../src/weather/taf.js";
import type { TafReport } from "../../src/weather/taf-report.js";

/** Reports read from one text. Faulty ones are left out and named in `warnings`; with none left, nothing is read. */
export type ReportReading<T> =
  | { readonly ok: true; readonly reports: readonly T[]; readonly warnings: readonly WeatherIssue[] }
  | { readonly ok: false; readonly issues: readonly WeatherIssue[] };

/**
 * Reads every METAR and SPECI of a text, oldest first; TAFs in it are left to `readTaf`, landing trends are not used.
 * `reference` [s since epoch] lies near the reports and settles month and year. Of two reports of one station and
 * time the correction, or else the later in the text, stands.
 * @example readMetar("METAR XXRV 092350Z 24008KT CAVOK M27/M30 Q1013=", { reference: 1768003200 })
 */
export function readMetar(text: string, options: { readonly reference: number }): ReportReading<MetarReport> {
  const { reports, issues } = splitReports(text);
  const metars = metarsOf(reports, options.reference, issues);
  if (issues.length === 0 && !reports.some((report) => report.kind !== "TAF")) {
    issues.push({ place: "text", expected: "a METAR or SPECI", received: excerpt(text) });
  }
  return closeReading(metars, issues);
}

/**
 * Reads every TAF of a text, oldest issue first; METARs in it are left to `readMetar`. Current form only
 * (day and hour of validity, FM 51 since November 2008): the older one has no day and is named as an issue.
 * `reference` [s since epoch] lies near the time of issue and settles month and year.
 * @example readTaf("TAF XXRV 091700Z 0918/1018 24008KT CAVOK TNM27/1004Z=", { reference: 1768003200 })
 */
export function readTaf(text: string, options: { readonly reference: number }): ReportReading<TafReport> {
  const { reports, issues } = splitReports(text);
  const tafs = tafsOf(reports, options.reference, issues);
  if (issues.length === 0 && !reports.some((report) => report.kind === "TAF")) {
    issues.push({ place: "text", expected: "a TAF", received: excerpt(text) });
  }
  return closeReading(tafs, issues);
}

/** Closes a reading: whatever is usable counts as read, and faults stand beside it. */
function closeReading<T>(reports: readonly T[], issues: readonly WeatherIssue[]): ReportReading<T> {
  return reports.length > 0 ? { ok: true, reports, warnings: issues } : { ok: false, issues };
}

/** The beginning of a text, for an issue. */
function excerpt(text: string): string {
  return text.trim().replace(/\s+/g, " ").slice(0, 60) || "nothing";
}
