import {
  createRandom,
  latinHypercubeNormals,
  lowerCholesky,
  normalProbability,
  quantile,
} from "../numerics/index.js";
import type { MeasuredReading, MeasuredRun } from "./measured-run.js";
import { type Equipment, play } from "./play.js";
import type { Population } from "./population.js";
import { POPULATION, spreadOfRun, WIND } from "./unknowns.js";

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

/** What members are drawn from. */
type Drawn = Pick<Population, "mean" | "covariance">;

const MEMBERS = 400;

/** Every reading of a run, said before it is looked at: an engine and a night that nobody knows, drawn from the population. */
export function scored(run: MeasuredRun, population: Drawn, equipment?: Equipment): ReadingScore[] {
  const members = drawn(run, population);
  const random = createRandom(7).stream(run.run);
  const errors = latinHypercubeNormals(run.readings.length, MEMBERS, random);
  return play(run, members, equipment).map((temps, r) => {
    const reading = run.readings[r];
    const said = temps.map((t, m) => t + reading.error_k * errors[r * MEMBERS + m]).sort();
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

/** Unknowns of members, each of its own aircraft and night; the wind equally likely between its bounds. */
function drawn(run: MeasuredRun, { mean, covariance }: Drawn): Float64Array[] {
  const spread = spreadOfRun(run);
  const size = POPULATION.length + spread.mean.length;
  const normals = latinHypercubeNormals(size, MEMBERS, createRandom(1).stream(run.run));
  const [least, most] = run.wind_mps;
  const n = POPULATION.length;
  const root = lowerCholesky(covariance, n);
  const ofPopulation = (p: number, m: number) => {
    let value = mean[p];
    for (let q = 0; q <= p; q++) value += root[p * n + q] * normals[q * MEMBERS + m];
    return value;
  };
  return Array.from({ length: MEMBERS }, (_, m) =>
    Float64Array.from({ length: size }, (_, j) => {
      const z = normals[j * MEMBERS + m];
      if (j < n) return ofPopulation(j, m);
      if (j === WIND) return least + (most - least) * normalProbability(z);
      return spread.mean[j - n] + spread.sd[j - n] * z;
    }),
  );
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
