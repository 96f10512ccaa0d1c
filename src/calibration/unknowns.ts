import { PARAMETERS } from "../aircraft/index.js";
import type { MeasuredRun } from "./measured-run.js";

/** What differs from one engine and night to another: ln of each parameter's multiplier. */
export const POPULATION: readonly string[] = PARAMETERS.map(({ name }) => name);

/**
 * What nobody recorded of one run: wind [m/s], error of the air [K], of parts that nobody read at the start [K], and ln
 * of how much of the cowl's openings was free.
 */
const OF_THE_RUN = ["wind", "air", "start", "openings"] as const;

/** All unknowns of a run, the population's first: one vector for each member. */
export const UNKNOWNS: readonly string[] = [...POPULATION, ...OF_THE_RUN];

const FIRST = POPULATION.length;
export const WIND = FIRST;
export const START = FIRST + OF_THE_RUN.indexOf("start");
const AIR = FIRST + OF_THE_RUN.indexOf("air");
const OPENINGS = FIRST + OF_THE_RUN.indexOf("openings");
const VENTILATION = POPULATION.indexOf("ventilation");

/** [K] of outside air that was told or read on a parked aircraft; project judgement. */
const AIR_SD = 1.5;
/** ln: one cowl in ten or so has its inlets stopped up without a word of it; project judgement. */
const OPENINGS_SD = 0.25;

/** Mean and standard deviation of each of the unknowns that are the run's own. */
export interface SpreadOfRun {
  readonly mean: readonly number[];
  readonly sd: readonly number[];
}

export function spreadOfRun({ wind_mps: [least, most], start, unrecorded }: MeasuredRun): SpreadOfRun {
  return {
    mean: [(least + most) / 2, 0, 0, 0],
    // A wind is equally likely between its bounds.
    sd: [
      (most - least) / Math.sqrt(12),
      AIR_SD,
      start.error_k,
      unrecorded.includes("cover") ? OPENINGS_SD : 0,
    ],
  };
}

/** One member's unknowns as the simulation takes them. */
export interface Member {
  /** [m/s] at 10 m */
  readonly wind: number;
  /** [K] */
  readonly airError: number;
  readonly startError: number;
  /** Of each parameter, in their order. */
  readonly multipliers: readonly number[];
}

export function memberOf(x: ArrayLike<number>): Member {
  return {
    wind: Math.max(0, x[WIND]),
    airError: x[AIR],
    startError: x[START],
    multipliers: POPULATION.map((_, p) => Math.exp(p === VENTILATION ? x[p] + x[OPENINGS] : x[p])),
  };
}
