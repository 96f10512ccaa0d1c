import type { LogFinding, ProbePlace } from "./log.js";
import type { FindingList } from "./log-findings.js";

/** One probe's temperatures while they are judged; rejected ones become NaN. */
export interface JudgedSeries {
  readonly name: string;
  readonly place: ProbePlace;
  /** [K] at the log's times. */
  readonly temps: Float64Array;
}

export interface JudgedLog {
  /** [s] ascending. */
  readonly time: Float64Array;
  /** Place of each time in the file's rows. */
  readonly order: Int32Array;
  readonly series: readonly JudgedSeries[];
}

/** A doubtful stretch of one series, from one place on the time axis to another. */
export interface Doubt extends Pick<LogFinding, "kind" | "expected" | "received" | "rejected"> {
  readonly first: number;
  readonly last: number;
}

/** Lists a doubt and, where it says so, leaves its readings out. */
export function settle(
  doubt: Doubt,
  { temps, name }: JudgedSeries,
  log: JudgedLog,
  findings: FindingList,
): void {
  const { first, last, ...finding } = doubt;
  const rows: number[] = [];
  for (let k = first; k <= last; k++) {
    if (Number.isNaN(temps[k])) continue;
    rows.push(log.order[k]);
    if (doubt.rejected) temps[k] = Number.NaN;
  }
  rows.sort((a, b) => a - b);
  findings.add(rows, { ...finding, from: log.time[first], to: log.time[last] }, name);
}

/** Places on the time axis at which a series has a reading. */
export function readingsOf(temps: Float64Array): Int32Array {
  const at = new Int32Array(temps.length);
  let count = 0;
  for (let k = 0; k < temps.length; k++) if (!Number.isNaN(temps[k])) at[count++] = k;
  return at.subarray(0, count);
}

/** [K] a series with its last reading carried on where there is none. */
export function carriedOn(temps: Float64Array): Float64Array {
  let last = Number.NaN;
  return temps.map((temp) => {
    if (!Number.isNaN(temp)) last = temp;
    return last;
  });
}
