import { type Aim, type EnsembleState, judge, type Verdict } from "../readiness/index.js";
import {
  type PlugInChances,
  type PlugInGrid,
  play,
  plugInGrid,
  type Soaked,
  timeOf,
} from "../response/index.js";
import {
  type Draws,
  type EnsembleRun,
  joined,
  prepareRun,
  sampleAt,
  type Timeline,
  type Trajectory,
  thinned,
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
  /** Plug-in times that may be tried. */
  readonly grid: PlugInGrid;
  readonly run: EnsembleRun;
  /** Nobody plugs in; sampled at every step. */
  readonly soak: Trajectory;
  /** Runs the plug-in at grid index i (its time on the grid), or never when undefined. */
  candidate(index: number | undefined): Candidate;
  /** Chances on one of the two lines, for a search. */
  on(aim: Aim): PlugInChances;
  /** Every plug-in run so far, ascending. */
  tried(): Candidate[];
  /** Goes on from a sample of a course through a timeline. */
  onward(course: Trajectory, from: number, to: number, timeline: Timeline): Trajectory;
}

/** [s] spacing of courses. */
export const COURSE_STEP = 600;

/** @param soaked the same draws' soak where it is known already */
export function createChanceFinder(
  request: PlanRequest,
  step: number,
  draws: Draws,
  soaked?: Soaked,
): ChanceFinder {
  const run = soaked?.run ?? prepareRun(request.scenario, draws);
  const grid = plugInGrid(request.scenario.start, step);
  const unplug = unplugTime(request);
  const { departure } = request.wish;
  const marks = [unplug, coverOffTime(request), departure];
  const soak = soaked === undefined ? soakedFrom(0, run.initial) : goneOn(soaked.soak);
  const known = new Map<number | undefined, Candidate>();

  function soakedFrom(from: number, state: Float64Array): Trajectory {
    return played(state, from, departure, plannedTimeline(request, undefined), marks, grid.width);
  }

  /** The shared soak as far as it holds, which is until unplugging, then on to departure. */
  function goneOn(shared: Trajectory): Trajectory {
    const last = shared.time.findLast((t) => t <= unplug) ?? 0;
    const onward = soakedFrom(last, sampleAt(shared, last));
    const before = thinned(shared, (t) => t <= last);
    return joined(before, onward);
  }

  function played(
    state: Float64Array,
    from: number,
    to: number,
    timeline: Timeline,
    extra: readonly number[],
    spacing = COURSE_STEP,
  ): Trajectory {
    const times = sampleTimes(from, to, spacing, extra, grid.origin);
    return play(run, { state, timeline, sampleTimes: times });
  }

  function compute(index: number | undefined): Candidate {
    const plugIn = index === undefined ? undefined : timeOf(grid, index);
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

  function candidate(index: number | undefined): Candidate {
    const found = known.get(index) ?? compute(index);
    known.set(index, found);
    return found;
  }

  return {
    run,
    grid,
    soak,
    candidate,
    on: (aim) => ({
      step: grid.width,
      plannable(index) {
        const { verdict } = candidate(index);
        return verdict.tooHot.length > 0 ? 0 : chanceOn(verdict, aim);
      },
    }),
    tried: () =>
      [...known.values()]
        .filter((c) => c.plugIn !== undefined)
        .sort((a, b) => (a.plugIn ?? 0) - (b.plugIn ?? 0)),
    onward: (course, from, to, timeline) =>
      played(sampleAt(course, from), from, to, timeline, [...marks, ...BEND.map((after) => from + after)]),
  };
}

/** [s] after which covers off and a pull-out have bent the courses: between wider samples a straight line flatters. */
const BEND = [60, 120, 240, 420] as const;

/** Chance of being ready, or of being warm through as well. */
export function chanceOn(verdict: Verdict, aim: Aim): number {
  return aim === "least" ? verdict.chance : verdict.warm.chance;
}

function stateAt(course: Trajectory, t: number): EnsembleState {
  return { temps: sampleAt(course, t), parts: course.parts, members: course.members };
}

/** Multiples of the spacing after `origin` from `from` to `to`, with the given times put in where they fall between. */
function sampleTimes(
  from: number,
  to: number,
  spacing: number,
  extra: readonly number[],
  origin: number,
): number[] {
  const times = new Set<number>([from, to]);
  for (let t = origin + spacing * Math.ceil((from + 1 - origin) / spacing); t < to; t += spacing)
    times.add(t);
  for (const t of extra) if (t > from && t < to) times.add(t);
  return [...times].sort((a, b) => a - b);
}
