import { createHeatResponse, type Steps } from "../response/index.js";
import { type AnswerMemory, type BasedAnswer, createBasedAnswers } from "./based-answers.js";
import { checkRequest } from "./check-request.js";
import { type Decision, decided, plugInRange } from "./decision.js";
import { chooseFewMembers } from "./few-members.js";
import type { Past } from "./first-reading.js";
import { prepareRequest } from "./heater-use.js";
import { createLastMinutes } from "./last-minutes.js";
import type { Plan } from "./plan.js";
import { elaborated } from "./preheat.js";
import type { PlanRequest, Wish } from "./request.js";
import { type WhatIf, whatIfScenario } from "./what-if.js";
import { createWindRange, type WindRange } from "./wind-range.js";

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

/** [s] looked beyond a departure. */
const BEYOND = 6 * 3600;

interface Memory extends AnswerMemory {
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
  const { scenario } = request;
  const answers = createBasedAnswers(request, memory);
  const all = createAllMembers(request);
  const rangeOf = windRangesByCover(request);
  let { lead } = memory;

  function requestFor(wish: Wish): PlanRequest {
    const duration = Math.min(scenario.duration, wish.departure + BEYOND);
    const changed = { ...request, wish, scenario: { ...scenario, duration } };
    checkRequest(changed);
    return changed;
  }

  return {
    request,
    requestFor,
    first(wish) {
      const wanted = requestFor(wish);
      const answer = answers.answer(wanted, plugInAt(wanted, lead), all.ifPlayed());
      if (answer.index !== undefined) lead = plugInRange(wanted).last - answer.index;
      return answer;
    },
    *decide(wish) {
      const wanted = requestFor(wish);
      // Without a guess, so that all leads are looked at where none is enough.
      const { near } = answers.answer(wanted, undefined, all.ifPlayed());
      yield;
      const soaked = yield* all.get().response.soakedTo(wish.departure - wish.unplugBefore);
      const decision = yield* decided(wanted, { soaked, near });
      if (decision.index !== undefined) lead = decision.range.last - decision.index;
      return decision;
    },
    elaborate: (wish, decision) => elaborated(requestFor(wish), decision),
    *prepare() {
      const { response, lastMinutes } = all.get();
      yield* response.fill();
      yield* lastMinutes.fill();
      answers.forget();
    },
    isPrepared: () => all.ifPlayed() !== undefined,
    *prepareWhatIfs() {
      const past = all.get();
      const { coversOn } = scenario.initial.configuration;
      const others = coversOn.size > 0 ? [] : scenario.kit.covers.map(({ id }) => id);
      for (const covers of [coversOn, others]) yield* rangeOf(past, covers, lead).fill();
    },
    whatIf(change) {
      const { coversOn = scenario.initial.configuration.coversOn, windFactor = 1 } = change;
      const changed = { ...request, scenario: whatIfScenario(scenario, change) };
      const past = all.ifPlayed();
      if (past === undefined) return replanner(changed, { alike: answers.alike(), lead });
      const { carriers, draws, responseAt } = rangeOf(past, coversOn, lead);
      const response = responseAt(windFactor);
      return replanner(changed, { alike: past, lead, ofFew: { carriers, draws, response } });
    },
  };
}

/** All members of a request, made when they are first asked for. */
function createAllMembers(request: PlanRequest) {
  let all: Past | undefined;
  return {
    get(): Past {
      if (all === undefined) {
        const response = createHeatResponse(request, request.draws);
        all = { response, lastMinutes: createLastMinutes(response, request) };
      }
      return all;
    },
    /** Once all courses are played. */
    ifPlayed: () => (all?.response.isFilled() && all.lastMinutes.isFilled() ? all : undefined),
  };
}

/** What other winds bring, made once for each choice of covers that are on. */
function windRangesByCover(request: PlanRequest) {
  const ranges = new Map<string, WindRange>();
  return (past: Past, coversOn: Iterable<string>, lead: number | undefined): WindRange => {
    const ids = [...coversOn].sort();
    const key = ids.join(" ");
    const known = ranges.get(key);
    if (known !== undefined) return known;
    const { carriers, draws } = chooseFewMembers(request, past, request, plugInAt(request, lead));
    const covered = { ...request, scenario: whatIfScenario(request.scenario, { coversOn: ids }) };
    const made = createWindRange(covered, carriers, draws);
    ranges.set(key, made);
    return made;
  };
}

/** [grid index] of a plug-in so many steps before the last. */
function plugInAt(request: PlanRequest, lead: number | undefined): number | undefined {
  return lead === undefined ? undefined : plugInRange(request).last - lead;
}
