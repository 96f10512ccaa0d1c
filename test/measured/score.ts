import { quantile } from "../../src/numerics/index.js";
import { predicted } from "./predict.js";
import type { MeasuredReading, MeasuredRun } from "./run.js";

/** One reading against what was said of it before. */
export interface ReadingScore {
  readonly run: MeasuredRun;
  readonly reading: MeasuredReading;
  /** [°C] of the middle of the band, its 50 % and its 90 % ends; the reading's own error is in them. */
  readonly mid: number;
  readonly in50: boolean;
  readonly in90: boolean;
  /** [K] width of the 90 % band */
  readonly width90: number;
  /** [K] middle less reading */
  readonly error: number;
  /** [K] continuous ranked probability score: 0 is perfect (Gneiting and Raftery 2007, eq. 21) */
  readonly crps: number;
}

/** Standard normal quantiles that spread a reading's error over the members, in turn. */
const NORMALS = [-1.28155, -0.524401, 0, 0.524401, 1.28155];

export function scored(run: MeasuredRun): ReadingScore[] {
  return predicted(run).map((members, r) => {
    const reading = run.readings[r];
    const said = members.map((t, m) => t + reading.error_k * NORMALS[m % NORMALS.length]).sort();
    const at = (share: number) => quantile(said, share);
    const inside = (share: number) => reading.c >= at(0.5 - share / 2) && reading.c <= at(0.5 + share / 2);
    return {
      run,
      reading,
      mid: at(0.5),
      in50: inside(0.5),
      in90: inside(0.9),
      width90: at(0.95) - at(0.05),
      error: at(0.5) - reading.c,
      crps: crpsOf(said, reading.c),
    };
  });
}

/** Of an ensemble: mean distance to the reading, less half the mean distance between two members. */
function crpsOf(sorted: Float64Array, value: number): number {
  const n = sorted.length;
  let near = 0;
  let apart = 0;
  sorted.forEach((t, i) => {
    near += Math.abs(t - value);
    apart += (2 * i + 1 - n) * t;
  });
  return near / n - apart / (n * n);
}

export interface Summary {
  readonly readings: number;
  readonly in50: number;
  readonly in90: number;
  readonly medianError: number;
  readonly bias: number;
  readonly width90: number;
  readonly crps: number;
}

export function summaryOf(scores: readonly ReadingScore[]): Summary {
  const mean = (of: (one: ReadingScore) => number) =>
    scores.reduce((s, one) => s + of(one), 0) / scores.length;
  const errors = Float64Array.from(scores, (one) => Math.abs(one.error)).sort();
  return {
    readings: scores.length,
    in50: mean((one) => Number(one.in50)),
    in90: mean((one) => Number(one.in90)),
    medianError: quantile(errors, 0.5),
    bias: mean((one) => one.error),
    width90: mean((one) => one.width90),
    crps: mean((one) => one.crps),
  };
}
