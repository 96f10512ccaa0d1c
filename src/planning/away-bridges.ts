import { SECONDS_OF_MINUTE } from "../units/index.js";
import type { AwayModel, Keeping, StartCases } from "./away-model.js";
import type { EngineRun } from "./away-run.js";

/** A way to be ready at the return with the wanted chance, tried with the model. Times are [s] from now. */
export interface Bridge {
  readonly kind: "cover" | "run" | "cover-and-run";
  /** Covers go on at the latest then. */
  readonly coverOn: number | undefined;
  /** A single run begins at the latest as given here; several as given. */
  readonly runs: readonly EngineRun[];
  /** A single run begins no sooner than this: sooner, the engine is cold again at the return. */
  readonly runFrom: number | undefined;
  /** Over all cases: each run could be started, and the engine at the return. */
  readonly chance: number;
}

/** The furthest return that can be had with the wanted chance. */
export interface Reach {
  readonly at: number;
  readonly keeping: Keeping;
}

/** [s] runs that are tried, shortest first, and the spacing of times that people can keep; project judgement. */
const RUN_LENGTHS = [10, 20, 30].map((min) => min * SECONDS_OF_MINUTE);
const LONGEST_RUN = RUN_LENGTHS[RUN_LENGTHS.length - 1];
const GRID = 5 * SECONDS_OF_MINUTE;
/** Most runs that are proposed: beyond that somebody tends an engine all day; project judgement. */
const MOST_RUNS = 4;
/** Earlier starts tried where the latest one is sure, but not together with the return. */
const EARLIER_TRIES = 6;

/**
 * What brings the aircraft to a start at `back` with the wanted chance; empty when nothing does. The cover where it is
 * enough; runs, which wet and wear the engine, only where it is not.
 */
export function bridgesTo(model: AwayModel, back: number, wanted: number): Bridge[] {
  const cover = coverBridge(model, back, wanted);
  if (cover !== undefined) return [cover];
  const run = runBridge(model, back, wanted, undefined);
  const both = model.hasCovers ? runBridge(model, back, wanted, 0) : undefined;
  return [run, both].filter((bridge) => bridge !== undefined);
}

/** The furthest return before `back` that covers and runs reach; undefined when the engine is not ready now. */
export function furthestReach(model: AwayModel, back: number, wanted: number): Reach | undefined {
  const coverOn = model.hasCovers ? 0 : undefined;
  const plainly: Keeping = { coverOn, runs: [] };
  if (model.start(plainly, 0).chance < wanted) return undefined;
  const keepingTo = (at: number): Keeping | undefined => {
    if (model.start(plainly, at).chance >= wanted) return plainly;
    for (let count = 1; count <= MOST_RUNS; count++) {
      const runs = evenRuns(at, count, LONGEST_RUN);
      if (isPossible(model, runs) && model.start({ coverOn, runs }, at).chance >= wanted) {
        return { coverOn, runs };
      }
    }
    return undefined;
  };
  let best: Reach = { at: 0, keeping: plainly };
  latest(0, gridDown(back), (at) => {
    const keeping = keepingTo(at);
    if (keeping !== undefined && at > best.at) best = { at, keeping };
    return keeping !== undefined;
  });
  return best;
}

function coverBridge(model: AwayModel, back: number, wanted: number): Bridge | undefined {
  if (!model.hasCovers) return undefined;
  const chanceWith = (coverOn: number) => model.start({ coverOn, runs: [] }, back).chance;
  if (chanceWith(0) < wanted) return undefined;
  const coverOn = latest(0, gridDown(back), (at) => chanceWith(at) >= wanted);
  return { kind: "cover", coverOn, runs: [], runFrom: undefined, chance: chanceWith(coverOn) };
}

/** The shortest single run that does, or else the fewest evenly spaced ones. */
function runBridge(
  model: AwayModel,
  back: number,
  wanted: number,
  coverOn: number | undefined,
): Bridge | undefined {
  const kind = coverOn === undefined ? ("run" as const) : ("cover-and-run" as const);
  const startOf = (runs: readonly EngineRun[]) => model.start({ coverOn, runs }, back);
  // Without a start that is sure there is no run.
  if (model.start({ coverOn, runs: [] }, 0).chance < wanted) return undefined;
  for (const duration of RUN_LENGTHS) {
    const found = singleRun(model, { back, wanted, duration, coverOn });
    if (found !== undefined) {
      const { at, from, chance } = found;
      return { kind, coverOn, runs: [{ at, duration }], runFrom: from, chance };
    }
  }
  for (let count = 2; count <= MOST_RUNS; count++) {
    for (const duration of RUN_LENGTHS.slice(1)) {
      const runs = evenRuns(back, count, duration);
      if (!isPossible(model, runs)) continue;
      const { chance } = startOf(runs);
      if (chance >= wanted) return { kind, coverOn, runs, runFrom: undefined, chance };
    }
  }
  return undefined;
}

/** The latest start of one run that is sure and lasts to the return, and the soonest that still lasts. */
function singleRun(
  model: AwayModel,
  ask: {
    readonly back: number;
    readonly wanted: number;
    readonly duration: number;
    readonly coverOn: number | undefined;
  },
): { readonly at: number; readonly from: number; readonly chance: number } | undefined {
  const { back, wanted, duration, coverOn } = ask;
  const last = gridDown(back - duration);
  if (last < 0) return undefined;
  const known = new Map<number, StartCases>();
  const tried = (at: number) => {
    const cases = known.get(at) ?? model.start({ coverOn, runs: [{ at, duration }] }, back);
    known.set(at, cases);
    return cases;
  };
  // Later runs leave the engine warmer at the return: what the latest sure start does not reach, no earlier one does.
  let at = latest(0, last, (t) => model.start({ coverOn, runs: [] }, t).chance >= wanted);
  for (let k = 0; tried(at).chance < wanted; k++) {
    if (k >= EARLIER_TRIES || at < GRID || tried(at).warmEnough < wanted) return undefined;
    at -= GRID;
  }
  if (!model.mayRun({ at, duration })) return undefined;
  const from = at - latest(0, at, (earlier) => tried(at - earlier).chance >= wanted);
  return { at, from, chance: tried(at).chance };
}

/** Runs that part the time until the return evenly. */
function evenRuns(back: number, count: number, duration: number): EngineRun[] {
  return Array.from({ length: count }, (_, i) => ({
    at: gridDown(((i + 1) * back) / (count + 1)),
    duration,
  }));
}

/** One after the other, outside, and over before the next. */
function isPossible(model: AwayModel, runs: readonly EngineRun[]): boolean {
  return runs.every(
    (run, i) => model.mayRun(run) && (i === 0 || runs[i - 1].at + runs[i - 1].duration < run.at),
  );
}

/** The last time of the grid from `low` to `high` that holds, where it holds up to some time; `low` is taken to hold. */
function latest(low: number, high: number, holds: (at: number) => boolean): number {
  if (high <= low) return low;
  if (holds(high)) return high;
  let [good, bad] = [low, high];
  while (bad - good > GRID) {
    const middle = low + gridDown((good + bad) / 2 - low);
    if (middle <= good || middle >= bad) break;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/** Down to a time that people can keep. */
function gridDown(at: number): number {
  return Math.floor(at / GRID) * GRID;
}
