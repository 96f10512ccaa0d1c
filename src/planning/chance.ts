import { type EnsembleState, judge, type Verdict } from "../readiness/index.js";
import {
  type Draws,
  ENSEMBLE_TOLERANCE,
  type EnsembleRun,
  prepareRun,
  sampleAt,
  type Timeline,
  type Trajectory,
  trajectory,
} from "../simulation/index.js";
import type { PlanRequest } from "./request.js";
import { coverOffTime, plannedTimeline, unplugTime } from "./timeline.js";

/** A plug-in that was run. */
export interface Candidate {
  /** [s] since scenario start; undefined: never plugged in. */
  readonly plugIn: number | undefined;
  /** From plug-in (from the start when never) to departure, unplugging and covers off among the samples. */
  readonly heated: Trajectory;
  readonly verdict: Verdict;
}

/** Runs candidates of one plan; what is common to all of them (the soak until the plug goes in) is run once. */
export interface ChanceFinder {
  readonly run: EnsembleRun;
  /** [s] plug-in times that may be tried are whole steps from now up to unplugging. */
  readonly step: number;
  /** Nobody plugs in; sampled at every step. */
  readonly soak: Trajectory;
  /** Runs the plug-in at grid index i (time i * step), or never when undefined. */
  candidate(index: number | undefined): Candidate;
  /** Every plug-in run so far, ascending. */
  tried(): Candidate[];
  /** Goes on from a sample of a course through a timeline. */
  onward(course: Trajectory, from: number, to: number, timeline: Timeline): Trajectory;
}

/** An ensemble could not be integrated; the message says what to do. */
export class NumericalFailure extends Error {
  override readonly name = "NumericalFailure";
}

/** [s] spacing of courses. */
export const COURSE_STEP = 600;

export function createChanceFinder(request: PlanRequest, step: number, draws: Draws): ChanceFinder {
  const run = prepareRun(request.scenario, draws);
  const unplug = unplugTime(request);
  const { departure } = request.wish;
  const marks = [unplug, coverOffTime(request), departure];
  const soak = played(run.initial, 0, departure, plannedTimeline(request, undefined), marks, step);
  const known = new Map<number | undefined, Candidate>();

  function played(
    state: Float64Array,
    from: number,
    to: number,
    timeline: Timeline,
    extra: readonly number[],
    spacing = COURSE_STEP,
  ): Trajectory {
    const times = sampleTimes(from, to, spacing, extra);
    const course = trajectory(run, { state, timeline, sampleTimes: times, tolerance: ENSEMBLE_TOLERANCE });
    if (course.status !== "completed") throw new NumericalFailure(`${course.status}: ${course.remedy}`);
    return course;
  }

  function compute(index: number | undefined): Candidate {
    const plugIn = index === undefined ? undefined : index * step;
    const heated =
      plugIn === undefined
        ? soak
        : played(sampleAt(soak, plugIn), plugIn, departure, plannedTimeline(request, plugIn), marks);
    return {
      plugIn,
      heated,
      verdict: judge(request.criteria, stateAt(heated, departure), stateAt(heated, unplug)),
    };
  }

  return {
    run,
    step,
    soak,
    candidate(index) {
      const found = known.get(index) ?? compute(index);
      known.set(index, found);
      return found;
    },
    tried: () =>
      [...known.values()]
        .filter((c) => c.plugIn !== undefined)
        .sort((a, b) => (a.plugIn ?? 0) - (b.plugIn ?? 0)),
    onward: (course, from, to, timeline) => played(sampleAt(course, from), from, to, timeline, marks),
  };
}

function stateAt(course: Trajectory, t: number): EnsembleState {
  return { temps: sampleAt(course, t), parts: course.parts, members: course.members };
}

/** Multiples of the spacing from `from` to `to`, with the given times put in where they fall between. */
function sampleTimes(from: number, to: number, spacing: number, extra: readonly number[]): number[] {
  const times = new Set<number>([from, to]);
  for (let t = spacing * Math.ceil((from + 1) / spacing); t < to; t += spacing) times.add(t);
  for (const t of extra) if (t > from && t < to) times.add(t);
  return [...times].sort((a, b) => a - b);
}
