import type { ProbePlace, TemperatureLog } from "./log.js";

export type TemperatureUnit = "c" | "f";

/** What a column of a log is: a probe's place, the time or one half of it, or nothing that is wanted. */
export type ColumnUse = ProbePlace | "time" | "date" | "clock" | "not-used";

/** Everything a log's file may leave unsaid. Names of columns are those of the header, capitals or not. */
export interface LogOptions {
  /** Name of the file, for `origin`. */
  readonly name?: string | undefined;
  /** IANA time zone of times that say none. */
  readonly zone?: string | undefined;
  /** Which pass of the hour that the clock repeats is meant where neither text nor neighbours tell. */
  readonly overlap?: "earlier" | "later" | undefined;
  /** Order of day and month in dates such as 03/04/2026. */
  readonly dateOrder?: "day-first" | "month-first" | undefined;
  /** What columns are; goes before what their names say. */
  readonly columns?: Readonly<Record<string, ColumnUse>> | undefined;
  /** Unit of the columns that name none, ... */
  readonly unit?: TemperatureUnit | undefined;
  /** ... and of single columns. */
  readonly units?: Readonly<Record<string, TemperatureUnit>> | undefined;
  /** Which engine is meant where the names tell of two: 1, the left one, where left out. */
  readonly engine?: 1 | 2 | undefined;
  /** [s] since 1970: a moment near the log, by which a date that can be read both ways is read. */
  readonly near?: number | undefined;
}

/** Something about a column that the file does not say; the answer goes into the options and the log is read again. */
export interface LogQuestion {
  readonly column: string;
  /** `columns` has the answer to the first, `units` or `unit` to the second. */
  readonly ask: "place" | "unit";
  readonly why: string;
  /** Its first few values, as they stand in the file. */
  readonly samples: readonly string[];
  /** Places it may be, the likeliest first; empty where nothing is known. */
  readonly guesses: readonly ProbePlace[];
}

/** Why a log could not be read at all. */
export interface LogIssue {
  readonly place: string;
  readonly expected: string;
  readonly received: string;
}

export type LogReading =
  | {
      readonly ok: true;
      readonly log: TemperatureLog;
      /** Questions about columns that are not in the log for want of an answer. */
      readonly needed?: readonly LogQuestion[];
    }
  | { readonly ok: false; readonly issues: readonly LogIssue[] };
