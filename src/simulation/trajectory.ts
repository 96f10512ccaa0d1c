import type { Configuration } from "../aircraft/index.js";
import type { SolveStatus } from "../solver/index.js";
import type { Draws } from "./draws.js";
import { configurationAt, type EnsembleRun, prepareRun, TRAJECTORY_TOLERANCE } from "./run.js";
import { type Scenario, type Timeline, timelineOf } from "./scenario.js";

/** Temperatures of every part and member at sample times, with the heat put in so far. */
export interface Trajectory {
  readonly status: SolveStatus;
  /** What to do about it when not completed. */
  readonly remedy: string;
  /** [s] since scenario start */
  readonly time: Float64Array;
  readonly parts: readonly string[];
  readonly members: number;
  /** [K] sample s, part i, member m at `[(s * parts + i) * members + m]` */
  readonly temps: Float64Array;
  /** [J] put in since the first sample, sample s and member m at `[s * members + m]` */
  readonly energy: Float64Array;
}

/** Plays a scenario with its own events. */
export function simulate(
  scenario: Scenario,
  draws: Draws,
  sampleTimes: ArrayLike<number>,
  onStep?: () => boolean,
): Trajectory {
  const run = prepareRun(scenario, draws);
  return trajectory(run, {
    state: run.initial,
    timeline: timelineOf(scenario.initial.configuration, scenario.events),
    sampleTimes,
    ...(onStep === undefined ? {} : { onStep }),
  });
}

/** Runs a prepared ensemble from the first to the last sample time. */
export function trajectory(
  run: EnsembleRun,
  request: {
    readonly state: Float64Array;
    readonly timeline: Timeline;
    readonly sampleTimes: ArrayLike<number>;
    readonly tolerance?: number;
    readonly onStep?: () => boolean;
  },
): Trajectory {
  const time = Float64Array.from(request.sampleTimes);
  const { timeline, state, tolerance = TRAJECTORY_TOLERANCE } = request;
  const result = run.advance({
    state,
    from: time[0],
    to: time[time.length - 1],
    timeline,
    sampleTimes: time,
    tolerance,
    ...(request.onStep === undefined ? {} : { onStep: request.onStep }),
  });
  return {
    status: result.status,
    remedy: result.remedy,
    time,
    parts: run.network.parts.map((p) => p.name),
    members: run.members,
    temps: result.samples,
    energy: energyIn(run, timeline, time, result.samples),
  };
}

/** All temperatures [K] at a sample time, parts x members; throws when `t` is not one of the sample times. */
export function sampleAt({ time, temps, parts, members }: Trajectory, t: number): Float64Array {
  const s = time.indexOf(t);
  if (s < 0) throw new RangeError(`invalid t: ${t} s (expected a sample time of the course)`);
  const size = parts.length * members;
  return temps.subarray(s * size, (s + 1) * size);
}

/** The samples of a course that `keep` picks by their time. */
export function thinned(course: Trajectory, keep: (t: number) => boolean): Trajectory {
  const size = course.parts.length * course.members;
  const kept = [...course.time.keys()].filter((s) => keep(course.time[s]));
  const temps = new Float64Array(kept.length * size);
  const energy = new Float64Array(kept.length * course.members);
  kept.forEach((s, k) => {
    temps.set(course.temps.subarray(s * size, (s + 1) * size), k * size);
    energy.set(course.energy.subarray(s * course.members, (s + 1) * course.members), k * course.members);
  });
  return { ...course, time: Float64Array.from(kept, (s) => course.time[s]), temps, energy };
}

/** Two courses of the same ensemble, the second starting where the first ends. */
export function joined(first: Trajectory, second: Trajectory): Trajectory {
  const size = first.parts.length * first.members;
  const count = first.time.length - 1;
  const spent = first.energy.subarray(count * first.members);
  return {
    ...second,
    time: concatenated(first.time.subarray(0, count), second.time),
    temps: concatenated(first.temps.subarray(0, count * size), second.temps),
    energy: concatenated(
      first.energy.subarray(0, count * first.members),
      second.energy.map((e, k) => e + spent[k % first.members]),
    ),
  };
}

function concatenated(a: Float64Array, b: Float64Array): Float64Array {
  const out = new Float64Array(a.length + b.length);
  out.set(a);
  out.set(b, a.length);
  return out;
}

/** Row of a part in a trajectory; throws when it has no such part. */
function partRow(parts: readonly string[], name: string): number {
  const row = parts.indexOf(name);
  if (row < 0) throw new RangeError(`unknown part: ${name} (expected one of ${parts.join(", ")})`);
  return row;
}

/** Temperatures [K] of one part over the members at sample s. */
export function partTemps({ temps, parts, members }: Trajectory, name: string, s: number): Float64Array {
  const at = (s * parts.length + partRow(parts, name)) * members;
  return temps.subarray(at, at + members);
}

/** Trapezoid over the samples; power jumps only where the configuration does, and each side counts up to there. */
function energyIn(
  run: EnsembleRun,
  timeline: Timeline,
  time: Float64Array,
  temps: Float64Array,
): Float64Array {
  const { members } = run;
  const size = run.network.parts.length * members;
  const energy = new Float64Array(time.length * members);
  const before = new Float64Array(members);
  const after = new Float64Array(members);
  const add = (s: number, configuration: Configuration, from: number, to: number) => {
    if (configuration.heatersOn.size === 0) return;
    run.power(configuration, from, temps.subarray((s - 1) * size, s * size), before);
    run.power(configuration, to, temps.subarray(s * size, (s + 1) * size), after);
    for (let m = 0; m < members; m++) energy[s * members + m] += 0.5 * (before[m] + after[m]) * (to - from);
  };
  for (let s = 1; s < time.length; s++) {
    energy.copyWithin(s * members, (s - 1) * members, s * members);
    let from = time[s - 1];
    for (const entry of timeline) {
      if (!(entry.from > from && entry.from < time[s])) continue;
      add(s, configurationAt(timeline, from), from, entry.from);
      from = entry.from;
    }
    add(s, configurationAt(timeline, from), from, time[s]);
  }
  return energy;
}
