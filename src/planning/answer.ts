import { type Finding, type FindingValues, finding } from "../findings/index.js";
import type { Band } from "../numerics/index.js";
import { type Aim, marginMeasure, type Verdict } from "../readiness/index.js";
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
    message: isReady ? null : whyNot(request, plugIn, verdict, range),
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
): Finding {
  const [hot] = verdict.tooHot;
  if (hot !== undefined) {
    return finding("plan-too-hot", { criterion: hot.criterion.title, over_k: -hot.margin.mid });
  }
  const { criterion, chance, margin } = verdict.weakest;
  return finding("plan-unsure", {
    tried: triedWith(request, plugIn, range),
    chance: verdict.chance,
    wanted: request.wish.chance,
    criterion: criterion.title,
    ok: chance,
    margin: marginMeasure(criterion, margin.mid),
  });
}

function triedWith(
  request: PlanRequest,
  plugIn: number | undefined,
  { first, last }: SearchRange,
): FindingValues["plan-unsure"]["tried"] {
  if (plugIn !== undefined) {
    return plugIn <= timeOf(plugInGrid(request.scenario.start), first) ? "earliest" : "at-best";
  }
  const { barred = [], heating } = request.settled ?? {};
  if (heating?.staysOn) return "heat-left-on";
  if (request.heaters.length === 0) return barred.length > 0 ? "no-heater-allowed" : "no-heater";
  return first > last ? "too-late" : "without-heat";
}
