import { type Finding, finding } from "../findings/index.js";
import type { Aim } from "../readiness/index.js";
import { NumericalFailure } from "../response/index.js";
import type { Candidate, Course, Demand, Holder } from "./candidate.js";
import { choose, everyonesBest } from "./choose.js";
import { contenderOf, type List } from "./contender.js";
import { type Costs, compareCosts, sumOfCosts } from "./costs.js";
import { type PlayedCourse, wetTimeOf } from "./exact.js";
import { type Cause, causeOf } from "./explain.js";
import { filledUp } from "./fill-all.js";
import type { Scope } from "./heater-option.js";
import { type Lift, triedLifts } from "./lifts.js";
import { type Grid, gridOf } from "./limits.js";
import type { BaseAircraft, BaseRequest } from "./request.js";
import { isPossibleAlone, parkedDemands } from "./rows.js";

/** One plan for all aircraft of a base. Times are [s] since the start. */
export interface BasePlan {
  readonly status: "planned";
  readonly grid: Grid;
  readonly aircraft: readonly AircraftCourse[];
  /** Share of members in which every aircraft that is wanted is ready: all share one weather. */
  readonly jointChance: number;
  /** What would make missed departures possible; tried. */
  readonly lifts: readonly Lift[];
  /** Sums of what was made least, in this order. */
  readonly costs: Costs;
}

export interface AircraftCourse {
  readonly aircraft: BaseAircraft;
  readonly holder: Holder;
  readonly course: Course;
  readonly played: PlayedCourse;
  readonly missed: boolean;
  readonly missesWarm: boolean;
  /** [s] */
  readonly wetTime: number;
  readonly demands: readonly Demand[];
  /** What it would do with the base to itself, and how sure that would be (read between courses played). */
  readonly alone: Candidate;
  /** What keeps it from the best course it could have; undefined when nothing of the base does. */
  readonly cause: Cause | undefined;
}

export type BasePlanFailure = { readonly status: "failed" | "cancelled"; readonly message: Finding };

/** Times that a choice is made anew, at most: five or six with 12 aircraft, all of them with 24 on few outlets. */
const ROUNDS = 12;
/** Rise of the chance asked for, at least, when a prediction was too good. */
const MARGIN_LEAST = 0.01;

/**
 * Plans all aircraft of a base together. Throws RangeError for a request that makes no sense; numerical trouble and a
 * stop are statuses, and a departure that cannot be met is part of the plan.
 */
export async function planBase(request: BaseRequest): Promise<BasePlan | BasePlanFailure> {
  try {
    return await plan(request);
  } catch (error) {
    if (error instanceof NumericalFailure)
      return { status: "failed", message: finding("not-calculated", { remedy: error.message }) };
    if (error instanceof Cancelled) return { status: "cancelled", message: finding("was-stopped", {}) };
    throw error;
  }
}

class Cancelled extends Error {}

async function plan(request: BaseRequest): Promise<BasePlan> {
  const { aircraft, limits, solveMilp } = request;
  const [first] = aircraft;
  if (first === undefined) throw new RangeError("missing aircraft: none is wanted");
  const { start } = first.plan.scenario;
  const grid = gridOf(start, Math.max(...aircraft.map((a) => a.plan.scenario.duration)));
  let tries = 0;
  const progress = () => {
    tries++;
    // How many rounds it takes is not known beforehand; the share approaches 1.
    const share = 1 - 1 / (1 + tries / (1.5 * aircraft.length));
    if (request.onProgress !== undefined && !request.onProgress(share)) throw new Cancelled();
  };
  const fixed = parkedDemands(request.parked, grid);
  const contenders = aircraft.map((a) => contenderOf(a, request, grid));
  const canMove = limits.hangar !== undefined || limits.carts.length > 0;

  let scope: Scope = { contested: false, bothLines: false, moves: false };
  let lists: List[] = [];
  let chosen: readonly number[] = [];
  for (let round = 0; ; round++) {
    lists = contenders.map((contender) => {
      progress();
      return contender.list(scope);
    });
    if (!scope.contested && everyonesBest(fixed, lists, limits, grid) === undefined) {
      scope = { ...scope, contested: true };
      continue;
    }
    const choice = await choose(fixed, lists, limits, grid, solveMilp);
    if (choice.status !== "proven") {
      throw new NumericalFailure(
        choice.status === "infeasible"
          ? "what is in use at the start already takes more than there is: unplug or move something first"
          : "the solver stopped before it was done",
      );
    }
    chosen = choice.chosen;
    const options = chosen.map((i, a) => lists[a][i].option.candidate);
    const wider = widerScope(scope, lists, options, canMove);
    if (wider !== undefined) {
      scope = wider;
      continue;
    }
    // What is missed anyway is played once, when nothing changes any more.
    const tooGood = contenders.flatMap((contender, a) => {
      if (options[a].missed) return [];
      if (!contender.isPlayed(options[a])) progress();
      const short = shortfall(options[a], contender.played(options[a]), contender.aircraft);
      return short === undefined ? [] : [{ contender, shape: options[a].shape, ...short }];
    });
    if (round >= ROUNDS) break;
    if (tooGood.length === 0) {
      // The surrogate may underestimate aircraft that miss.
      const missed = contenders.filter((_, a) => options[a].missed);
      if (!missed.some((contender) => contender.lookCloser(scope))) break;
    }
    for (const { contender, shape, aim, by } of tooGood) {
      if (shape !== undefined) contender.raiseMargin(aim, shape, Math.max(MARGIN_LEAST, by));
    }
  }

  const filled = filledUp({ contenders, lists, chosen, fixed, limits, grid, progress });
  const picked = filled.chosen.map((i, a) => filled.lists[a][i]);
  const courses = picked.map(({ option }, a): AircraftCourse => {
    const real = contenders[a].played(option.candidate);
    progress();
    return {
      aircraft: aircraft[a],
      holder: contenders[a].holder,
      course: option.candidate,
      played: real,
      missed: real.missed,
      missesWarm: real.missesWarm,
      wetTime: wetTimeOf(aircraft[a], option.candidate, limits),
      demands: option.demands,
      alone: aloneBest(filled.lists[a], request, grid),
      cause: causeOf({ a, ...filled, fixed, parked: request.parked, limits, grid }),
    };
  });
  const lifts = courses.some((c) => c.missed)
    ? await triedLifts({
        ...filled,
        request,
        grid,
        holders: contenders.map((c) => c.holder),
        onTry: progress,
      })
    : [];
  return {
    status: "planned",
    grid,
    aircraft: courses,
    jointChance: jointChance(courses),
    lifts,
    costs: sumOfCosts(picked.map((p) => p.costs)),
  };
}

/**
 * More to choose from, where somebody is short: heat in turns; then the least for those that could be warm through, so
 * that others are at least ready; then moves and carts. Undefined when nobody is, or there is nothing more.
 */
function widerScope(
  scope: Scope,
  lists: readonly List[],
  chosen: readonly Candidate[],
  canMove: boolean,
): Scope | undefined {
  const isMissed = chosen.some((c) => c.missed);
  const couldBeWarm = (a: number) => lists[a].some(({ option }) => !option.candidate.missesWarm);
  const isShort = isMissed || chosen.some((c, a) => c.missesWarm && couldBeWarm(a));
  if (isShort && !scope.contested) return { ...scope, contested: true };
  if (isShort && !scope.bothLines) return { ...scope, bothLines: true };
  if (isMissed && !scope.moves && canMove) return { ...scope, moves: true };
  return undefined;
}

/** How much a course falls short, played, of the line that it was read to reach. */
function shortfall(
  read: Candidate,
  { verdict, missed, missesWarm }: PlayedCourse,
  { plan }: BaseAircraft,
): { readonly aim: Aim; readonly by: number } | undefined {
  if (missed) return { aim: "least", by: plan.wish.chance - verdict.chance };
  if (!read.missesWarm && missesWarm) {
    return { aim: "warm-through", by: plan.wish.chance - verdict.warm.chance };
  }
  return undefined;
}

/** The best with the base to itself. */
function aloneBest(list: List, { limits }: BaseRequest, grid: Grid): Candidate {
  const possible = list.filter(({ option }) => isPossibleAlone(option, limits, grid));
  return possible.reduce((best, priced) => (compareCosts(priced.costs, best.costs) < 0 ? priced : best))
    .option.candidate;
}

function jointChance(courses: readonly AircraftCourse[]): number {
  const members = Math.min(...courses.map((c) => c.played.ready.least.length));
  let together = 0;
  for (let m = 0; m < members; m++) if (courses.every((c) => c.played.ready.least[m] === 1)) together++;
  return together / members;
}
