import type { CsvRow } from "../weather/index.js";
import type { ColumnUse, LogIssue } from "./log-options.js";
import { kindOfTimeText } from "./log-time-text.js";
import { wordsOf } from "./log-words.js";

/** Where the time stands: one column, or date and clock in two, and the offset from UTC beside them. */
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
    "klokke klockslag heure horodatage hora fecha aika paiva pvm elapsed"
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
  const offset = names.flatMap((name, i) =>
    !uses.has(i) && namesOffset(name) && rows.some(({ cells }) => OFFSET.test(cells[i].trim())) ? [i] : [],
  );
  const [time, date, clock] = [told.time, told.date, told.clock].map((some) => preferred(names, some));
  const stamp =
    time.length === 1
      ? time
      : time.length === 0 && date.length <= 1 && clock.length === 1
        ? [...date, ...clock]
        : undefined;
  const indices = stamp === undefined ? undefined : isUtc(names, stamp) ? stamp : [...stamp, ...offset];
  if (indices === undefined) {
    issues.push({
      place: "header",
      expected:
        "one column of date and time, or one of dates and one of clock times (name them in the options)",
      received: listed(names, [...time, ...date, ...clock]),
    });
    return undefined;
  }
  return {
    indices,
    name: indices.map((i) => names[i]).join(" and "),
    zone: isUtc(names, stamp ?? []) ? "UTC" : undefined,
  };
}

const OFFSET = /^[+-]\d{1,2}:?\d{2}$/;
const UTC = ["utc", "gmt", "zulu"];

/** "UTC offset" and its short forms. */
function namesOffset(name: string): boolean {
  return /(?:utc|gmt|zone|tz|time).{0,3}(?:of|diff)|^(?:of?fse?t|tz|zone)$/i.test(name.trim());
}

function isUtc(names: readonly string[], indices: readonly number[]): boolean {
  return indices.some((i) => !namesOffset(names[i]) && wordsOf(names[i]).some((word) => UTC.includes(word)));
}

/** Of several, the one that is in UTC. */
function preferred(names: readonly string[], indices: readonly number[]): readonly number[] {
  const utc = indices.filter((i) => isUtc(names, [i]));
  return indices.length > 1 && utc.length === 1 ? utc : indices;
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
