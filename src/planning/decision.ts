import { type Band, bandOf } from "../numerics/index.js";
import type { Aim } from "../readiness/index.js";
import {
  type FoundPlugIn,
  latestPlugIn,
  PLUG_IN_STEP,
  plugInGrid,
  SCOUT_RESOLUTION,
  type SearchRange,
  type Soaked,
  type Steps,
  settlePlugIn,
  stepAt,
  stepFrom,
  timeOf,
} from "../response/index.js";
import { configurationAt, firstMembers, type Trajectory, timelineOf } from "../simulation/index.js";
import { aimedAt, answerOf } from "./answer.js";
import { type Candidate, type ChanceFinder, chanceOn, createChanceFinder } from "./chance.js";
import { heatingSpan } from "./heater-use.js";
import type { PlanLine, PlugInAnswer } from "./plan.js";
import type { PlanRequest } from "./request.js";

/** Members that look for where to search and compare other plug-in times, to about 5 %; all of them decide. */
export const SCOUTS = 100;

/** What may be known before a plan is made, and spares work. */
export interface Known {
  readonly soaked?: Soaked;
  /** What a look-up found on each line, right to a step or two. */
  readonly near?: Partial<Readonly<Record<Aim, FoundPlugIn>>>;
}

/** When to plug in is decided; what was run for it serves the rest of the plan. */
export interface Decision {
  readonly answer: PlugInAnswer;
  readonly best: Candidate;
  /** Grid index of the plug-in that was searched for; undefined when none was. */
  readonly index: number | undefined;
  readonly range: SearchRange;
  readonly finder: ChanceFinder;
  /** A finder over fewer members, made when it is first wanted. */
  scouts(): ChanceFinder;
}

/**
 * Looks for the latest plug-in that has the engine warm through with the wanted chance; where none has, for the one that
 * has every part past the maker's limit. Where that limit holds without heat, no plug-in is planned.
 */
export function* decided(request: PlanRequest, { soaked, near = {} }: Known = {}): Steps<Decision> {
  const { wish, draws } = request;
  const range = plugInRange(request);
  const finder = createChanceFinder(request, PLUG_IN_STEP, draws, soaked);
  let known: ChanceFinder | undefined = draws.members <= SCOUTS ? finder : undefined;
  const scouts = () => {
    known ??= createChanceFinder(request, PLUG_IN_STEP, firstMembers(draws, SCOUTS));
    return known;
  };
  yield;
  const unheated = finder.candidate(undefined);
  const heatNeeded = unheated.verdict.chance < wish.chance;
  const isWarm = unheated.verdict.warm.chance >= wish.chance;
  const mayHeat = mayPlugIn(request, range);
  const looked: { least?: FoundPlugIn; warm?: FoundPlugIn } = {};
  if (heatNeeded && mayHeat) looked.least = yield* look("least", range);
  if (!isWarm && mayHeat && (looked.least?.reached ?? !heatNeeded)) {
    looked.warm = yield* look("warm-through", { ...range, last: looked.least?.index ?? range.last });
  }
  const warm = looked.warm?.reached ? yield* settle("warm-through", looked.warm) : looked.warm;
  const least = looked.least === undefined ? undefined : yield* settle("least", looked.least);
  const { aim, aimed } = aimedAt(heatNeeded, least ?? { reached: !heatNeeded }, warm ?? { reached: isWarm });
  const { index } = aimed;
  const best = finder.candidate(index);
  const judged = { ...best, energy: spent(best.heated) };
  const lines = { least: lineOf("least", least), warmThrough: lineOf("warm-through", warm) };
  const answer = answerOf(request, judged, { heatNeeded, reached: aimed.reached, aim, range, lines });
  return { answer, best, index, range, finder, scouts };

  /** What few members, or a look-up, say of a line. */
  function* look(aim: Aim, within: SearchRange): Steps<FoundPlugIn> {
    const known = near[aim];
    if (known !== undefined) {
      return { ...known, index: Math.min(within.last, Math.max(within.first, known.index)) };
    }
    const few = scouts().on(aim);
    const found = yield* latestPlugIn(few, wish.chance, within, scouts() === finder ? 1 : SCOUT_RESOLUTION);
    return { ...found, chance: few.plannable(found.index) };
  }

  /** The same with all members. */
  function* settle(aim: Aim, found: FoundPlugIn): Steps<FoundPlugIn> {
    const reach = near[aim] === undefined ? SCOUT_RESOLUTION - 1 : 1;
    return yield* settlePlugIn(finder.on(aim), wish.chance, range, found, reach);
  }

  function lineOf(aim: Aim, found: FoundPlugIn | undefined): PlanLine {
    if (found === undefined) {
      const chance = chanceOn(unheated.verdict, aim);
      return { reached: chance >= wish.chance, plugIn: undefined, chance, energy: 0 };
    }
    const { index: at, reached, chance } = found;
    const { heated } = (reached ? finder : scouts()).candidate(at);
    return { reached, plugIn: timeOf(finder.grid, at), chance, energy: spent(heated).mid };
  }
}

/** Plug-ins that may be planned: within the heaters' own limits; empty where there is no time or place for them. */
export function plugInRange(request: PlanRequest): SearchRange {
  const { earliest, latest } = heatingSpan(request);
  const grid = plugInGrid(request.scenario.start);
  return { first: stepFrom(grid, earliest), last: stepAt(grid, latest) };
}

/** Whether there is a plug-in to look for: a heater that is not on all the time already, and time for it. */
export function mayPlugIn({ heaters, scenario }: PlanRequest, { first, last }: SearchRange): boolean {
  const { initial, events } = scenario;
  const at = configurationAt(
    timelineOf(initial.configuration, events),
    timeOf(plugInGrid(scenario.start), first),
  );
  return first <= last && heaters.some((id) => !at.heatersOn.has(id));
}

/** [J] heat put in by the end of a course. */
export function spent({ energy, members }: Trajectory): Band {
  return bandOf(energy.subarray(energy.length - members));
}
