import type { Heater } from "../aircraft/index.js";
import { marginText } from "../readiness/index.js";
import { type Band, bandOf, firstMembers, joined, type Trajectory, thinned } from "../simulation/index.js";
import {
  type Candidate,
  type ChanceFinder,
  COURSE_STEP,
  createChanceFinder,
  NumericalFailure,
} from "./chance.js";
import { checkRequest } from "./check-request.js";
import { tollOf } from "./left-on.js";
import type { Plan } from "./plan.js";
import { triedRemedies } from "./remedies.js";
import type { PlanRequest } from "./request.js";
import {
  latestPlugIn,
  refinePlugIn,
  SCOUT_RESOLUTION,
  type SearchRange,
  type SearchResult,
} from "./search.js";
import { readySince, readyTimes, stayWarm } from "./stay.js";
import { coveredTimeline, coverOffTime, plannedTimeline, unplugTime } from "./timeline.js";

/** [s] grid of plug-in times: finer than anyone plugs in. */
const PLUG_IN_STEP = 300;
/** Members that look for where to search and compare other plug-in times, to about 5 %; all of them decide. */
const SCOUTS = 100;
/** Shortfall of the scouts' best chance, over three of its standard errors, at which all members need not try. */
const HOPELESS_GAP = 0.15;
/** [s] delays and habits that are compared with the plan. */
const DELAYS = [1800, 3600, 7200];
const HABITS = [7200, 14_400];

export type PlanFailure = { readonly status: "cancelled" | "failed"; readonly message: string };

/**
 * Latest plug-in for a wanted chance of being ready, and all that goes with it. Throws RangeError for a request that
 * makes no sense; numerical trouble, a stop and unreachable departures are statuses.
 */
export function planPreheat(request: PlanRequest): Plan | PlanFailure {
  checkRequest(request);
  try {
    return plan(request);
  } catch (error) {
    if (error instanceof NumericalFailure) return { status: "failed", message: error.message };
    if (error instanceof Cancelled) return { status: "cancelled", message: "planning was stopped" };
    throw error;
  }
}

class Cancelled extends Error {}

function plan(request: PlanRequest): Plan {
  const { wish, scenario, heaters, criteria, draws } = request;
  const progress = progressOf(request);
  const unplug = unplugTime(request);
  const range = {
    first: Math.max(0, Math.ceil((unplug - longestOn(scenario.kit.heaters, heaters)) / PLUG_IN_STEP)),
    last: Math.ceil(unplug / PLUG_IN_STEP) - 1,
  };
  const finder = createChanceFinder(request, PLUG_IN_STEP, draws);
  const scouts =
    draws.members <= SCOUTS ? finder : createChanceFinder(request, PLUG_IN_STEP, firstMembers(draws, SCOUTS));
  progress();
  const unheated = finder.candidate(undefined);
  const heatNeeded = unheated.verdict.chance < wish.chance;
  const found =
    heatNeeded && heaters.length > 0 ? searched(wish.chance, finder, scouts, range, progress) : undefined;
  const best = finder.candidate(found?.index);
  const reached = found?.reached ?? !heatNeeded;

  const { course, covered } = courses(request, finder, best);
  const { chance } = best.verdict;
  return {
    status: reached ? "ready" : "not-reachable",
    message: reached ? "" : whyNot(best, wish.chance, range),
    plugIn: best.plugIn,
    heatNeeded,
    unplug,
    coverOff: coverOffTime(request),
    departure: wish.departure,
    chance,
    chanceError: Math.sqrt((chance * (1 - chance)) / draws.members),
    verdict: best.verdict,
    window: windowOf(course, covered, request),
    stayWarm: {
      covered: stayWarm(covered, criteria, wish.chance, wish.departure),
      uncovered: stayWarm(course, criteria, wish.chance, wish.departure),
    },
    energy: spent(course),
    late: late(scouts, found?.index, range, progress),
    habits: heatNeeded ? habits(request, scouts, range, progress) : [],
    curve: finder.tried().map((c) => ({ plugIn: c.plugIn ?? 0, chance: c.verdict.chance })),
    toll:
      best.plugIn === undefined
        ? undefined
        : { planned: tollOf(request, best.plugIn), leftOn: tollOf(request, 0) },
    course,
    remedies: reached
      ? []
      : triedRemedies(request, firstMembers(draws, SCOUTS), range.first * PLUG_IN_STEP, progress),
  };
}

function searched(
  wanted: number,
  finder: ChanceFinder,
  scouts: ChanceFinder,
  range: SearchRange,
  onTry: () => void,
): SearchResult {
  if (scouts === finder) return latestPlugIn(finder, wanted, range, onTry);
  const near = latestPlugIn(scouts, wanted, range, onTry, SCOUT_RESOLUTION);
  const hopeless = !near.reached && scouts.candidate(near.index).verdict.chance < wanted - HOPELESS_GAP;
  return hopeless ? near : refinePlugIn(finder, wanted, range, near.index, onTry);
}

/** [s] the shortest of the used heaters' longest-on times. */
function longestOn(kit: readonly Heater[], used: readonly string[]): number {
  return 3600 * Math.min(...kit.filter((h) => used.includes(h.id)).map((h) => h.longest_on_h), 1e6);
}

function whyNot({ verdict, plugIn }: Candidate, wanted: number, range: SearchRange): string {
  const [hot] = verdict.tooHot;
  if (hot !== undefined) {
    return `${hot.criterion.title} would get too hot: ${(-hot.margin.mid).toFixed(0)} K over its limit in the middle estimate`;
  }
  const { criterion, chance, margin } = verdict.binding;
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

/** The planned course from now to the end, and the one with covers left on from unplugging on. */
function courses(
  request: PlanRequest,
  finder: ChanceFinder,
  { plugIn, heated }: Candidate,
): { course: Trajectory; covered: Trajectory } {
  const { duration } = request.scenario;
  const { departure } = request.wish;
  const unplug = unplugTime(request);
  const from = plugIn ?? departure;
  const before = thinned(finder.soak, (t) => t <= from && (t === from || t % COURSE_STEP === 0));
  const toDeparture = plugIn === undefined ? heated : joined(before, heated);
  const after = finder.onward(heated, departure, duration, plannedTimeline(request, plugIn));
  return {
    course: joined(toDeparture, after),
    covered: finder.onward(heated, unplug, duration, coveredTimeline(request, plugIn)),
  };
}

/** From when to when it is ready, over the members that are ready at departure; covers left on after unplugging. */
function windowOf(course: Trajectory, covered: Trajectory, { criteria, wish }: PlanRequest): Plan["window"] {
  const since = readySince(course, criteria, wish.departure).filter((t) => Number.isFinite(t));
  const lasting = readyTimes(covered, criteria, wish.departure).filter((t) => t > 0);
  if (since.length === 0 || lasting.length === 0) return undefined;
  return { opens: bandOf(since), closes: bandOf(lasting.map((t) => wish.departure + t)) };
}

function late(
  finder: ChanceFinder,
  index: number | undefined,
  range: SearchRange,
  onTry: () => void,
): Plan["late"] {
  if (index === undefined) return [];
  return DELAYS.flatMap((delay) => {
    const later = index + Math.round(delay / finder.step);
    if (later > range.last) return [];
    const { verdict } = finder.candidate(later);
    onTry();
    return [{ lateBy: delay, plugIn: later * finder.step, chance: verdict.chance }];
  });
}

function habits(
  request: PlanRequest,
  finder: ChanceFinder,
  range: SearchRange,
  onTry: () => void,
): Plan["habits"] {
  if (request.heaters.length === 0) return [];
  return HABITS.flatMap((lead) => {
    const index = Math.round((request.wish.departure - lead) / finder.step);
    if (index < range.first || index > range.last) return [];
    const { verdict, heated } = finder.candidate(index);
    onTry();
    return [{ lead, plugIn: index * finder.step, chance: verdict.chance, energy: spent(heated).mid }];
  });
}

/** [J] heat put in by the end of a course. */
function spent({ energy, members }: Trajectory): Band {
  return bandOf(energy.subarray(energy.length - members));
}

function progressOf({ onProgress }: PlanRequest): () => void {
  let tries = 0;
  return () => {
    tries++;
    // How many tries it takes is not known beforehand; the share approaches 1.
    if (onProgress !== undefined && !onProgress(1 - 1 / (1 + tries / 6))) throw new Cancelled();
  };
}
