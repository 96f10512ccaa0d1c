import { type Band, bandOf } from "../numerics/index.js";
import type { Aim } from "../readiness/index.js";
import { firstMembers, type Trajectory } from "../simulation/index.js";
import { type Answered, aimedAt, answerOf } from "./answer.js";
import { type Candidate, type ChanceFinder, chanceOn, createChanceFinder, type Soaked } from "./chance.js";
import { heatingSpan } from "./heater-use.js";
import type { PlanLine, PlugInAnswer } from "./plan.js";
import type { PlanRequest } from "./request.js";
import {
  latestPlugIn,
  PLUG_IN_STEP,
  refinePlugIn,
  SCOUT_RESOLUTION,
  type SearchRange,
  type SearchResult,
} from "./search.js";
import type { Steps } from "./steps.js";

/** Members that look for where to search and compare other plug-in times, to about 5 %; all of them decide. */
export const SCOUTS = 100;
/** Shortfall of the scouts' best chance, over three of its standard errors, at which all members need not try. */
const HOPELESS_GAP = 0.15;

/** What may be known before a plan is made, and spares work. */
export interface Known {
  readonly soaked?: Soaked;
  /** What a look-up found on each line, right to a step or two. */
  readonly near?: Partial<Readonly<Record<Aim, Near>>>;
}

export interface Near extends SearchResult {
  /** Chance of that plug-in, to a few percent. */
  readonly chance: number;
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
  const mayHeat = mayPlugIn(request, range);
  const heatNeeded = unheated.verdict.chance < wish.chance;
  const lines: { least: Answered; warm: Answered } = {
    least: heatNeeded && mayHeat ? yield* searchLine("least") : { reached: !heatNeeded },
    warm: { reached: unheated.verdict.warm.chance >= wish.chance },
  };
  if (!lines.warm.reached && mayHeat && lines.least.reached) lines.warm = yield* searchLine("warm-through");
  const { aim, aimed } = aimedAt(heatNeeded, lines.least, lines.warm);
  const { index } = aimed;
  const best = finder.candidate(index);
  const answer = answerOf(
    request,
    { ...best, energy: spent(best.heated) },
    {
      heatNeeded,
      reached: aimed.reached,
      aim,
      range,
      lines: { least: lineOf(lines.least, "least"), warmThrough: lineOf(lines.warm, "warm-through") },
    },
  );
  return { answer, best, index, range, finder, scouts };

  function* searchLine(aim: Aim): Steps<Answered> {
    const last = aim === "warm-through" && lines.least.index !== undefined ? lines.least.index : range.last;
    return yield* searched(aim, wish.chance, finder, scouts, { ...range, last }, near[aim]);
  }

  function lineOf({ index: at, reached }: Answered, aim: Aim): PlanLine {
    const candidate = finder.candidate(at);
    return {
      reached,
      plugIn: at === undefined ? undefined : at * PLUG_IN_STEP,
      chance: chanceOn(candidate.verdict, aim),
      energy: at === undefined ? 0 : spent(candidate.heated).mid,
    };
  }
}

/** Plug-ins that may be planned: within the heaters' own limits; empty where there is no time or place for them. */
export function plugInRange(request: PlanRequest): SearchRange {
  const { earliest, latest } = heatingSpan(request);
  return { first: Math.ceil(earliest / PLUG_IN_STEP), last: Math.floor(latest / PLUG_IN_STEP) };
}

/** Whether there is a plug-in to look for: a heater that is not on already, and time for it. */
export function mayPlugIn({ heaters, scenario }: PlanRequest, { first, last }: SearchRange): boolean {
  const { heatersOn } = scenario.initial.configuration;
  return first <= last && heaters.some((id) => !heatersOn.has(id));
}

/** [J] heat put in by the end of a course. */
export function spent({ energy, members }: Trajectory): Band {
  return bandOf(energy.subarray(energy.length - members));
}

function* searched(
  aim: Aim,
  wanted: number,
  finder: ChanceFinder,
  scouts: () => ChanceFinder,
  range: SearchRange,
  known: Near | undefined,
): Steps<SearchResult> {
  const all = finder.on(aim);
  const isHopeless = ({ reached, chance }: Near) => !reached && chance < wanted - HOPELESS_GAP;
  if (known !== undefined) {
    const near = Math.min(range.last, Math.max(range.first, known.index));
    if (!isHopeless(known)) return yield* refinePlugIn(all, wanted, range, near, 1);
    yield;
    // Among equals the longer lead, as a search over all of them has it.
    const isLongest = all.plannable(range.first) >= all.plannable(near);
    return isLongest ? { index: range.first, reached: false } : { ...known, index: near };
  }
  const few = scouts();
  if (few === finder) return yield* latestPlugIn(all, wanted, range);
  const found = yield* latestPlugIn(few.on(aim), wanted, range, SCOUT_RESOLUTION);
  const near = { ...found, chance: few.on(aim).plannable(found.index) };
  return isHopeless(near) ? near : yield* refinePlugIn(all, wanted, range, near.index);
}
