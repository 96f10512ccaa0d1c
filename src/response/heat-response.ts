import {
  type Draws,
  type EnsembleRun,
  prepareRun,
  type Scenario,
  type Trajectory,
  timelineOf,
} from "../simulation/index.js";
import { plugInGrid } from "./grid.js";
import { createHeatedCourses, type HeatedCourses } from "./heated-courses.js";
import { interpolate, type Samples } from "./samples.js";
import { createSoak, type Soak } from "./soak.js";
import type { Steps } from "./steps.js";

/** What can be read of how an ensemble answers to heat. */
export interface ReadResponse {
  readonly parts: readonly string[];
  readonly members: number;
  /** Writes temperatures [K] at time `t` [s], parts x members, plugged in at `plugIn` or never. */
  temps(plugIn: number | undefined, t: number, out: Float64Array): void;
  /** Writes the heat [J] put in between `plugIn` and `t`, per member. */
  energy(plugIn: number, t: number, out: Float64Array): void;
}

/**
 * How an ensemble answers to heat from any moment on: its soak, and heated courses from a coarse grid of plug-ins. What
 * lies between is read by interpolation; what was not yet played is played when it is asked for.
 */
export interface HeatResponse extends ReadResponse {
  readonly run: EnsembleRun;
  /** The soak up to a time, for runs that decide. */
  soakedTo(until: number): Steps<Soaked>;
  /** Plays all there is to play. */
  fill(): Steps<void>;
  isFilled(): boolean;
  /** The heated course from a plug-in of the coarse grid (index times spacing), as far as `lead` [s]. */
  heated(index: number, lead: number): Samples;
}

/** An ensemble and its course while nobody plugs in: the same for all departures, so that plans may share it. */
export interface Soaked {
  readonly run: EnsembleRun;
  /** The scenario's own events only, sampled at every step at least until unplugging. */
  readonly soak: Trajectory;
}

/** The aircraft, what happens to it anyway, and which heaters go on. */
export interface Situation {
  readonly scenario: Scenario;
  readonly heaters: readonly string[];
}

export interface ResponseOptions {
  /** [s] between plug-ins whose heated courses are played. */
  readonly spacing?: number;
  /** [s] after plug-in at which heated courses are kept, ascending from 0. */
  readonly leads?: readonly number[];
  /** [s] between samples of the soak. */
  readonly step?: number;
  /** [K] local error of the steps. */
  readonly tolerance?: number;
}

/** [s] The rise from heat depends on the moment only by the weather. */
const NODE_SPACING = 3600;
/** [s] The longest counts for whatever is longer: from then on an engine is as warm as the heat makes it. */
const LEADS = [
  0, 600, 1200, 1800, 2700, 3600, 4800, 6000, 7200, 9000, 10_800, 12_600, 14_400, 18_000, 21_600, 28_800,
  36_000,
];
/** [s] */
const SOAK_STEP = 300;
export function createHeatResponse(
  { scenario, heaters }: Situation,
  draws: Draws,
  { spacing = NODE_SPACING, leads = LEADS, step = SOAK_STEP, tolerance }: ResponseOptions = {},
): HeatResponse {
  const { duration, initial, events } = scenario;
  const run = prepareRun(scenario, draws);
  const soak = createSoak(
    run,
    timelineOf(initial.configuration, events),
    duration,
    plugInGrid(scenario.start, step),
  );
  const courses = createHeatedCourses(
    { run, scenario, heaters, soak },
    { spacing, leads, ...(tolerance === undefined ? {} : { tolerance }) },
  );

  function* soakOn(until: number): Steps<void> {
    while (soak.reached() < until) {
      soak.playOn();
      yield;
    }
  }

  return {
    run,
    parts: run.network.parts.map((p) => p.name),
    members: run.members,
    ...responseReader(run, soak, courses),
    heated: courses.heated,
    *soakedTo(until) {
      yield* soakOn(until);
      return { run, soak: soak.course(until) };
    },
    *fill() {
      yield* soakOn(duration);
      yield* courses.fill();
    },
    isFilled: () => soak.reached() >= duration && courses.isFilled(),
  };
}

/** Reads between the courses that are played. */
function responseReader(
  { network, members }: EnsembleRun,
  soak: Soak,
  { spacing, heated, around }: HeatedCourses,
): Pick<ReadResponse, "temps" | "energy"> {
  const size = network.parts.length * members;
  const scratch = new Float64Array(size);
  const sum = new Float64Array(members);
  return {
    temps(plugIn, t, out) {
      if (plugIn === undefined || plugIn >= t) {
        soak.temps(t, out);
        return;
      }
      const { lead, near } = around(plugIn, t);
      if (near.length === 1 && near[0].index * spacing + lead === t) {
        const { time, temps: rows } = heated(near[0].index, lead);
        interpolate(time, rows, t, size, out);
        return;
      }
      soak.temps(t, out);
      for (const { index, weight } of near) {
        const node = heated(index, lead);
        const at = index * spacing + lead;
        // What heat adds changes far less from one moment to another than the temperature itself does.
        soak.temps(at, scratch);
        for (let k = 0; k < size; k++) out[k] -= weight * scratch[k];
        interpolate(node.time, node.temps, at, size, scratch);
        for (let k = 0; k < size; k++) out[k] += weight * scratch[k];
      }
    },
    energy(plugIn, t, out) {
      const { lead, near } = around(plugIn, t);
      out.fill(0);
      for (const { index, weight } of near) {
        const { time, energy } = heated(index, lead);
        interpolate(time, energy, index * spacing + lead, members, sum);
        for (let m = 0; m < members; m++) out[m] += weight * sum[m] * ((t - plugIn) / lead);
      }
    },
  };
}
