import type { LinearRun } from "./linear-run.js";
import { POPULATION, type SpreadOfRun, START, spreadOfRun } from "./unknowns.js";

/** One reading, straight in the unknowns. */
export interface Row {
  /** [K per unknown] */
  readonly slopes: Float64Array;
  /** [K] reading less what is said where all unknowns are zero and the run's own at their means. */
  readonly off: number;
  readonly occasion: string;
  readonly run: string;
  /** Readings of one probe in its place share part of their error. */
  readonly probe: string;
  /** [K2] */
  readonly errorVariance: number;
  readonly spread: SpreadOfRun;
}

/** Spreads of the population, as variances, and of what readings are off beside. */
export interface Variances {
  readonly betweenAircraft: Float64Array;
  readonly betweenNights: Float64Array;
  /** [K2] */
  readonly model: number;
}

/** Share of a reading's error that its probe's place keeps through all runs of an engine; project judgement. */
export const SHARE_OF_PROBE = 0.5;

/** Readings of each aircraft: aircraft have nothing in common but the population. */
export function rowsByAircraft(runs: readonly LinearRun[]): Row[][] {
  const rows = runs.flatMap(({ run, at, said, slopes }) =>
    run.readings.map((reading, r) => ({
      aircraft: run.aircraft.id,
      slopes: slopes[r],
      off: reading.c - said[r] + dot(slopes[r], at),
      occasion: run.occasion ?? run.run,
      run: run.run,
      probe: `${run.aircraft.id} ${run.aircraft.engine} ${reading.part}`,
      errorVariance: reading.error_k ** 2,
      spread: spreadOfRun(run),
    })),
  );
  return grouped(rows, (row) => row.aircraft).map((some) => some.map((i) => rows[i]));
}

/** Indices of the rows that share a key. */
export function grouped<T>(rows: readonly T[], key: (row: T) => string): number[][] {
  const found = new Map<string, number[]>();
  rows.forEach((row, i) => {
    const list = found.get(key(row));
    if (list === undefined) found.set(key(row), [i]);
    else list.push(i);
  });
  return [...found.values()];
}

/** [K2] covariance of an aircraft's readings, row-major; `weights` below 1 are readings that count less. */
export function covarianceOf(
  rows: readonly Row[],
  variances: Variances,
  weights: ArrayLike<number>,
): Float64Array {
  const size = rows.length;
  const covariance = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < i; j++) {
      const both = shared(rows[i], rows[j], variances);
      covariance[i * size + j] = both;
      covariance[j * size + i] = both;
    }
    const own = (1 - SHARE_OF_PROBE) * rows[i].errorVariance + variances.model;
    covariance[i * size + i] = shared(rows[i], rows[i], variances) + own / weights[i];
  }
  return covariance;
}

/** What two readings have in common: the aircraft, of one occasion its night, of one run its start, of one probe its place. */
function shared(a: Row, b: Row, { betweenAircraft, betweenNights }: Variances): number {
  const oneNight = a.occasion === b.occasion;
  let sum = 0;
  for (let p = 0; p < POPULATION.length; p++) {
    sum += a.slopes[p] * b.slopes[p] * (betweenAircraft[p] + (oneNight ? betweenNights[p] : 0));
  }
  if (oneNight) {
    a.spread.sd.forEach((sd, k) => {
      const j = POPULATION.length + k;
      if (j !== START || a.run === b.run) sum += a.slopes[j] * b.slopes[j] * sd * sd;
    });
  }
  if (a.probe === b.probe) sum += SHARE_OF_PROBE * Math.sqrt(a.errorVariance * b.errorVariance);
  return sum;
}

/** Over as many entries as `values` has. */
export function dot(slopes: ArrayLike<number>, values: ArrayLike<number>): number {
  let sum = 0;
  for (let p = 0; p < values.length; p++) sum += slopes[p] * values[p];
  return sum;
}
