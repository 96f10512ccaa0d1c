import { finding } from "../findings/index.js";
import { seriesFromRows, type WeatherRow } from "./assemble.js";
import { type EpwRow, inSpan, type MonthDay, monthDayOf, rowYears } from "./epw-dates.js";
import { EPW_HEADERS, type EpwLocation, locationOf, numberOf, rowsPerHour } from "./epw-header.js";
import { weatherRow } from "./epw-row.js";
import { inTimeOrder } from "./row-order.js";
import type { WeatherIssue, WeatherReading } from "./series.js";

// The format is that of "Auxiliary Programs", EnergyPlus documentation, chapter "EnergyPlus Weather File (EPW) Data
// Dictionary": 8 header records, then rows of 35 columns.

export interface EpwOptions {
  /** First and last day wanted as month-day, "11-15"; a span over New Year such as "11-15" to "03-15" is allowed. Whole file without. */
  readonly from?: string;
  readonly to?: string;
  /** Year given to the first row used. Needed where the months of the file come from different years (typical year). */
  readonly year?: number;
  /** Name of the file, for `origin`. */
  readonly name?: string;
}

export type EpwReading = WeatherReading & { readonly location?: EpwLocation };

/** A row must reach total sky cover (column 23); in some files the columns after it are cut short. */
const COLUMNS_NEEDED = 23;
/** More issues than this are the same fault over and over. */
const MOST_ISSUES = 50;

/**
 * Reads an EPW file, or the days from `from` to `to` of it. Hour h of a row (1-24) ends at h o'clock local standard
 * time, where its temperature, wind and sky are placed. Missing codes (99.9, 999, 99) are missing values; a missing
 * dew point is made of the relative humidity. The horizontal infrared column is not used.
 */
export function readEpw(text: string, options: EpwOptions = {}): EpwReading {
  const issues: WeatherIssue[] = [];
  const warnings: WeatherIssue[] = [];
  const span = spanOf(options);
  const lines = text.replace(/^\ufeff/, "").split(/\r\n|\r|\n/);
  const location = locationOf(lines, issues);
  const perHour = rowsPerHour(lines[7] ?? "", issues);
  if (location === undefined || issues.length > 0) return { ok: false, issues };
  const clock = { zoneHours: location.zoneHours, rowsPerHour: perHour };
  const rows = dataRows(lines, span, issues);
  const years = rowYears(rows, options.year, issues);
  const weather = rows.map((row, i) => weatherRow(row, years?.[i] ?? row.year, clock, issues));
  const ordered = inTimeOrder(weather, issues, warnings);
  if (rows.length === 0 && issues.length === 0) {
    issues.push({ place: "span", expected: "at least one row", received: "none between these days" });
  }
  if (issues.length > 0) return { ok: false, issues: shortened(issues), location };
  const name = options.name ?? `EPW ${location.name}`;
  const origin = `file ${name}, lines ${rows[0]?.line}-${rows.at(-1)?.line}`;
  const reading = seriesFromRows(ordered, { origin });
  if (!reading.ok) return { ...reading, location };
  const read = rows.map((row) => row.year);
  const assumptions = read.every((year, i) => year === years?.[i])
    ? reading.series.assumptions
    : [...reading.series.assumptions, yearAssumption(ordered, read, years ?? [])];
  return {
    ok: true,
    series: { ...reading.series, assumptions },
    warnings: [...warnings, ...reading.warnings],
    location,
  };
}

function spanOf({ from, to, year }: EpwOptions): { from: MonthDay; to: MonthDay } | undefined {
  if (year !== undefined && !(Number.isInteger(year) && year >= 1900 && year <= 2200)) {
    throw new RangeError(`invalid year: ${year} (expected a whole year from 1900 to 2200)`);
  }
  if (from === undefined && to === undefined) return undefined;
  return { from: monthDayOf("from", from ?? "01-01"), to: monthDayOf("to", to ?? "12-31") };
}

function dataRows(
  lines: readonly string[],
  span: { from: MonthDay; to: MonthDay } | undefined,
  issues: WeatherIssue[],
): EpwRow[] {
  const rows: EpwRow[] = [];
  for (let i = EPW_HEADERS.length; i < lines.length; i++) {
    if (lines[i]!.trim() === "") continue;
    const cells = lines[i]!.split(",").map((cell) => cell.trim());
    const place = `line ${i + 1}`;
    const [year, month, day] = cells.slice(0, 3).map(numberOf);
    if (cells.length < COLUMNS_NEEDED || !isDate(year, month, day)) {
      issues.push({
        place,
        expected: "35 columns that begin with year, month and day",
        received: lines[i]!.slice(0, 40),
      });
      continue;
    }
    const row = { line: i + 1, place, cells, year: year!, month: month!, day: day! };
    if (span === undefined || inSpan(row, span.from, span.to)) rows.push(row);
  }
  // A span over New Year begins in autumn, wherever the file begins.
  if (span === undefined || !wraps(span)) return rows;
  const early = (row: EpwRow) => row.month * 100 + row.day <= span.to.month * 100 + span.to.day;
  return [...rows.filter((row) => !early(row)), ...rows.filter(early)];
}

function yearAssumption(rows: readonly WeatherRow[], read: readonly number[], years: readonly number[]) {
  const list = [...new Set(read)].join(", ");
  return {
    quantity: "time" as const,
    from: rows[0]!.time,
    to: rows.at(-1)!.time,
    text: finding("years-moved", { from: list, to: [...new Set(years)].join(", ") }),
  };
}

function isDate(year = Number.NaN, month = Number.NaN, day = Number.NaN): boolean {
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

function wraps(span: { from: MonthDay; to: MonthDay }): boolean {
  return span.from.month * 100 + span.from.day > span.to.month * 100 + span.to.day;
}

function shortened(issues: readonly WeatherIssue[]): WeatherIssue[] {
  if (issues.length <= MOST_ISSUES) return [...issues];
  const rest = issues.length - MOST_ISSUES;
  return [
    ...issues.slice(0, MOST_ISSUES),
    { place: "rest of the file", expected: "no faults", received: `${rest} more` },
  ];
}
