import { type EnsembleState, judge, type Verdict } from "../readiness/index.js";
import {
  type Draws,
  ENSEMBLE_TOLERANCE,
  type EnsembleRun,
  prepareRun,
  type Trajectory,
  trajectory,
} from "../simulation/index.js";
import type { PlanRequest } from "./request.js";
import { plannedTimeline, unplugTime } from "./timeline.js";

/** A plug-in that was run: what the ensemble looks like at the start. */
export interface Candidate {
  /** [s] since scenario start; undefined: never plugged in. */
  readonly plugIn: number | undefined;
  readonly verdict: Verdict;
}

/** Runs candidates of one plan; what is common to all of them (the soak until the plug goes in) is run once. */
export interface ChanceFinder {
  readonly run: EnsembleRun;
  /** [s] plug-in times that may be tried are whole steps from now up to unplugging. */
  readonly step: number;
  /** Runs the plug-in at grid index i (time i * step), or never when undefined. */
  candidate(index: number | undefined): Candidate;
  /** Every plug-in run so far, ascending. */
  tried(): Candidate[];
  /** The course of a candidate at the given times, the first of which is its plug-in (or the start when never). */
  course(
    index: number | undefined,
    timeline: ReturnType<typeof plannedTimeline>,
    sampleTimes: number[],
  ): Trajectory;
}

/** An ensemble could not be integrated; the message says what to do. */
export class NumericalFailure extends Error {
  override readonly name = "NumericalFailure";
}

export function createChanceFinder(request: PlanRequest, step: number, draws: Draws): ChanceFinder {
  const run = prepareRun(request.scenario, draws);
  const unplug = unplugTime(request);
  const { departure } = request.wish;
  const grid = Array.from({ length: Math.floor(unplug / step) + 1 }, (_, i) => i * step);
  const soakTimes = [...new Set([...grid, unplug, departure])].sort((a, b) => a - b);
  const soak = samplesOf(run, run.initial, plannedTimeline(request, undefined), soakTimes);
  const size = run.initial.length;
  const parts = run.network.parts.map((p) => p.name);
  const known = new Map<number | undefined, Candidate>();

  function verdictOf(times: number[], samples: Float64Array): Verdict {
    const at = (t: number): EnsembleState => {
      const s = times.indexOf(t);
      return { temps: samples.subarray(s * size, (s + 1) * size), parts, members: run.members };
    };
    return judge(request.criteria, at(departure), at(unplug));
  }

  function stateBefore(index: number | undefined): Float64Array {
    return index === undefined ? run.initial : soak.subarray(index * size, (index + 1) * size);
  }

  function compute(index: number | undefined): Candidate {
    if (index === undefined) return { plugIn: undefined, verdict: verdictOf(soakTimes, soak) };
    const plugIn = grid[index];
    const times = [...new Set([plugIn, unplug, departure])];
    const samples = samplesOf(run, stateBefore(index), plannedTimeline(request, plugIn), times);
    return { plugIn, verdict: verdictOf(times, samples) };
  }

  return {
    run,
    step,
    candidate(index) {
      const found = known.get(index) ?? compute(index);
      known.set(index, found);
      return found;
    },
    tried: () =>
      [...known.values()]
        .filter((c) => c.plugIn !== undefined)
        .sort((a, b) => (a.plugIn ?? 0) - (b.plugIn ?? 0)),
    course(index, timeline, sampleTimes) {
      const course = trajectory(run, {
        state: stateBefore(index),
        timeline,
        sampleTimes,
        tolerance: ENSEMBLE_TOLERANCE,
      });
      if (course.status !== "completed") throw new NumericalFailure(`${course.status}: ${course.remedy}`);
      return course;
    },
  };
}

function samplesOf(
  run: EnsembleRun,
  state: Float64Array,
  timeline: ReturnType<typeof plannedTimeline>,
  sampleTimes: number[],
): Float64Array {
  const result = run.advance({
    state,
    from: sampleTimes[0],
    to: sampleTimes[sampleTimes.length - 1],
    timeline,
    sampleTimes,
  });
  if (result.status !== "completed") throw new NumericalFailure(`${result.status}: ${result.remedy}`);
  return result.samples;
}
