import { type Finding, finding } from "../findings/index.js";
import {
  finished,
  NumericalFailure,
  PLUG_IN_STEP,
  plugInGrid,
  type SearchRange,
  type Steps,
  stepAt,
} from "../response/index.js";
import { firstMembers, joined, type Trajectory, thinned } from "../simulation/index.js";
import { type Candidate, type ChanceFinder, COURSE_STEP } from "./chance.js";
import { checkRequest } from "./check-request.js";
import { type Decision, decided, SCOUTS, spent } from "./decision.js";
import { prepareRequest } from "./heater-use.js";
import { heatingImpact } from "./left-on.js";
import type { ChanceAt, Plan } from "./plan.js";
import { triedRemedies } from "./remedies.js";
import type { PlanRequest } from "./request.js";
import { readyTimes, stayOf } from "./stay.js";
import { coveredTimeline, plannedTimeline, unplugTime } from "./timeline.js";
import { coveredWindow, plannedWindow } from "./window.js";

/** [s] delays and habits that are compared with the plan. */
const DELAYS = [1800, 3600, 7200];
const HABITS = [7200, 14_400];
/** Grid steps of a quarter of an hour. */
const QUARTER = 900 / PLUG_IN_STEP;

export type PlanFailure = { readonly status: "cancelled" | "failed"; readonly message: Finding };

/**
 * Latest plug-in for a wanted chance of being ready, and all that goes with it. Throws RangeError for a request that
 * makes no sense; numerical trouble, a stop and unreachable departures are statuses.
 */
export function planPreheat(request: PlanRequest): Plan | PlanFailure {
  checkRequest(request);
  let tries = 0;
  // How many tries it takes is not known beforehand; the share approaches 1.
  const goOn = () => request.onProgress?.(1 - 1 / (1 + ++tries / 6)) ?? true;
  try {
    return (
      finished(planned(prepareRequest(request)), goOn) ?? {
        status: "cancelled",
        message: finding("was-stopped", {}),
      }
    );
  } catch (error) {
    if (error instanceof NumericalFailure)
      return { status: "failed", message: finding("not-calculated", { remedy: error.message }) };
    throw error;
  }
}

function* planned(request: PlanRequest): Steps<Plan> {
  return yield* elaborated(request, yield* decided(request));
}

/** The whole plan around a plug-in that is decided. */
export function* elaborated(request: PlanRequest, decision: Decision): Steps<Plan> {
  const { wish, criteria, draws } = request;
  const { answer, best, index, range, finder, scouts } = decision;
  const { course, covered } = courses(request, finder, best);
  yield;
  const lasting = {
    covered: readyTimes(covered, criteria, wish.departure),
    uncovered: readyTimes(course, criteria, wish.departure),
  };
  const horizon = request.scenario.duration - wish.departure;
  yield;
  const quarter = index === undefined ? undefined : quarterMore(decision, index);
  yield;
  return {
    ...answer,
    window: plannedWindow(course, lasting.uncovered, request),
    coveredWindow: coveredWindow(covered, lasting.covered, request),
    quarterMore: quarter,
    stayWarm: {
      covered: stayOf(lasting.covered, wish.chance, horizon),
      uncovered: stayOf(lasting.uncovered, wish.chance, horizon),
    },
    energy: spent(course),
    late: yield* late(scouts, index, range),
    habits: answer.heatNeeded && index !== undefined ? yield* habits(request, scouts, range) : [],
    curve: finder.tried().map(chanceAt),
    toll:
      best.plugIn === undefined
        ? undefined
        : { planned: heatingImpact(request, best.plugIn), leftOn: heatingImpact(request, 0) },
    course,
    remedies:
      answer.status === "not-reachable" ? yield* triedRemedies(request, firstMembers(draws, SCOUTS)) : [],
  };
}

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
  const { origin } = finder.grid;
  const isKept = (t: number) => t === 0 || t === from || (t - origin) % COURSE_STEP === 0;
  const before = thinned(finder.soak, (t) => t <= from && isKept(t));
  const toDeparture = plugIn === undefined ? heated : joined(before, heated);
  const after = finder.onward(heated, departure, duration, plannedTimeline(request, plugIn));
  return {
    course: joined(toDeparture, after),
    covered: finder.onward(heated, unplug, duration, coveredTimeline(request, plugIn)),
  };
}

/** Chances with a quarter of an hour more heat, as far as few members tell it; undefined where there is no time for it. */
function quarterMore({ answer, range, scouts }: Decision, index: number): Plan["quarterMore"] {
  if (index - QUARTER < range.first) return undefined;
  const earlier = scouts().candidate(index - QUARTER).verdict;
  const now = scouts().candidate(index).verdict;
  const clamped = (chance: number) => Math.min(1, Math.max(0, chance));
  return {
    chance: clamped(answer.chance + earlier.chance - now.chance),
    warmChance: clamped(answer.warmChance + earlier.warm.chance - now.warm.chance),
  };
}

function chanceAt({ plugIn = 0, verdict }: Candidate): ChanceAt {
  return { plugIn, chance: verdict.chance, warmChance: verdict.warm.chance };
}

function* late(
  scouts: () => ChanceFinder,
  index: number | undefined,
  range: SearchRange,
): Steps<Plan["late"]> {
  const entries: Plan["late"][number][] = [];
  if (index === undefined) return entries;
  for (const delay of DELAYS) {
    const later = index + Math.round(delay / PLUG_IN_STEP);
    if (later > range.last) break;
    entries.push({ lateBy: delay, ...chanceAt(scouts().candidate(later)) });
    yield;
  }
  return entries;
}

function* habits(
  request: PlanRequest,
  scouts: () => ChanceFinder,
  range: SearchRange,
): Steps<Plan["habits"]> {
  const entries: Plan["habits"][number][] = [];
  if (request.heaters.length === 0) return entries;
  for (const lead of HABITS) {
    const index = stepAt(plugInGrid(request.scenario.start), request.wish.departure - lead);
    if (index < range.first || index > range.last) continue;
    const tried = scouts().candidate(index);
    entries.push({ lead, ...chanceAt(tried), energy: spent(tried.heated).mid });
    yield;
  }
  return entries;
}
