import type { TemperatureUnit } from "./log-options.js";
import type { CoolDown } from "./log-signals.js";
import type { EngineSignal } from "./log-words.js";

/** What a probe measures: a part of the network, the outside air, or the hangar's air. */
export type ProbePlace = { readonly part: string } | "outside-air" | "hangar-air";

/** One probe's readings on the log's time axis. */
interface ProbeSeries {
  /** Header of its column, or the name it was given. */
  readonly name: string;
  readonly place: ProbePlace;
  /** [K] one value for each time of the log; NaN where there is no reading (missing, or rejected and listed). */
  readonly temps: Float64Array;
}

/** Logged temperatures of one aircraft over one stretch of time. */
export interface TemperatureLog {
  /** Stretches after flights in which the engine cooled, where columns of the log tell that it ran. */
  readonly coolDowns?: readonly CoolDown[];
  /** [s] when the engine first ran, where columns of the log tell. */
  readonly ranFrom?: number;
  /** [s] since 1970-01-01T00:00Z, strictly ascending. */
  readonly time: Float64Array;
  readonly probes: readonly ProbeSeries[];
  /** Everything that was left out or doubted, row by row; nothing is dropped silently. */
  readonly findings: readonly LogFinding[];
  /** Where it came from: "file flight-line.csv". */
  readonly origin: string;
  /** What the columns of a file were taken for, to be confirmed. */
  readonly taken?: readonly ColumnTaken[];
  /** The engine that was taken, where the file's columns tell of two. */
  readonly engine?: 1 | 2;
}

/** What a column was taken for, to be confirmed. */
export interface ColumnTaken {
  readonly column: string;
  readonly as: ProbePlace | EngineSignal | "time" | "not-used";
  readonly unit?: TemperatureUnit;
  /** "values": nothing names the unit, but only one is possible. */
  readonly unitBy?: "values";
  /** The mean that it goes into. */
  readonly group?: string;
  /** Why it is not used. */
  readonly why?: "open" | "told" | "other-quantity" | "other-engine";
}

export interface LogFinding {
  readonly kind:
    | "bad-time"
    | "bad-value"
    | "duplicate"
    | "out-of-order"
    | "gap"
    | "stuck"
    | "spike"
    | "no-value-in-cold"
    | "fell-out"
    | "ambiguous-time";
  /** "line 14, column oil". */
  readonly place: string;
  /** Probe name, where it concerns one. */
  readonly probe?: string;
  /** [s] since epoch: the stretch it concerns, where times are known. */
  readonly from?: number;
  readonly to?: number;
  readonly expected: string;
  readonly received: string;
  /** Whether the reading was left out of the log (true) or kept with doubt (false). */
  readonly rejected: boolean;
}
