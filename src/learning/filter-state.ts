import { type MultiplierPosterior, PRIOR, type Scenario } from "../simulation/index.js";
import { partOf } from "./fit-unknowns.js";
import { type Reach, reachOf, type Sensor } from "./sensor.js";
import { type Discrepancy, USUAL_DISCREPANCY } from "./sensor-noise.js";

/** Something that is not as the user says. */
export type Deviation = "heater-not-heating" | "cover-off" | "other-place";

/** All that a live filter carries from one update to the next; plain JSON, and enough to go on to the last bit. */
export interface FilterState {
  readonly version: 1;
  /** [s] since the scenario's start. */
  readonly time: number;
  /** Part temperatures [K], ln(multipliers), lasting error of the air [K]; of probes offsets [K], what they feel [K], ln(lag/s). */
  readonly mean: readonly number[];
  /** Covariance of `mean`, row-major. */
  readonly covariance: readonly number[];
  /** What the filter believes really goes on: as told, or one deviation, and since when [s]. */
  readonly belief: { readonly deviation: Deviation | undefined; readonly since: number };
  /** What might go on instead. */
  readonly suspects: readonly Suspect[];
  readonly probes: readonly ProbeState[];
}

export interface Suspect {
  /** Undefined: it is as told after all. */
  readonly deviation: Deviation | undefined;
  readonly mean: readonly number[];
  /** Logarithm of how much better than the belief it explains the readings since it branched off. */
  readonly evidence: number;
  /** [s] when it branched off. */
  readonly since: number;
}

export interface ProbeState {
  readonly name: string;
  /** Chance that the probe no longer sits on its part [0..1]. */
  readonly out: number;
}

export interface FilterSetup {
  /** Aircraft, kit, place, weather and what is known of the start; its events are what is done and planned. */
  readonly scenario: Scenario;
  readonly sensors: readonly Sensor[];
  /** What was learned of the aircraft; the priors without it. */
  readonly posterior?: MultiplierPosterior;
  readonly discrepancy?: Discrepancy;
}

/** Where what stands in the filter's vector. */
export interface FilterLayout {
  readonly parts: readonly string[];
  readonly posterior: MultiplierPosterior;
  readonly sensors: readonly Sensor[];
  readonly discrepancy: Discrepancy;
  /** Parts that each probe feels. */
  readonly reaches: readonly Reach[];
  /** Positions at which multipliers, air, offsets, what probes feel and lags begin, and the length. */
  readonly multipliers: number;
  readonly air: number;
  readonly offsets: number;
  readonly felt: number;
  readonly lags: number;
  readonly size: number;
}

/** [K] and [s] of the lasting error of the air, as that of measured weather but with a hangar's share of guesswork. */
export const AIR_ERROR = { sd: 1, correlationTime: 12 * 3600 } as const;
/** [K] by which each part may start off the common temperature; project judgement. */
const PART_SD = 1;

export function filterLayout(
  { sensors, posterior = PRIOR, discrepancy = USUAL_DISCREPANCY }: FilterSetup,
  parts: readonly string[],
): FilterLayout {
  const multipliers = parts.length;
  const air = multipliers + posterior.names.length;
  const offsets = air + 1;
  const felt = offsets + sensors.length;
  const lags = felt + sensors.length;
  return {
    ...{ parts, posterior, sensors, discrepancy },
    reaches: sensors.map(({ place }) => reachOf(partOf(place), parts)),
    ...{ multipliers, air, offsets, felt, lags, size: lags + sensors.length },
  };
}

/** Keeps covariances positive definite through rounding. */
export const TINY = 1e-6;

/** The state before any reading. */
export function initialState({ scenario }: FilterSetup, layout: FilterLayout): FilterState {
  const { parts, posterior, sensors, multipliers, air, offsets, felt, lags, size } = layout;
  const { initial } = scenario;
  const mean = new Array<number>(size).fill(0);
  const covariance = new Array<number>(size * size).fill(0);
  parts.forEach((part, i) => {
    mean[i] = initial.temps.get(part) ?? initial.tempOthers;
    for (let j = 0; j < parts.length; j++) {
      covariance[i * size + j] = initial.sd ** 2 + (i === j ? PART_SD ** 2 : 0);
    }
  });
  posterior.names.forEach((_, i) => {
    mean[multipliers + i] = posterior.mean[i];
    for (let j = 0; j < posterior.names.length; j++) {
      let sum = 0;
      for (let k = 0; k <= Math.min(i, j); k++) sum += posterior.factor[i][k] * posterior.factor[j][k];
      covariance[(multipliers + i) * size + multipliers + j] = sum;
    }
  });
  covariance[air * size + air] = AIR_ERROR.sd ** 2;
  sensors.forEach(({ offset, offsetSd, lag, lagLogSd }, p) => {
    mean[offsets + p] = offset;
    covariance[(offsets + p) * size + offsets + p] = offsetSd ** 2;
    mean[lags + p] = Math.log(lag);
    covariance[(lags + p) * size + lags + p] = lagLogSd ** 2 + TINY;
    // Probes begin in balance with what they sit on.
    const reach = layout.reaches[p];
    const over = (values: (row: number) => number) =>
      reach.reduce((sum, row) => sum + values(row) / reach.length, 0);
    mean[felt + p] = over((row) => mean[row]);
    for (let j = 0; j < felt + p; j++) {
      const shared = over((row) => covariance[row * size + j]);
      covariance[(felt + p) * size + j] = shared;
      covariance[j * size + felt + p] = shared;
    }
    covariance[(felt + p) * size + felt + p] = over((row) => covariance[row * size + felt + p]) + TINY;
  });
  return {
    version: 1,
    time: 0,
    ...{ mean, covariance },
    belief: { deviation: undefined, since: 0 },
    suspects: [],
    probes: sensors.map(({ name }) => ({ name, out: 0 })),
  };
}
