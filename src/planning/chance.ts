import type { EnsembleState, Verdict } from "../readiness/index.js";
import { judge } from "../readiness/index.js";
import { type EnsembleRun, prepareRun } from "../simulation/index.js";
import type { PlanRequest } from "./request.js";
import { coldTimeline, plannedTimeline, unplugTime } from "./timeline.js";

/** A candidate that was run: what the ensemble looks like at the start. */
export interface Candidate {
  readonly plugIn: number;
  readonly verdict: Verdict;
}

/** Runs candidates of one plan; what is common to all of them (the soak until the plug goes in) is run once. */
export interface ChanceFinder {
  readonly run: EnsembleRun;
  /** [s] plug-in times that may be tried: whole steps from now up to unplugging. */
  readonly step: number;
  /** Runs the plug-in at grid index i (time i * step), or never when undefined. */
  candidate(index: number | undefined): Candidate;
  /** Every candidate run so far, ascending in plug-in. */
  tried(): Candidate[];
}

/** A candidate could not be integrated. */
export class NumericalFailure extends Error {
  override readonly name = "NumericalFailure";
}

export function createChanceFinder(request: PlanRequest, step: number): ChanceFinder {
  const run = prepareRun(request.scenario, request.draws);
  const unplug = unplugTime(request);
  const { departure } = request.wish;
  const count = Math.floor(unplug / step) + 1;
  const grid = Float64Array.from({ length: count }, (_, i) => i * step);
  const soak = advanced(run, run.initial, 0, departure, coldTimeline(request), [...grid, unplug, departure]);
  const size = run.initial.length;
  const parts = run.network.parts.map((p) => p.name);
  const known = new Map<number | undefined, Candidate>();

  function stateAt(samples: Float64Array, s: number): EnsembleState {
    return { temps: samples.subarray(s * size, (s + 1) * size), parts, members: run.members };
  }

  function compute(index: number | undefined): Candidate {
    if (index === undefined) {
      return { plugIn: Number.POSITIVE_INFINITY, verdict: judge(request.criteria, stateAt(soak, count + 1)) };
    }
    const plugIn = grid[index];
    const samples = advanced(
      run,
      soak.subarray(index * size, (index + 1) * size),
      plugIn,
      departure,
      plannedTimeline(request, plugIn),
      [unplug, departure],
    );
    return { plugIn, verdict: judge(request.criteria, stateAt(samples, 1), stateAt(samples, 0)) };
  }

  return {
    run,
    step,
    candidate(index) {
      let found = known.get(index);
      if (found === undefined) {
        found = compute(index);
        known.set(index, found);
      }
      return found;
    },
    tried: () => [...known.values()].sort((a, b) => a.plugIn - b.plugIn),
  };
}

function advanced(
  run: EnsembleRun,
  state: Float64Array,
  from: number,
  to: number,
  timeline: ReturnType<typeof coldTimeline>,
  sampleTimes: number[],
): Float64Array {
  const result = run.advance({ state, from, to, timeline, sampleTimes });
  if (result.status !== "completed") throw new NumericalFailure(`${result.status}: ${result.remedy}`);
  return result.samples;
}
