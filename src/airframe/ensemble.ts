import { createRandom, latinHypercubeNormals, quantileOfSorted } from "../numerics/index.js";
import { requireInside } from "../units/index.js";

/** How many members and which seed; the same seed gives the same numbers everywhere. */
export interface Ensemble {
  readonly members: number;
  readonly seed: number;
}

/** Standard normals, one array of `members` for each name. */
export type Draws<Name extends string> = Readonly<Record<Name, Float64Array>> & { readonly members: number };

/** Latin hypercube of the named uncertainties; without an ensemble one member with everything in the middle. */
export function drawsOf<Name extends string>(
  names: readonly Name[],
  ensemble: Ensemble | undefined,
  stream: string,
): Draws<Name> {
  const members = ensemble?.members ?? 1;
  requireInside("ensemble.members", members, 1, 1000, "");
  if (!Number.isInteger(members)) {
    throw new RangeError(`invalid ensemble.members: ${members} (expected a whole number)`);
  }
  const values =
    ensemble === undefined
      ? new Float64Array(names.length)
      : latinHypercubeNormals(names.length, members, createRandom(ensemble.seed).stream(stream));
  const columns = names.map((name, d) => [name, values.subarray(d * members, (d + 1) * members)] as const);
  return { members, ...Object.fromEntries(columns) } as Draws<Name>;
}

/** 5, 50 and 95 % of the members. */
export interface Band {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

export function bandOf(values: Float64Array): Band {
  const sorted = values.toSorted();
  return {
    low: quantileOfSorted(sorted, 0.05),
    middle: quantileOfSorted(sorted, 0.5),
    high: quantileOfSorted(sorted, 0.95),
  };
}

/** When something happens: 5, 50 and 95 % of the members, undefined where that share has not got there by the end. */
export interface TimeBand {
  readonly low: number | undefined;
  readonly middle: number | undefined;
  readonly high: number | undefined;
  /** [0..1] of the members that got there. */
  readonly share: number;
}

/** `times` [s] of the members, Infinity for those in which it does not happen. */
export function timeBandOf(times: Float64Array): TimeBand {
  const sorted = times.toSorted();
  // Between a time and never there is no middle: take the later of the two members.
  const at = (p: number) => {
    const time = sorted[Math.ceil((sorted.length - 1) * p)];
    return Number.isFinite(time) ? time : undefined;
  };
  return {
    low: at(0.05),
    middle: at(0.5),
    high: at(0.95),
    share: sorted.filter(Number.isFinite).length / sorted.length,
  };
}

/** A quantity over time, one band for each sample. */
export interface BandSeries {
  readonly low: Float64Array;
  readonly middle: Float64Array;
  readonly high: Float64Array;
}

/** Bands of one row over the samples of all members. */
export function bandSeries(
  members: readonly Float64Array[],
  samples: number,
  value: (member: Float64Array, sample: number) => number,
): BandSeries {
  const low = new Float64Array(samples);
  const middle = new Float64Array(samples);
  const high = new Float64Array(samples);
  for (let s = 0; s < samples; s++) {
    const band = bandOf(Float64Array.from(members, (member) => value(member, s)));
    low[s] = band.low;
    middle[s] = band.middle;
    high[s] = band.high;
  }
  return { low, middle, high };
}
