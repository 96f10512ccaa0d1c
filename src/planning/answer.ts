import type { Band } from "../numerics/index.js";
import { type Aim, marginText, type Verdict } from "../readiness/index.js";
import { plugInGrid, type SearchRange, timeOf } from "../response/index.js";
import type { Candidate } from "./chance.js";
import { isHeatedAnyway } from "./heater-use.js";
import type { PlanLine, PlugInAnswer } from "./plan.js";
import type { PlanRequest } from "./request.js";
import { coverOffTime, unplugTime } from "./timeline.js";

/** What a search on one line ended in; without an index nobody plugs in. */
export interface Answered {
  readonly index?: number;
  readonly reached: boolean;
}

export interface Found {
  readonly heatNeeded: boolean;
  readonly reached: boolean;
  readonly aim: Aim;
  readonly range: SearchRange;
  readonly lines: { readonly least: PlanLine; readonly warmThrough: PlanLine };
}

/** The line to plan for: warm through where heat is needed and reaches it; without heat, whatever holds then. */
export function aimedAt(
  heatNeeded: boolean,
  least: Answered,
  warm: Answered,
): { readonly aim: Aim; readonly aimed: Answered } {
  if (!heatNeeded) {
    const isWarm = warm.reached && warm.index === undefined;
    return { aim: isWarm ? "warm-through" : "least", aimed: { reached: true } };
  }
  return warm.reached ? { aim: "warm-through", aimed: warm } : { aim: "least", aimed: least };
}

/** A plug-in with its verdict as an answer. */
export function answerOf(
  request: PlanRequest,
  judged: Pick<Candidate, "plugIn" | "verdict"> & { readonly energy: Band },
  { heatNeeded, reached, aim, range, lines }: Found,
): PlugInAnswer {
  const { wish, draws } = request;
  const { plugIn, verdict, energy } = judged;
  const { chance } = verdict;
  const { barred = [], heating } = request.settled ?? {};
  const isHeated = heatNeeded || isHeatedAnyway(request.scenario, wish.departure);
  // Heat that is on anyway can be too much as well.
  const isReady = reached && verdict.tooHot.length === 0;
  return {
    status: statusOf(isReady, isHeated),
    message: isReady ? "" : whyNot(request, plugIn, verdict, range),
    aim,
    lines,
    plugIn,
    heating,
    barred,
    heatNeeded: isHeated,
    verdict,
    weakest: aim === "least" ? verdict.weakest : verdict.warm.weakest,
    energy,
    chance,
    warmChance: verdict.warm.chance,
    unplug: unplugTime(request),
    coverOff: coverOffTime(request),
    departure: wish.departure,
    chanceError: Math.sqrt((chance * (1 - chance)) / draws.members),
  };
}

function statusOf(reached: boolean, isHeated: boolean): PlugInAnswer["status"] {
  if (!reached) return "not-reachable";
  return isHeated ? "ready" : "not-required";
}

function whyNot(
  request: PlanRequest,
  plugIn: number | undefined,
  verdict: Verdict,
  range: SearchRange,
): string {
  const [hot] = verdict.tooHot;
  if (hot !== undefined) {
    return `${hot.criterion.title} would get too hot: ${(-hot.margin.mid).toFixed(0)} K over its limit in the middle estimate`;
  }
  const { criterion, chance, margin } = verdict.weakest;
  return (
    `${whenOf(request, plugIn, range)} the chance is ${percent(verdict.chance)}, not ${percent(request.wish.chance)}: ` +
    `${criterion.title} is OK in ${Math.round(100 * chance)} of 100, its median margin is ${marginText(criterion, margin.mid)}`
  );
}

function whenOf(request: PlanRequest, plugIn: number | undefined, { first, last }: SearchRange): string {
  if (plugIn !== undefined)
    return plugIn <= timeOf(plugInGrid(request.scenario.start), first)
      ? "even plugged in at the earliest moment allowed"
      : "at best";
  const { barred = [], heating } = request.settled ?? {};
  if (heating?.staysOn) return "with the heat left on";
  if (request.heaters.length === 0)
    return barred.length > 0 ? "without a heater that may run here" : "without a heater";
  return first > last ? "too late to heat long enough: without heat" : "without heat";
}

const percent = (share: number) => `${Math.round(share * 100)} %`;
