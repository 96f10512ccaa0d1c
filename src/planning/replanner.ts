import {
  createHeatResponse,
  PLUG_IN_STEP,
  plugInGrid,
  type ReadResponse,
  type Steps,
  timeOf,
} from "../response/index.js";
import { type Draws, type EnsembleRun, firstMembers, prepareRun, someMembers } from "../simulation/index.js";
import { checkRequest } from "./check-request.js";
import { type Decision, decided, plugInRange } from "./decision.js";
import { type FirstAnswer, firstAnswer } from "./first-answer.js";
import { type Past, pastMargins } from "./first-reading.js";
import { USUAL_LEAD } from "./first-search.js";
import { prepareRequest } from "./heater-use.js";
import { createLastMinutes } from "./last-minutes.js";
import type { Plan } from "./plan.js";
import { elaborated } from "./preheat.js";
import type { PlanRequest, Wish } from "./request.js";
import { type Carriers, decisiveCarriers, firstCarriers } from "./spread.js";
import { type WhatIf, whatIfScenario } from "./what-if.js";
import { createWindRange, type WindRange } from "./wind-range.js";

/**
 * How sure a first answer is of itself:
 * - "looked-up": all members, read between courses played before;
 * - "carried-over": few members played in this situation, the others moved along with them from a situation alike;
 * - "few-members": few members only.
 * What each misses by is measured in test/planning/replanner.test.ts and benchmarks/replan.mjs.
 */
export type Basis = "looked-up" | "carried-over" | "few-members";

/**
 * Plans one aircraft again and again while departure, covers or wind are being moved: an answer at once from what was
 * played before, and on demand the decision and the plan that planPreheat makes. It plays lazily and in pieces.
 */
export interface Replanner {
  readonly request: PlanRequest;
  /** What is planned for a wish: the scenario up to some hours after the departure. */
  requestFor(wish: Wish): PlanRequest;
  /** The answer at once. */
  first(wish: Wish): BasedAnswer;
  /** The plug-in as planPreheat finds it. */
  decide(wish: Wish): Steps<Decision>;
  /** All that goes with a decision. */
  elaborate(wish: Wish, decision: Decision): Steps<Plan>;
  /** Plays what first answers of the basis "looked-up" read. */
  prepare(): Steps<void>;
  isPrepared(): boolean;
  /** Plays what first answers of other winds read, with the covers as they are and with all off, or all on. */
  prepareWhatIfs(): Steps<void>;
  /** The same aircraft with another cover or wind; answers first by what is known of this one. */
  whatIf(change: WhatIf): Replanner;
}

export interface BasedAnswer extends FirstAnswer {
  readonly basis: Basis;
  /** Members that the chance is counted over. */
  readonly members: number;
}

/** Members played for a first answer: where more are known of a situation alike, and where they are all there is. */
const CARRIERS = 16;
const FEW = 40;
/** [s] looked beyond a departure. */
const BEYOND = 6 * 3600;

/** Few members and a run of theirs. */
interface Played {
  readonly carriers: Carriers;
  readonly draws: Draws;
  readonly run: EnsembleRun;
}

interface Memory {
  /** All members, played in a situation alike. */
  readonly alike: Past | undefined;
  /** Few members in this situation, where they were played already. */
  readonly ofFew?: Pick<Played, "carriers" | "draws"> & { readonly response: ReadResponse };
  /** [grid steps] before unplugging of the last plug-in found. */
  readonly lead: number | undefined;
}

/**
 * @param request its scenario reaches over all departures that may be asked for; numerical failures of its runs are
 * thrown as NumericalFailure
 */
export function createReplanner(request: PlanRequest): Replanner {
  checkRequest(request);
  const nothing: Memory = { alike: undefined, lead: undefined };
  const asItStands = replanner(prepareRequest(request), nothing);
  if (asItStands.request.settled?.heating === undefined) return asItStands;
  return heatedReplanner(request);
}

/** Replans an aircraft that is heated now: whether the heat may stay on depends on the departure. */
function heatedReplanner(request: PlanRequest): Replanner {
  const known = new Map<boolean, Replanner>();
  const of = (wish: Wish): Replanner => {
    const prepared = prepareRequest({ ...request, wish });
    const staysOn = prepared.settled?.heating?.staysOn === true;
    const found = known.get(staysOn) ?? replanner(prepared, { alike: undefined, lead: undefined });
    known.set(staysOn, found);
    return found;
  };
  const first = of(request.wish);
  return {
    ...first,
    requestFor: (wish) => of(wish).requestFor(wish),
    first: (wish) => of(wish).first(wish),
    decide: (wish) => of(wish).decide(wish),
    elaborate: (wish, decision) => of(wish).elaborate(wish, decision),
    whatIf: (change) => createReplanner({ ...request, scenario: whatIfScenario(request.scenario, change) }),
  };
}

function replanner(request: PlanRequest, memory: Memory): Replanner {
  const { draws, scenario } = request;
  let { alike, lead } = memory;
  let all: Past | undefined;
  let few: ReadResponse | undefined;
  let played: Played | undefined;
  /** By the covers that are on. */
  const ranges = new Map<string, WindRange>();

  /** Few members to play for all: those on whom the answer hangs, as far as the past tells. */
  function chosen(past: Past | undefined, wanted: PlanRequest, near: number | undefined): Played {
    const { members } = draws;
    const count = Math.min(CARRIERS, members);
    const carriers =
      past === undefined
        ? firstCarriers(count, members)
        : decisiveCarriers(count, pastMargins(past, wanted, leadTime(wanted, near)), wanted.wish.chance);
    const ofFew = someMembers(draws, carriers.members);
    return { carriers, draws: ofFew, run: prepareRun(scenario, ofFew) };
  }

  function everyMember(): Past {
    if (all === undefined) {
      const response = createHeatResponse(request, draws);
      all = { response, lastMinutes: createLastMinutes(response, request) };
    }
    return all;
  }

  function rangeOf(past: Past, coversOn: Iterable<string>): WindRange {
    const ids = [...coversOn].sort();
    const key = ids.join(" ");
    const known = ranges.get(key);
    if (known !== undefined) return known;
    const near = lead === undefined ? undefined : plugInRange(request).last - lead;
    const { carriers, draws: ofFew } = chosen(past, request, near);
    const covered = { ...request, scenario: whatIfScenario(scenario, { coversOn: ids }) };
    const made = createWindRange(covered, carriers, ofFew);
    ranges.set(key, made);
    return made;
  }

  function isPrepared(): boolean {
    return (all?.response.isFilled() && all.lastMinutes.isFilled()) ?? false;
  }

  function requestFor(wish: Wish): PlanRequest {
    const duration = Math.min(scenario.duration, wish.departure + BEYOND);
    const changed = { ...request, wish, scenario: { ...scenario, duration } };
    checkRequest(changed);
    return changed;
  }

  function first(wish: Wish): BasedAnswer {
    const wanted = requestFor(wish);
    const near = lead === undefined ? undefined : plugInRange(wanted).last - lead;
    const answer = answered(wanted, near);
    if (answer.index !== undefined) lead = plugInRange(wanted).last - answer.index;
    return answer;
  }

  function answered(wanted: PlanRequest, near: number | undefined): BasedAnswer {
    const { members } = draws;
    if (all !== undefined && isPrepared()) {
      // The few play the last minutes only: they are chosen anew for each departure.
      const { carriers, run } = chosen(all, wanted, near);
      const sources = { response: all.response, past: all, few: run, carriers };
      return { ...firstAnswer(wanted, sources, near), basis: "looked-up", members };
    }
    const { ofFew } = memory;
    played ??=
      ofFew === undefined
        ? chosen(alike, wanted, near)
        : { ...ofFew, run: prepareRun(scenario, ofFew.draws) };
    if (alike !== undefined) {
      few ??= ofFew?.response ?? createHeatResponse(request, played.draws);
      const sources = { response: few, past: alike, few: played.run, carriers: played.carriers };
      return { ...firstAnswer(wanted, sources, near), basis: "carried-over", members };
    }
    const fewDraws = firstMembers(draws, FEW);
    few ??= createHeatResponse(request, fewDraws);
    const carriers = firstCarriers(played.draws.members, fewDraws.members);
    const sources = { response: few, few: played.run, carriers };
    const answer = firstAnswer({ ...wanted, draws: fewDraws }, sources, near);
    return { ...answer, basis: "few-members", members: fewDraws.members };
  }

  return {
    request,
    requestFor,
    first,
    *decide(wish) {
      const wanted = requestFor(wish);
      // Without a guess, so that all leads are looked at where none is enough.
      const { near } = answered(wanted, undefined);
      yield;
      const soaked = yield* everyMember().response.soakedTo(wish.departure - wish.unplugBefore);
      const decision = yield* decided(wanted, { soaked, near });
      if (decision.index !== undefined) lead = decision.range.last - decision.index;
      return decision;
    },
    elaborate: (wish, decision) => elaborated(requestFor(wish), decision),
    *prepare() {
      const { response, lastMinutes } = everyMember();
      yield* response.fill();
      yield* lastMinutes.fill();
      // From now on everything is read from all members.
      few = undefined;
      alike = undefined;
      played = undefined;
    },
    isPrepared,
    *prepareWhatIfs() {
      const past = everyMember();
      const { coversOn } = scenario.initial.configuration;
      const others = coversOn.size > 0 ? [] : scenario.kit.covers.map(({ id }) => id);
      for (const covers of [coversOn, others]) yield* rangeOf(past, covers).fill();
    },
    whatIf(change) {
      const { coversOn = scenario.initial.configuration.coversOn, windFactor = 1 } = change;
      const changed = { ...request, scenario: whatIfScenario(scenario, change) };
      if (all === undefined || !isPrepared()) return replanner(changed, { alike, lead });
      const { carriers, draws: ofFew, responseAt } = rangeOf(all, coversOn);
      const response = responseAt(windFactor);
      return replanner(changed, { alike: all, lead, ofFew: { carriers, draws: ofFew, response } });
    },
  };
}

/** [s] moment of plugging in at which members are ranked: the guess, or a usual lead. */
function leadTime(request: PlanRequest, near: number | undefined): number | undefined {
  if (request.heaters.length === 0) return undefined;
  const { first, last } = plugInRange(request);
  const usual = Math.round(last - USUAL_LEAD / PLUG_IN_STEP);
  return timeOf(plugInGrid(request.scenario.start), Math.max(first, Math.min(last, near ?? usual)));
}
