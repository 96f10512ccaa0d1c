import { quantile } from "../numerics/index.js";
import { type Criterion, type EnsembleState, isGating, judge, marginOf } from "../readiness/index.js";
import { bandOf, ENSEMBLE_TOLERANCE } from "../simulation/index.js";
import { NumericalFailure } from "./chance.js";
import { answerOf, PLUG_IN_STEP, plugInRange } from "./decision.js";
import type { HeatResponse } from "./heat-response.js";
import type { PlugInAnswer } from "./plan.js";
import type { PlanRequest } from "./request.js";
import { latestPlugIn, refinePlugIn, type SearchResult } from "./search.js";
import { spreadOver } from "./spread.js";
import { tightestMargins } from "./stay.js";
import { finished } from "./steps.js";
import { plannedTimeline, unplugTime } from "./timeline.js";

/** Where a first answer is read from. */
export interface Sources {
  /** Played in this situation. */
  readonly response: HeatResponse;
  /** More members, among them those of `response`, played in a situation alike. */
  readonly alike?: HeatResponse;
}

export interface FirstAnswer extends PlugInAnswer {
  /** Grid index of the plug-in, to go on from; undefined when none was searched for. */
  readonly index: number | undefined;
}

/** [K] what happens between unplugging and the start moves the parts by a few kelvins; project judgement. */
const TAIL_TOLERANCE = 3 * ENSEMBLE_TOLERANCE;
/** [s] lead at which the cooling after unplugging is first looked at. */
const USUAL_LEAD = 7200;
/** Grid steps that a plug-in may move before that cooling is looked at again. */
const SAME_TAIL = 2;
const TAILS_MOST = 3;
/** Chance below the wanted one from which on the unheated engine's last minutes need not be played. */
const CLEARLY_COLD = 0.05;

/**
 * When to plug in, read from courses played before. The cooling from unplugging to the start is played once for a lead
 * near the answer and taken as the same for the leads around it.
 * @param near grid index of a plug-in near the answer, from a departure or a situation alike
 */
export function firstAnswer(
  request: PlanRequest,
  { response, alike }: Sources,
  near: number | undefined,
): FirstAnswer {
  const { wish, criteria, heaters } = request;
  const unplug = unplugTime(request);
  const { run, parts } = response;
  const members = (alike ?? response).members;
  const range = plugInRange(request);
  const rows = parts.length;
  const gating = criteria.filter(isGating);
  const ceilings = criteria.filter((c) => c.judged === "while-heating");
  const few = new Float64Array(rows * response.members);
  const old = new Float64Array(alike === undefined ? 0 : rows * members);
  const drop = new Float64Array(few.length);
  const margins = new Float64Array(members);

  /** Temperatures of all members at unplugging, or at the start with the cooling added. */
  function stateAt(plugIn: number | undefined, isStart: boolean): EnsembleState {
    response.temps(plugIn, unplug, few);
    if (isStart) for (let k = 0; k < few.length; k++) few[k] += drop[k];
    if (alike === undefined) return { temps: Float64Array.from(few), parts, members };
    alike.temps(plugIn, unplug, old);
    const temps = new Float64Array(rows * members);
    spreadOver(few, old, members, temps);
    return { temps, parts, members };
  }

  function readyShare(state: EnsembleState): number {
    tightestMargins(gating, state, margins);
    let ready = 0;
    for (const margin of margins) if (margin >= 0) ready++;
    return ready / members;
  }

  /** Plays the last minutes of one plug-in. */
  function takeDrop(plugIn: number | undefined): void {
    response.temps(plugIn, unplug, few);
    const { state, status, remedy } = run.advance({
      state: Float64Array.from(few),
      from: unplug,
      to: wish.departure,
      timeline: plannedTimeline(request, undefined),
      tolerance: TAIL_TOLERANCE,
    });
    if (status !== "completed") throw new NumericalFailure(`${status}: ${remedy}`);
    for (let k = 0; k < few.length; k++) drop[k] = state[k] - few[k];
  }

  const chances = {
    step: PLUG_IN_STEP,
    plannable(index: number): number {
      const plugIn = index * PLUG_IN_STEP;
      const chance = readyShare(stateAt(plugIn, true));
      return chance > 0 && ceilings.length > 0 && overheats(ceilings, stateAt(plugIn, false)) ? 0 : chance;
    },
  };

  function searched(): SearchResult {
    let index = near ?? Math.max(range.first, range.last - Math.round(USUAL_LEAD / PLUG_IN_STEP));
    index = Math.min(range.last, Math.max(range.first, index));
    let found: SearchResult | undefined;
    for (let tails = 0; tails < TAILS_MOST; tails++) {
      takeDrop(index * PLUG_IN_STEP);
      found =
        near === undefined && found === undefined
          ? finished(latestPlugIn(chances, wish.chance, range))
          : finished(refinePlugIn(chances, wish.chance, range, index, SAME_TAIL));
      if (found === undefined) throw new Error("a search that nobody stops ended without a result");
      const moved = Math.abs(found.index - index);
      index = found.index;
      if (moved <= SAME_TAIL) break;
    }
    return found as SearchResult;
  }

  const heatNeeded = isHeatNeeded();
  const found = heatNeeded && heaters.length > 0 ? searched() : undefined;
  const plugIn = found === undefined ? undefined : found.index * PLUG_IN_STEP;
  if (found === undefined) takeDrop(undefined);
  const verdict = judge(criteria, stateAt(plugIn, true), stateAt(plugIn, false));
  const energy = new Float64Array(response.members);
  if (plugIn !== undefined) response.energy(plugIn, unplug, energy);
  const judged = { plugIn, verdict, energy: bandOf(energy) };
  const reached = found?.reached ?? !heatNeeded;
  return { ...answerOf(request, judged, { heatNeeded, reached, range }), index: found?.index };

  function isHeatNeeded(): boolean {
    drop.fill(0);
    if (readyShare(stateAt(undefined, true)) < wish.chance - CLEARLY_COLD) return true;
    takeDrop(undefined);
    return readyShare(stateAt(undefined, true)) < wish.chance;
  }
}

function overheats(ceilings: readonly Criterion[], state: EnsembleState): boolean {
  const values = new Float64Array(state.members);
  return ceilings.some((criterion) => {
    criterion.values(state, values);
    return marginOf(criterion, quantile(values, 0.5)) < 0;
  });
}
