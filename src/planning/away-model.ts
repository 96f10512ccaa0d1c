import type { Configuration } from "../aircraft/index.js";
import { type Criterion, type EnsembleState, isGating, judge, type Verdict } from "../readiness/index.js";
import { play } from "../response/index.js";
import {
  configurationAt,
  type Draws,
  prepareRun,
  type Scenario,
  sampleAt,
  type TimedChange,
  type Trajectory,
  timelineOf,
} from "../simulation/index.js";
import { type EngineRun, warmedByRun } from "./away-run.js";
import { COURSE_STEP } from "./chance.js";
import { tightestMargins } from "./stay.js";

/** What is done until the engine is to be started. Times are [s] from now. */
export interface Keeping {
  /** Covers go on then, and come off some minutes before each start; undefined: nothing is on the cowl. */
  readonly coverOn: number | undefined;
  /** Ascending. */
  readonly runs: readonly EngineRun[];
}

export const BARE: Keeping = { coverOn: undefined, runs: [] };
export const COVERED: Keeping = { coverOn: 0, runs: [] };

/** A start after some keeping, over all cases. */
export interface StartCases {
  /** Share of all cases in which every run could be started and this start too [0..1]. */
  readonly chance: number;
  /** The same without asking whether the runs could be started. */
  readonly warmEnough: number;
  /** Criterion by criterion at this start. */
  verdict(): Verdict;
}

/** An aircraft away from power: what becomes of it under any keeping. */
export interface AwayModel {
  readonly criteria: readonly Criterion[];
  readonly hasCovers: boolean;
  /** [s] */
  readonly horizon: number;
  /** Nothing on the cowl, and every cover on throughout; sampled at every step. */
  readonly bare: Trajectory;
  readonly covered: Trajectory;
  start(keeping: Keeping, at: number): StartCases;
  /** Outside for all of the run: an engine is not run in a hangar. */
  mayRun(run: EngineRun): boolean;
}

/** @param coverOffBefore [s] covers come off this long before a start */
export function createAwayModel(request: {
  readonly scenario: Scenario;
  readonly criteria: readonly Criterion[];
  readonly draws: Draws;
  readonly coverOffBefore: number;
}): AwayModel {
  const { scenario, criteria, draws, coverOffBefore } = request;
  const { kit, events, duration } = scenario;
  const run = prepareRun(scenario, draws);
  const { members } = run;
  const parts = run.network.parts.map((p) => p.name);
  const covers = kit.covers.map((c) => c.id);
  const gating = criteria.filter(isGating);
  const moves = events.filter((e) => e.change.do === "move");
  const unheated: Configuration = {
    ...scenario.initial.configuration,
    heatersOn: new Set(),
    coversOn: new Set(),
  };

  function playFrom(state: Float64Array, times: readonly number[], coverChanges: readonly TimedChange[]) {
    const timeline = timelineOf(unheated, [...moves, ...coverChanges]);
    return play(run, { state, timeline, sampleTimes: times });
  }

  const grid = Array.from({ length: Math.floor(duration / COURSE_STEP) + 1 }, (_, i) => i * COURSE_STEP);
  if (grid[grid.length - 1] < duration) grid.push(duration);
  const coversOn = (at: number): TimedChange => ({ at, change: { do: "cover-on", covers } });
  const coversOff = (at: number): TimedChange => ({ at, change: { do: "cover-off", covers } });
  const bare = playFrom(run.initial, grid, []);
  const covered = covers.length === 0 ? bare : playFrom(run.initial, grid, [coversOn(0)]);

  /** From a state at `from` to a start at `to`, covers on from `coverOn` until shortly before the start. */
  function leg(state: Float64Array, from: number, to: number, coverOn: number | undefined): Float64Array {
    if (to <= from) return state;
    const on = Math.max(from, coverOn ?? to);
    const off = Math.max(from, to - coverOffBefore);
    const course = playFrom(state, [from, to], on < off ? [coversOn(on), coversOff(off)] : []);
    return sampleAt(course, to);
  }

  /** The same from now on, beginning where a course that is known already parts from it. */
  function firstLeg(to: number, coverOn: number | undefined): Float64Array {
    const off = to - coverOffBefore;
    const isCovered = coverOn !== undefined && coverOn < off;
    const known = isCovered && coverOn <= 0 ? covered : bare;
    const until = isCovered ? (coverOn <= 0 ? off : coverOn) : to;
    const from = known.time.findLast((t) => t <= Math.max(0, until)) ?? 0;
    return leg(sampleAt(known, from), from, to, coverOn);
  }

  const margins = new Float64Array(members);

  /** Takes out the cases that cannot be started at some temperatures; the share of all that can. */
  function clearNotReady(temps: Float64Array, ready: Uint8Array): number {
    let able = 0;
    tightestMargins(gating, stateOf(temps), margins);
    for (let m = 0; m < members; m++) {
      if (margins[m] >= 0) able++;
      else ready[m] = 0;
    }
    return able / members;
  }

  const stateOf = (temps: Float64Array): EnsembleState => ({ temps, parts, members });

  function start({ coverOn, runs }: Keeping, at: number): StartCases {
    const ready = new Uint8Array(members).fill(1);
    let after: { readonly temps: Float64Array; readonly from: number } | undefined;
    const reach = (to: number) =>
      after === undefined ? firstLeg(to, coverOn) : leg(after.temps, after.from, to, coverOn);
    for (const each of runs) {
      const before = reach(each.at);
      clearNotReady(before, ready);
      const end = each.at + each.duration;
      const cooled = leg(before, each.at, end, undefined);
      after = { temps: warmedByRun(run, each, before, cooled), from: end };
    }
    const temps = reach(at);
    const warmEnough = clearNotReady(temps, ready);
    return { chance: shareOf(ready), warmEnough, verdict: () => judge(criteria, stateOf(temps)) };
  }

  return {
    criteria,
    hasCovers: covers.length > 0,
    horizon: duration,
    bare,
    covered,
    start,
    mayRun({ at, duration: lasts }) {
      const timeline = timelineOf(unheated, moves);
      const isOutside = (t: number) => configurationAt(timeline, t).place === "ramp";
      const moved = moves.filter((e) => e.at > at && e.at < at + lasts);
      return isOutside(at) && moved.every((e) => isOutside(e.at));
    },
  };
}

function shareOf(ready: Uint8Array): number {
  return ready.reduce((sum, r) => sum + r, 0) / ready.length;
}
