import type { Scenario } from "../simulation/index.js";
import { type Timeline, timelineOf } from "../simulation/index.js";
import type { FitData } from "./fit-data.js";
import type { MemberBatch } from "./fit-members.js";
import type { Unknowns } from "./fit-unknowns.js";
import { partOf } from "./fit-unknowns.js";
import { followed, type Reach, reachOf } from "./sensor.js";

/** [K] far below any probe, so that the sum of squares is smooth enough to be made least even while snow melts. */
export const FIT_TOLERANCE = 0.002;
/** Step of the difference quotients, in standard deviations of the priors. */
const STEP = 0.02;

/** What the probes should show at vectors of unknowns z. */
export interface FitModel {
  /** Readings [K] expected of each probe at the fit's times, for every z, in one solve. */
  predict(zs: readonly Float64Array[]): Prediction[];
  /** Readings expected at z and their slopes by every unknown: one member of the batch for each physical unknown. */
  linearise(z: Float64Array, differences?: "forward" | "central"): Linearisation;
}

/** Expected readings [K], one array of times for each probe. */
export type Prediction = readonly Float64Array[];

export interface Linearisation {
  readonly prediction: Prediction;
  /** [K] slopes by unknown j of probe p: slopes[j][p]. */
  readonly slopes: readonly Prediction[];
}

/** The model could not be run at some z; the message says what to do. */
export class FitTrouble extends Error {
  override readonly name: string = "FitTrouble";
}

export function createFitModel(
  scenario: Scenario,
  batch: MemberBatch,
  unknowns: Unknowns,
  data: FitData,
): FitModel {
  const timeline: Timeline = timelineOf(scenario.initial.configuration, scenario.events);
  const reaches = unknowns.sensors.map(({ place }) => reachOf(partOf(place), batch.parts));
  const { time } = data;
  const end = time[time.length - 1];

  /** Temperatures that probe p feels, by member. */
  function felt(zs: readonly Float64Array[]): Float64Array[][] {
    const { members, multipliers, airBias, state } = unknowns.membersAt(zs);
    const result = batch.advance({
      ...{ members, multipliers, airBias, state, timelines: [timeline] },
      ...{ from: 0, to: Math.max(end, 1), sampleTimes: time, tolerance: FIT_TOLERANCE },
    });
    if (result.status !== "completed") throw new FitTrouble(`${result.status}: ${result.remedy}`);
    return zs.map((_, m) =>
      reaches.map((reach) => meanOf(result.samples, reach, batch.parts.length, members, m, time.length)),
    );
  }

  function shown(z: Float64Array, temps: readonly Float64Array[]): Prediction {
    return temps.map((felt, p) => {
      const { offset, lag } = unknowns.sensorAt(z, p);
      return followed(time, felt, lag).map((temp) => temp + offset);
    });
  }

  return {
    predict: (zs) => felt(zs).map((temps, m) => shown(zs[m], temps)),
    linearise(z, differences = "forward") {
      const { physical, list } = unknowns;
      const moved = (j: number, by: number) => z.map((value, i) => (i === j ? value + by : value));
      const ahead = Array.from({ length: physical }, (_, j) => moved(j, STEP));
      const behind =
        differences === "central" ? Array.from({ length: physical }, (_, j) => moved(j, -STEP)) : [];
      const [centre, ...others] = felt([z, ...ahead, ...behind]);
      const prediction = shown(z, centre);
      const slopes = list.map((_, j) => {
        const temps = j < physical ? others[j] : centre;
        const up = shown(moved(j, STEP), temps);
        if (behind.length === 0) return difference(up, prediction, STEP);
        const down = shown(moved(j, -STEP), j < physical ? others[physical + j] : centre);
        return difference(up, down, 2 * STEP);
      });
      return { prediction, slopes };
    },
  };
}

function difference(up: Prediction, down: Prediction, step: number): Prediction {
  return up.map((values, p) => values.map((value, k) => (value - down[p][k]) / step));
}

function meanOf(
  samples: Float64Array,
  reach: Reach,
  parts: number,
  members: number,
  member: number,
  count: number,
): Float64Array {
  const mean = new Float64Array(count);
  for (const row of reach) {
    for (let k = 0; k < count; k++) mean[k] += samples[(k * parts + row) * members + member] / reach.length;
  }
  return mean;
}
