import type { Heater } from "../aircraft/index.js";
import { type Band, bandOf } from "../numerics/index.js";
import { marginText, type Verdict } from "../readiness/index.js";
import { firstMembers, type Trajectory } from "../simulation/index.js";
import { type Candidate, type ChanceFinder, createChanceFinder, type Soaked } from "./chance.js";
import type { PlugInAnswer } from "./plan.js";
import type { PlanRequest } from "./request.js";
import {
  latestPlugIn,
  refinePlugIn,
  SCOUT_RESOLUTION,
  type SearchRange,
  type SearchResult,
} from "./search.js";
import type { Steps } from "./steps.js";
import { coverOffTime, unplugTime } from "./timeline.js";

/** [s] grid of plug-in times: finer than anyone plugs in. */
export const PLUG_IN_STEP = 300;
/** Members that look for where to search and compare other plug-in times, to about 5 %; all of them decide. */
export const SCOUTS = 100;
/** Shortfall of the scouts' best chance, over three of its standard errors, at which all members need not try. */
const HOPELESS_GAP = 0.15;

/** What may be known before a plan is made, and spares work. */
export interface Known {
  readonly soaked?: Soaked;
  /** What a look-up found, right to a step or two. */
  readonly near?: Near;
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

export function* decided(request: PlanRequest, { soaked, near }: Known = {}): Steps<Decision> {
  const { wish, heaters, draws } = request;
  const range = plugInRange(request);
  const finder = createChanceFinder(request, PLUG_IN_STEP, draws, soaked);
  let known: ChanceFinder | undefined = draws.members <= SCOUTS ? finder : undefined;
  const scouts = () => {
    known ??= createChanceFinder(request, PLUG_IN_STEP, firstMembers(draws, SCOUTS));
    return known;
  };
  yield;
  const heatNeeded = finder.candidate(undefined).verdict.chance < wish.chance;
  const found =
    heatNeeded && heaters.length > 0 ? yield* searched(wish.chance, finder, scouts, range, near) : undefined;
  const best = finder.candidate(found?.index);
  const reached = found?.reached ?? !heatNeeded;
  const answer = answerOf(request, { ...best, energy: spent(best.heated) }, { heatNeeded, reached, range });
  return { answer, best, index: found?.index, range, finder, scouts };
}

/** Plug-ins that may be planned: within the heaters' longest-on times and before unplugging. */
export function plugInRange(request: PlanRequest): SearchRange {
  const unplug = unplugTime(request);
  const { scenario, heaters } = request;
  return {
    first: Math.max(0, Math.ceil((unplug - longestOn(scenario.kit.heaters, heaters)) / PLUG_IN_STEP)),
    last: Math.ceil(unplug / PLUG_IN_STEP) - 1,
  };
}

/** A plug-in with its verdict as an answer. */
export function answerOf(
  request: PlanRequest,
  judged: Pick<Candidate, "plugIn" | "verdict"> & { readonly energy: Band },
  found: { readonly heatNeeded: boolean; readonly reached: boolean; readonly range: SearchRange },
): PlugInAnswer {
  const { wish, draws } = request;
  const { heatNeeded, reached, range } = found;
  const { plugIn, verdict, energy } = judged;
  const { chance } = verdict;
  return {
    status: reached ? "ready" : "not-reachable",
    message: reached ? "" : whyNot(plugIn, verdict, wish.chance, range),
    ...{ plugIn, heatNeeded, verdict, energy, chance },
    unplug: unplugTime(request),
    coverOff: coverOffTime(request),
    departure: wish.departure,
    chanceError: Math.sqrt((chance * (1 - chance)) / draws.members),
  };
}

/** [J] heat put in by the end of a course. */
export function spent({ energy, members }: Trajectory): Band {
  return bandOf(energy.subarray(energy.length - members));
}

function* searched(
  wanted: number,
  finder: ChanceFinder,
  scouts: () => ChanceFinder,
  range: SearchRange,
  known: Near | undefined,
): Steps<SearchResult> {
  const isHopeless = ({ reached, chance }: Near) => !reached && chance < wanted - HOPELESS_GAP;
  if (known !== undefined) {
    if (!isHopeless(known)) return yield* refinePlugIn(finder, wanted, range, known.index, 1);
    yield;
    // Among equals the longer lead, as a search over all of them has it.
    const isLongest = finder.plannable(range.first) >= finder.plannable(known.index);
    return isLongest ? { index: range.first, reached: false } : known;
  }
  const few = scouts();
  if (few === finder) return yield* latestPlugIn(finder, wanted, range);
  const found = yield* latestPlugIn(few, wanted, range, SCOUT_RESOLUTION);
  const near = { ...found, chance: few.plannable(found.index) };
  return isHopeless(near) ? near : yield* refinePlugIn(finder, wanted, range, near.index);
}

/** [s] the shortest of the used heaters' longest-on times. */
function longestOn(kit: readonly Heater[], used: readonly string[]): number {
  return 3600 * Math.min(...kit.filter((h) => used.includes(h.id)).map((h) => h.longest_on_h), 1e6);
}

function whyNot(plugIn: number | undefined, verdict: Verdict, wanted: number, range: SearchRange): string {
  const [hot] = verdict.tooHot;
  if (hot !== undefined) {
    return `${hot.criterion.title} would get too hot: ${(-hot.margin.mid).toFixed(0)} K over its limit in the middle estimate`;
  }
  const { criterion, chance, margin } = verdict.weakest;
  const when =
    plugIn === undefined
      ? "without a heater"
      : plugIn === range.first * PLUG_IN_STEP
        ? "even plugged in at the earliest moment allowed"
        : "at best";
  return (
    `${when} the chance is ${percent(verdict.chance)}, not ${percent(wanted)}: ${criterion.title} holds in ` +
    `${percent(chance)} of cases, its median margin is ${marginText(criterion, margin.mid)}`
  );
}

const percent = (share: number) => `${Math.round(share * 100)} %`;
