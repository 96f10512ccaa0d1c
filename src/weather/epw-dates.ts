import type { WeatherIssue } from "./series.js";

/** One data row of the file with its date. */
export interface EpwRow {
  readonly line: number;
  readonly place: string;
  readonly cells: readonly string[];
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

export interface MonthDay {
  readonly month: number;
  readonly day: number;
}

/** Month and day of "11-15". */
export function monthDayOf(name: string, text: string): MonthDay {
  const match = /^(\d{2})-(\d{2})$/.exec(text);
  const month = Number(match?.[1]);
  const day = Number(match?.[2]);
  // 2000 is a leap year, so 02-29 can be asked for.
  const date = new Date(Date.UTC(2000, month - 1, day));
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) {
    throw new RangeError(`invalid ${name}: ${text} (expected month-day such as 11-15)`);
  }
  return { month, day };
}

/** Whether a day lies from `from` to `to`, both included; a span with `to` before `from` runs over New Year. */
export function inSpan(date: MonthDay, from: MonthDay, to: MonthDay): boolean {
  const at = order(date);
  return order(from) <= order(to)
    ? at >= order(from) && at <= order(to)
    : at >= order(from) || at <= order(to);
}

/**
 * The year of each row's date on the series' axis. Where the rows' own years already ascend they stand; else (a
 * typical year, made of months of different years, or a span over New Year) rows count on from `year` and pass to the
 * next one where the date falls back. Undefined with an issue where a year is needed and not given.
 */
export function rowYears(
  rows: readonly EpwRow[],
  year: number | undefined,
  issues: WeatherIssue[],
): number[] | undefined {
  const ascending = rows.every((row, i) => i === 0 || dateNumber(row) >= dateNumber(rows[i - 1]!));
  const oneYear = new Set(rows.map((row) => row.year)).size <= 1;
  if (year === undefined && ascending && (oneYear || stepsByDays(rows))) return rows.map((row) => row.year);
  if (year === undefined && !oneYear) {
    issues.push({
      place: "option year",
      expected: "the year to place the rows in, since their own years do not run on",
      received: [...new Set(rows.map((row) => row.year))].slice(0, 6).join(", "),
    });
    return undefined;
  }
  let current = year ?? rows[0]!.year;
  return rows.map((row, i) => {
    if (i > 0 && order(row) < order(rows[i - 1]!)) current++;
    if (row.month === 2 && row.day === 29 && !isLeap(current)) {
      issues.push({ place: row.place, expected: `a date of ${current}`, received: "29 February" });
    }
    return current;
  });
}

/** Whether each row is at most a day after the one before it: then the years are real and not those of a typical year. */
function stepsByDays(rows: readonly EpwRow[]): boolean {
  return rows.every((row, i) => i === 0 || dateNumber(row) - dateNumber(rows[i - 1]!) <= 86_400_000);
}

function dateNumber(row: EpwRow): number {
  return Date.UTC(row.year, row.month - 1, row.day);
}

function order({ month, day }: MonthDay): number {
  return month * 100 + day;
}

function isLeap(year: number): boolean {
  return new Date(Date.UTC(year, 1, 29)).getUTCMonth() === 1;
}
