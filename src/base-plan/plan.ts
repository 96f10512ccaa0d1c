import { NumericalFailure } from "../planning/index.js";
import type { Candidate, Course, Demand, Holder } from "./candidate.js";
import { type CourseFinder, courseFinder, type Shape } from "./candidates.js";
import { choose, everyonesBest, type Priced } from "./choose.js";
import { type Costs, compareCosts, costsOf, sumOfCosts } from "./costs.js";
import { coursePlayer, type PlayedCourse, wetTimeOf } from "./exact.js";
import { type Cause, causeOf } from "./explain.js";
import { type Lift, triedLifts } from "./lifts.js";
import { type Grid, gridOf } from "./limits.js";
import type { BaseAircraft, BaseRequest } from "./request.js";
import { isPossibleAlone, type Option, optionsOf, parkedDemands } from "./rows.js";

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
  /** [s] */
  readonly wetTime: number;
  readonly demands: readonly Demand[];
  /** What it would do with the base to itself, and how sure that would be (read between courses played). */
  readonly alone: Candidate;
  /** What keeps it from the best course it could have; undefined when nothing of the base does. */
  readonly cause: Cause | undefined;
}

export type BasePlanFailure = { readonly status: "failed" | "cancelled"; readonly message: string };

/** Times that what was chosen turned out less sure than read, and was chosen anew. */
const ROUNDS = 5;
/** Rise of the chance asked for, at least, when a prediction was too good. */
const CAUTION_LEAST = 0.01;

/**
 * Plans all aircraft of a base together. Throws RangeError for a request that makes no sense; numerical trouble and a
 * stop are statuses, and a departure that cannot be met is part of the plan.
 */
export async function planBase(request: BaseRequest): Promise<BasePlan | BasePlanFailure> {
  try {
    return await plan(request);
  } catch (error) {
    if (error instanceof NumericalFailure) return { status: "failed", message: error.message };
    if (error instanceof Cancelled) return { status: "cancelled", message: "planning was stopped" };
    throw error;
  }
}

class Cancelled extends Error {}

type List = readonly Priced<Option<Candidate & { readonly shape?: Shape }>>[];

async function plan(request: BaseRequest): Promise<BasePlan> {
  const { aircraft, limits, solveMilp, isNight } = request;
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
  const finders = aircraft.map((a) => courseFinder(a, limits, grid));
  const played = aircraft.map(() => new Map<string, PlayedCourse>());
  const players = aircraft.map((a) => coursePlayer(a, limits));
  const cautions = aircraft.map(() => new Map<Shape, number>());
  const playedAs = (a: number, course: Course): PlayedCourse => {
    const key = keyOf(course);
    const known = played[a].get(key) ?? players[a](course);
    played[a].set(key, known);
    return known;
  };
  const told = aircraft.map((one, a) => {
    if (one.told === undefined) return undefined;
    progress();
    return candidateOf(one, playedAs(a, one.told), limits);
  });

  const listOf = (finder: CourseFinder, a: number, contested: boolean, moves: boolean): List => {
    const found = finder.candidates({ caution: cautions[a], contested, moves });
    const exact = found.map((candidate) => {
      const known = played[a].get(keyOf(candidate));
      return known === undefined
        ? candidate
        : { ...candidate, chance: known.chance, missed: known.missed, energy: known.energy.mid };
    });
    const before = told[a];
    const all = before === undefined ? exact : [before, ...exact];
    return optionsOf<Candidate & { readonly shape?: Shape }>(all, finder.holder, limits, grid).map(
      (option) => ({
        option,
        costs: costsOf(option.candidate, finder.holder, limits, grid, {
          count: aircraft.length,
          told: aircraft[a].told,
          isNight,
        }),
      }),
    );
  };

  let contested = false;
  let moves = false;
  let lists: List[] = [];
  let chosen: readonly number[] = [];
  for (let round = 0; ; round++) {
    lists = finders.map((finder, a) => {
      progress();
      return listOf(finder, a, contested, moves);
    });
    if (!contested && everyonesBest(fixed, lists, limits, grid) === undefined) {
      contested = true;
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
    if (options.some((o) => o.missed) && !contested) {
      contested = true;
      continue;
    }
    const canMove = limits.hangar !== undefined || limits.carts.length > 0;
    if (options.some((o) => o.missed) && !moves && canMove) {
      moves = true;
      continue;
    }
    const tooGood = options.map((candidate, a) => {
      // What is missed anyway is played once, when nothing changes any more.
      if (candidate.missed) return false;
      const fresh = !played[a].has(keyOf(candidate));
      if (fresh) progress();
      const real = playedAs(a, candidate);
      return real.missed;
    });
    if (!tooGood.includes(true) || round >= ROUNDS + 2) break;
    tooGood.forEach((was, a) => {
      if (!was) return;
      const { shape } = options[a];
      if (shape === undefined) return;
      const real = playedAs(a, options[a]);
      const short = Math.max(CAUTION_LEAST, aircraft[a].plan.wish.chance - real.chance);
      cautions[a].set(shape, (cautions[a].get(shape) ?? 0) + short);
    });
  }

  const picked = chosen.map((i, a) => lists[a][i]);
  const courses = picked.map(({ option }, a): AircraftCourse => {
    const real = playedAs(a, option.candidate);
    progress();
    return {
      aircraft: aircraft[a],
      holder: finders[a].holder,
      course: option.candidate,
      played: real,
      missed: real.missed,
      wetTime: wetTimeOf(aircraft[a], option.candidate, limits),
      demands: option.demands,
      alone: aloneBest(lists[a], request, grid),
      cause: causeOf({ a, lists, chosen, fixed, parked: request.parked, limits, grid }),
    };
  });
  const lifts = courses.some((c) => c.missed)
    ? await triedLifts({
        lists,
        chosen,
        request,
        grid,
        holders: finders.map((f) => f.holder),
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

/** Courses that are played alike: on which circuit makes no difference to the engine. */
function keyOf({ cart, heaters, blocks, stay }: Course): string {
  return JSON.stringify([cart ?? null, heaters, blocks.map((b) => [b.from, b.to]), stay ?? null]);
}

function candidateOf(
  aircraft: BaseAircraft,
  { course, chance, missed, energy }: PlayedCourse,
  limits: BaseRequest["limits"],
): Candidate {
  const heated = course.blocks.reduce((sum, b) => sum + b.to - b.from, 0);
  return {
    ...course,
    chance,
    missed,
    harm: heated + wetTimeOf(aircraft, course, limits),
    energy: energy.mid,
  };
}

/** The best with the base to itself. */
function aloneBest(list: List, { limits }: BaseRequest, grid: Grid): Candidate {
  const possible = list.filter(({ option }) => isPossibleAlone(option, limits, grid));
  return possible.reduce((best, priced) => (compareCosts(priced.costs, best.costs) < 0 ? priced : best))
    .option.candidate;
}

function jointChance(courses: readonly AircraftCourse[]): number {
  const members = Math.min(...courses.map((c) => c.played.ready.length));
  let together = 0;
  for (let m = 0; m < members; m++) if (courses.every((c) => c.played.ready[m] === 1)) together++;
  return together / members;
}
