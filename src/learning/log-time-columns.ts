import type { CsvRow } from "../weather/index.js";
import type { ColumnUse, LogIssue } from "./log-options.js";
import { kindOfTimeText } from "./log-time-text.js";
import { wordsOf } from "./log-words.js";

/** Where the time stands: one column, or date and clock in two. */
export interface TimeColumns {
  readonly indices: readonly number[];
  readonly name: string;
  /** "UTC" where the name says so. */
  readonly zone: string | undefined;
}

const ROWS_LOOKED_AT = 100;

/** Words that name a time, in a few languages of cold countries (from memory). */
const TIME_WORDS = new Set(
  (
    "time date datetime timestamp epoch unix unixtime clock zeit datum uhrzeit zeitpunkt tid tidspunkt dato klokkeslett " +
    "klokke klockslag heure horodatage hora fecha aika paiva pvm"
  ).split(" "),
);

export function namesTime(name: string): boolean {
  return wordsOf(name).some((word) => TIME_WORDS.has(word));
}

/** The time's columns: as the options say, else by their names and by what their first cells hold. */
export function timeColumnsOf(
  names: readonly string[],
  uses: ReadonlyMap<number, ColumnUse>,
  rows: readonly CsvRow[],
  issues: LogIssue[],
): TimeColumns | undefined {
  const of = (use: ColumnUse) => names.flatMap((_, i) => (uses.get(i) === use ? [i] : []));
  const told = { time: of("time"), date: of("date"), clock: of("clock") };
  if (told.time.length + told.date.length + told.clock.length === 0) {
    names.forEach((name, i) => {
      if (uses.has(i) || !namesTime(name)) return;
      const kind = firstKind(rows, i);
      if (kind !== undefined) told[kind].push(i);
    });
  }
  const { time, date, clock } = told;
  const indices =
    time.length === 1
      ? time
      : time.length === 0 && date.length === 1 && clock.length === 1
        ? [date[0], clock[0]]
        : undefined;
  if (indices === undefined) {
    issues.push({
      place: "header",
      expected:
        "one column of date and time, or one of dates and one of clock times (name them in the options)",
      received: listed(names, [...time, ...date, ...clock]),
    });
    return undefined;
  }
  const words = indices.flatMap((i) => wordsOf(names[i]));
  return {
    indices,
    name: indices.map((i) => names[i]).join(" and "),
    zone: words.some((word) => word === "utc" || word === "gmt") ? "UTC" : undefined,
  };
}

/** What the first cell holds that is a time at all; the first rows of a log may be faulty. */
function firstKind(rows: readonly CsvRow[], index: number): "time" | "date" | "clock" | undefined {
  for (const { cells } of rows.slice(0, ROWS_LOOKED_AT)) {
    const kind = kindOfTimeText(cells[index]);
    if (kind !== undefined) return kind;
  }
  return undefined;
}

function listed(names: readonly string[], indices: readonly number[]): string {
  if (indices.length > 0) return `several: ${indices.map((i) => names[i]).join(", ")}`;
  return `none among ${names.join(", ")}`;
}
