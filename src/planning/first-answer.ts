import { type Band, bandOf } from "../numerics/index.js";
import { type Aim, type EnsembleState, gatingOf, judge, type Verdict } from "../readiness/index.js";
import {
  type FoundPlugIn,
  finished,
  type HeatResponse,
  latestPlugIn,
  overheats,
  PLUG_IN_STEP,
  playOn,
  plugInGrid,
  type ReadResponse,
  refinePlugIn,
  type SearchRange,
  type SearchResult,
  timeOf,
} from "../response/index.js";
import { ENSEMBLE_TOLERANCE, type EnsembleRun } from "../simulation/index.js";
import { type Answered, aimedAt, answerOf } from "./answer.js";
import { chanceOn } from "./chance.js";
import { mayPlugIn, plugInRange } from "./decision.js";
import type { LastMinutes } from "./last-minutes.js";
import type { PlanLine, PlugInAnswer } from "./plan.js";
import type { PlanRequest } from "./request.js";
import { type Carriers, spreadOver } from "./spread.js";
import { tightestMargins } from "./stay.js";
import { plannedTimeline, unplugTime } from "./timeline.js";

/** Where a first answer is read from. */
export interface Sources {
  /** Played in this situation. */
  readonly response: ReadResponse;
  /** All members, among them those of `response`, played in this situation or in one alike. */
  readonly past?: Past;
  /** A few of all members in this situation, to play the last minutes with. */
  readonly few: EnsembleRun;
  /** Which of all members the few are; where `response` has not all members, they are among its members. */
  readonly carriers: Carriers;
}

/** What all members did. */
export interface Past {
  readonly response: HeatResponse;
  readonly lastMinutes: LastMinutes;
}

/** Each member's tightest margin at the start, in what was played before. */
export function pastMargins(
  { response, lastMinutes }: Past,
  request: PlanRequest,
  plugIn: number | undefined,
): Float64Array {
  const { parts, members } = response;
  const unplug = unplugTime(request);
  const temps = new Float64Array(parts.length * members);
  response.temps(plugIn, unplug, temps);
  lastMinutes.add(plugIn !== undefined, unplug, temps);
  const margins = new Float64Array(members);
  tightestMargins(gatingOf(request.criteria, "warm-through"), { temps, parts, members }, margins);
  return margins;
}

export interface FirstAnswer extends PlugInAnswer {
  /** Grid index of the plug-in, to go on from; undefined when none was searched for. */
  readonly index: number | undefined;
  /** What was found on each line that was searched. */
  readonly near: Partial<Readonly<Record<Aim, FoundPlugIn>>>;
}

/** [K] what happens between unplugging and the start moves the parts by a few kelvins; project judgement. */
const TAIL_TOLERANCE = 3 * ENSEMBLE_TOLERANCE;
/** [s] lead at which the cooling after unplugging is first looked at. */
export const USUAL_LEAD = 7200;
/** Grid steps that a plug-in may move before that cooling is looked at again. */
const SAME_TAIL = 2;
const TAILS_MOST = 3;
/** Chance below the wanted one from which on the unheated engine's last minutes need not be played. */
const CLEARLY_COLD = 0.05;

/**
 * When to plug in, read from courses played before. The cooling from unplugging to the start is played with a few members
 * for a lead near the answer, and taken as the same for the leads around it.
 * @param near grid index of a plug-in near the answer, from a departure or a situation alike
 */
export function firstAnswer(
  request: PlanRequest,
  { response, past, few, carriers }: Sources,
  near: number | undefined,
): FirstAnswer {
  const { wish, criteria } = request;
  const unplug = unplugTime(request);
  const { parts } = response;
  const { members } = past?.response ?? response;
  const range = plugInRange(request);
  const grid = plugInGrid(request.scenario.start);
  const gating = { least: gatingOf(criteria, "least"), "warm-through": gatingOf(criteria, "warm-through") };
  const played = new Float64Array(parts.length * response.members);
  const known = new Float64Array(parts.length * members);
  const ofFew = new Float64Array(parts.length * few.members);
  const drop = new Float64Array(ofFew.length);
  const margins = new Float64Array(members);

  let isHeated = false;

  function readAt(plugIn: number | undefined): void {
    isHeated = plugIn !== undefined;
    response.temps(plugIn, unplug, played);
    if (past === undefined || past.response === response) known.set(played);
    else past.response.temps(plugIn, unplug, known);
  }

  /** Temperatures of all members at unplugging, as last read. */
  function atUnplug(): EnsembleState {
    if (response.members === members) return { temps: known.slice(), parts, members };
    const temps = new Float64Array(known.length);
    spreadOver(played, known, carriers, temps);
    return { temps, parts, members };
  }

  /** The same at the start, after the cooling. */
  function atStart(): EnsembleState {
    const temps = new Float64Array(known.length);
    const old = known.slice();
    past?.lastMinutes.add(isHeated, unplug, old);
    takeFew();
    for (let k = 0; k < ofFew.length; k++) ofFew[k] += drop[k];
    spreadOver(ofFew, old, carriers, temps);
    return { temps, parts, members };
  }

  function takeFew(): void {
    if (response.members === few.members) {
      ofFew.set(played);
      return;
    }
    for (let row = 0, k = 0; row < parts.length; row++) {
      for (const m of carriers.members) ofFew[k++] = played[row * response.members + m];
    }
  }

  /** Plays the last minutes after a plug-in. */
  function takeDrop(plugIn: number | undefined): void {
    readAt(plugIn);
    takeFew();
    const lastMinutes = plannedTimeline(request, undefined);
    const state = playOn(few, ofFew, [unplug, wish.departure], lastMinutes, TAIL_TOLERANCE);
    for (let k = 0; k < drop.length; k++) drop[k] = state[k] - ofFew[k];
  }

  function readyShare(state: EnsembleState, aim: Aim): number {
    tightestMargins(gating[aim], state, margins);
    let ready = 0;
    for (const margin of margins) if (margin >= 0) ready++;
    return ready / members;
  }

  const chancesOn = (aim: Aim) => ({
    step: PLUG_IN_STEP,
    plannable(index: number): number {
      readAt(timeOf(grid, index));
      return overheats(criteria, atUnplug()) ? 0 : readyShare(atStart(), aim);
    },
  });

  function searched(aim: Aim, last: number): SearchResult {
    const within = { first: range.first, last };
    const usual = last - Math.round(USUAL_LEAD / PLUG_IN_STEP);
    let index = Math.min(last, Math.max(range.first, near ?? usual));
    let found: SearchResult | undefined;
    for (let tails = 0; tails < TAILS_MOST; tails++) {
      takeDrop(timeOf(grid, index));
      found = searchedFrom(aim, within, index, found !== undefined || near !== undefined);
      const moved = Math.abs(found.index - index);
      index = found.index;
      if (moved === 0) return found;
      if (moved <= SAME_TAIL) break;
    }
    return settledOn(aim, found as SearchResult);
  }

  /** The cooling was played for another plug-in near by: where it takes more with its own, a little earlier. */
  function settledOn(aim: Aim, { index, reached }: SearchResult): SearchResult {
    const earliest = Math.max(range.first, index - SAME_TAIL);
    for (let i = index; reached && i >= earliest; i--) {
      takeDrop(timeOf(grid, i));
      if (chancesOn(aim).plannable(i) >= wish.chance) return { index: i, reached };
    }
    return { index: reached ? earliest : index, reached: false };
  }

  function searchedFrom(aim: Aim, within: SearchRange, index: number, isNear: boolean): SearchResult {
    // Where the longest heating is not enough before it overheats anything, none is.
    if (isNear && index === range.first && !overheats(criteria, atUnplug())) {
      if (readyShare(atStart(), aim) < wish.chance) return { index, reached: false };
    }
    const steps = isNear
      ? refinePlugIn(chancesOn(aim), wish.chance, within, index, SAME_TAIL)
      : latestPlugIn(chancesOn(aim), wish.chance, within);
    const found = finished(steps);
    if (found === undefined) throw new Error("a search that nobody stops ended without a result");
    return found;
  }

  /** Chances without heat: of the least, and of an engine warm through. */
  function unheated(): { least: number; warm: number } {
    readAt(undefined);
    const before = { least: readyShare(atUnplug(), "least"), warm: readyShare(atUnplug(), "warm-through") };
    if (before.least < wish.chance - CLEARLY_COLD) return { least: before.least, warm: 0 };
    takeDrop(undefined);
    return { least: readyShare(atStart(), "least"), warm: readyShare(atStart(), "warm-through") };
  }

  /** The verdict with a plug-in, its last minutes played around it. */
  function judgedAt(at: number | undefined): { verdict: Verdict; energy: Band } {
    const plugIn = at === undefined ? undefined : timeOf(grid, at);
    takeDrop(plugIn);
    const energy = new Float64Array(response.members);
    if (plugIn !== undefined) response.energy(plugIn, unplug, energy);
    return { verdict: judge(criteria, atStart(), atUnplug()), energy: bandOf(energy) };
  }

  /** A line as its plug-in is judged at last: what the search took for enough may have fallen short of it by then. */
  function lineOf({ index }: Answered, aim: Aim): PlanLine {
    const { verdict, energy } = judgedAt(index);
    const plugIn = index === undefined ? undefined : timeOf(grid, index);
    const chance = chanceOn(verdict, aim);
    const reached = chance >= wish.chance && (index === undefined || verdict.tooHot.length === 0);
    return { reached, plugIn, chance, energy: energy.mid };
  }

  const cold = unheated();
  const heatNeeded = cold.least < wish.chance;
  const mayHeat = mayPlugIn(request, range);
  const least: Answered = heatNeeded && mayHeat ? searched("least", range.last) : { reached: !heatNeeded };
  const isWarm = cold.warm >= wish.chance;
  const warm: Answered =
    !isWarm && mayHeat && least.reached
      ? searched("warm-through", least.index ?? range.last)
      : { reached: isWarm };
  const lines = { least: lineOf(least, "least"), warmThrough: lineOf(warm, "warm-through") };
  const { aim, aimed } = aimedAt(
    heatNeeded,
    { ...least, reached: lines.least.reached },
    { ...warm, reached: lines.warmThrough.reached },
  );
  const { verdict, energy } = judgedAt(aimed.index);
  const plugIn = aimed.index === undefined ? undefined : timeOf(grid, aimed.index);
  const found = { heatNeeded, reached: aimed.reached, aim, range, lines };
  return {
    ...answerOf(request, { plugIn, verdict, energy }, found),
    index: aimed.index,
    near: {
      ...(least.index === undefined
        ? {}
        : { least: { ...least, index: least.index, chance: lines.least.chance } }),
      ...(warm.index === undefined
        ? {}
        : { "warm-through": { ...warm, index: warm.index, chance: lines.warmThrough.chance } }),
    },
  };
}
