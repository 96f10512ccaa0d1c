import type { Heater } from "../aircraft/index.js";
import { bandOf, type EnsembleRun, type Trajectory, trajectory } from "../simulation/index.js";
import { type Candidate, type ChanceFinder, createChanceFinder, NumericalFailure } from "./chance.js";
import type { Plan } from "./plan.js";
import { triedRemedies } from "./remedies.js";
import type { PlanRequest } from "./request.js";
import { latestPlugIn } from "./search.js";
import { readyShare, stayWarm } from "./stay.js";
import { coldTimeline, coveredTimeline, plannedTimeline, strippedTimeline, unplugTime } from "./timeline.js";

/** [s] grid of plug-in times: finer than anyone plugs in. */
const PLUG_IN_STEP = 300;
/** [s] spacing of the course that is shown. */
const COURSE_STEP = 600;
/** [s] how long after unplugging the cooling is looked at. */
const STAY_HORIZON = 12 * 3600;

/**
 * Latest plug-in for a wanted chance of being ready, and all that goes with it.
 * Throws RangeError for a request that makes no sense; numerical trouble and unreachable departures are statuses.
 */
export function planPreheat(
  request: PlanRequest,
): Plan | { readonly status: "cancelled" | "failed"; readonly message: string } {
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
  const { wish, scenario, heaters, criteria } = request;
  const progress = progressOf(request);
  const finder = createChanceFinder(request, PLUG_IN_STEP);
  const unplug = unplugTime(request);
  const lastIndex = Math.ceil(unplug / PLUG_IN_STEP) - 1;
  const firstIndex = Math.max(
    0,
    Math.ceil((unplug - longestOn(scenario.kit.heaters, heaters)) / PLUG_IN_STEP),
  );

  const unheated = finder.candidate(undefined);
  progress();
  const heatNeeded = unheated.verdict.chance < wish.chance;
  const search =
    heatNeeded && heaters.length > 0
      ? latestPlugIn(finder, wish.chance, firstIndex, lastIndex, progress)
      : { best: unheated, reached: !heatNeeded };
  const { best } = search;
  const remedies = search.reached ? [] : triedRemedies(request, firstIndex * PLUG_IN_STEP, progress);

  const course = courseOf(finder.run, request, best.plugIn);
  const stay = cooling(finder.run, request, best.plugIn);
  const { chance } = best.verdict;
  return {
    status: search.reached ? "ready" : "not-reachable",
    message: search.reached ? "" : whyNot(best, wish.chance, firstIndex),
    plugIn: best.plugIn,
    heatNeeded,
    unplug,
    departure: wish.departure,
    chance,
    chanceError: Math.sqrt((chance * (1 - chance)) / finder.run.members),
    verdict: best.verdict,
    window: windowOf(stay.covered, course, request),
    stayWarm: {
      covered: stayWarm(stay.covered, criteria, wish.chance),
      uncovered: stayWarm(stay.stripped, criteria, wish.chance),
    },
    energy: bandOf(course.energy.slice((course.time.length - 1) * course.members)),
    curve: curveOf(finder),
    late: heatNeeded ? lateBy(finder, best, [1800, 3600, 7200], lastIndex, progress) : [],
    habits: heatNeeded ? habitsOf(finder, request, [7200, 14_400], progress) : [],
    course,
    remedies,
  };
}

function checkRequest({ wish, scenario, heaters, criteria, draws }: PlanRequest): void {
  const { departure, chance, unplugBefore, coverOffBefore } = wish;
  if (!(departure > 0 && departure <= scenario.duration)) {
    throw new RangeError(
      `invalid departure: ${departure} s (expected 0 to ${scenario.duration} s after the start)`,
    );
  }
  if (!(chance > 0 && chance < 1))
    throw new RangeError(`invalid chance: ${chance} (expected between 0 and 1)`);
  if (!(unplugBefore >= 0 && unplugBefore < departure))
    throw new RangeError(`invalid unplugBefore: ${unplugBefore} s`);
  if (!(coverOffBefore >= 0 && coverOffBefore <= departure)) {
    throw new RangeError(`invalid coverOffBefore: ${coverOffBefore} s`);
  }
  if (criteria.length === 0) throw new RangeError("missing criteria: none given");
  if (!(draws.members >= 1)) throw new RangeError(`invalid members: ${draws.members}`);
  for (const id of heaters) {
    if (!scenario.kit.heaters.some((h) => h.id === id)) throw new RangeError(`unknown heater: ${id}`);
  }
}

/** [s] the shortest of the used heaters' longest-on times. */
function longestOn(kit: readonly Heater[], used: readonly string[]): number {
  return 3600 * Math.min(...kit.filter((h) => used.includes(h.id)).map((h) => h.longest_on_h), 1e6);
}

function whyNot({ verdict, plugIn }: Candidate, wanted: number, firstIndex: number): string {
  const { criterion, chance, margin } = verdict.binding;
  const most = Math.round(verdict.chance * 100);
  const when =
    plugIn === firstIndex * PLUG_IN_STEP ? "even plugged in at the earliest moment allowed" : "at best";
  return `${when} the chance is ${most} %, not ${Math.round(wanted * 100)} %: ${criterion.title} holds in ${Math.round(chance * 100)} % of cases, its median margin is ${margin.mid.toFixed(1)} K`;
}

function courseOf(run: EnsembleRun, request: PlanRequest, plugIn: number): Trajectory {
  const { scenario } = request;
  const times = sampleTimes(0, scenario.duration, [plugIn, unplugTime(request), request.wish.departure]);
  const timeline = Number.isFinite(plugIn) ? plannedTimeline(request, plugIn) : coldTimeline(request);
  return completed(trajectory(run, { state: run.initial, timeline, sampleTimes: times, tolerance: 0.05 }));
}

function cooling(
  run: EnsembleRun,
  request: PlanRequest,
  plugIn: number,
): { covered: Trajectory; stripped: Trajectory } {
  const unplug = unplugTime(request);
  const heated = Number.isFinite(plugIn) ? plugIn : unplug;
  const state = run.advance({
    state: run.initial,
    from: 0,
    to: unplug,
    timeline: Number.isFinite(plugIn) ? plannedTimeline(request, plugIn) : coldTimeline(request),
  }).state;
  const times = sampleTimes(unplug, unplug + STAY_HORIZON, []);
  const cool = (timeline: ReturnType<typeof coldTimeline>) =>
    completed(trajectory(run, { state, timeline, sampleTimes: times, tolerance: 0.05 }));
  return {
    covered: cool(coveredTimeline(request, heated)),
    stripped: cool(strippedTimeline(request, heated)),
  };
}

function completed(course: Trajectory): Trajectory {
  if (course.status !== "completed") throw new NumericalFailure(`${course.status}: ${course.remedy}`);
  return course;
}

/** Uniform samples with the given times put in where they fall between. */
function sampleTimes(from: number, to: number, extra: readonly number[]): number[] {
  const times = new Set<number>([from, to]);
  for (let t = from + COURSE_STEP; t < to; t += COURSE_STEP) times.add(t);
  for (const t of extra) if (t > from && t < to) times.add(t);
  return [...times].sort((a, b) => a - b);
}

/** From when the heated aircraft is ready with the wanted chance until it no longer is when the covers stay on. */
function windowOf(covered: Trajectory, course: Trajectory, { criteria, wish }: PlanRequest): Plan["window"] {
  const { sure, horizon } = stayWarm(covered, criteria, wish.chance);
  if (sure <= 0) return undefined;
  const unplug = covered.time[0];
  let opens = unplug;
  for (let s = course.time.length - 1; s >= 0; s--) {
    if (course.time[s] > unplug) continue;
    if (readyShare(course, criteria, s) < wish.chance) break;
    opens = course.time[s];
  }
  return { opens, closes: unplug + sure, closesBeyondHorizon: sure >= horizon };
}

function curveOf(finder: ChanceFinder): Plan["curve"] {
  return finder
    .tried()
    .filter((c) => Number.isFinite(c.plugIn))
    .map((c) => ({ plugIn: c.plugIn, chance: c.verdict.chance }));
}

function lateBy(
  finder: ChanceFinder,
  best: Candidate,
  delays: readonly number[],
  lastIndex: number,
  onTry: () => void,
): Plan["late"] {
  const planned = Math.round(best.plugIn / finder.step);
  return delays.flatMap((delay) => {
    const index = planned + Math.round(delay / finder.step);
    if (index > lastIndex) return [];
    const { plugIn, verdict } = finder.candidate(index);
    onTry();
    return [{ lateBy: delay, plugIn, chance: verdict.chance }];
  });
}

function habitsOf(
  finder: ChanceFinder,
  request: PlanRequest,
  leads: readonly number[],
  onTry: () => void,
): Plan["habits"] {
  return leads.flatMap((lead) => {
    const index = Math.round((request.wish.departure - lead) / finder.step);
    if (index < 0) return [];
    const { plugIn, verdict } = finder.candidate(index);
    onTry();
    const course = courseOf(finder.run, request, plugIn);
    const energy = bandOf(course.energy.slice((course.time.length - 1) * course.members)).mid;
    return [{ lead, plugIn, chance: verdict.chance, energy }];
  });
}

function progressOf({ onProgress }: PlanRequest): () => void {
  let tries = 0;
  return () => {
    tries++;
    // The number of tries is not known beforehand; the share approaches 1.
    if (onProgress !== undefined && !onProgress(1 - 1 / (1 + tries / 6))) throw new Cancelled();
  };
}
