import type { Candidate, Course, Holder } from "./candidate.js";
import { courseFinder } from "./candidates.js";
import type { Priced } from "./choose.js";
import { costsOf } from "./costs.js";
import { coursePlayer, type PlayedCourse, wetTimeOf } from "./exact.js";
import type { Grid } from "./limits.js";
import type { BaseAircraft, BaseRequest } from "./request.js";
import { type Option, optionsOf } from "./rows.js";
import type { Scope, Shape } from "./way.js";

/** What an aircraft may do, with costs; the shape tells how it was read, and is missing for what was told before. */
export type List = readonly Priced<Option<Candidate & { readonly shape?: Shape }>>[];

/** One aircraft in the choice: what it may do, and what playing that has shown. */
export interface Contender {
  readonly aircraft: BaseAircraft;
  readonly holder: Holder;
  /** The same list until the scope or what is known changes. */
  list(scope: Scope): List;
  isPlayed(course: Course): boolean;
  /** Plays it over all members, once. */
  played(course: Course): PlayedCourse;
  /** Plays some courses that are read as nearly sure enough; whether one of them is, is the answer. */
  lookCloser(scope: Scope): boolean;
  /** Asks a higher chance of courses of a shape: their predictions were too good by so much. */
  distrust(shape: Shape, by: number): void;
}

/** A chance read is at most that much short where it is looked at closer: two of 40 scouts; project judgement. */
const NEARLY = 0.05;
/** Courses that are played when looking closer. */
const CLOSER = 3;

export function contenderOf(aircraft: BaseAircraft, request: BaseRequest, grid: Grid): Contender {
  const { limits, isNight } = request;
  const { told } = aircraft;
  const finder = courseFinder(aircraft, limits, grid);
  const { holder } = finder;
  const play = coursePlayer(aircraft, limits);
  const courses = new Map<string, PlayedCourse>();
  const caution = new Map<Shape, number>();
  let kept: { readonly scope: Scope; readonly list: List } | undefined;

  function played(course: Course): PlayedCourse {
    const key = keyOf(course);
    const known = courses.get(key);
    if (known !== undefined) return known;
    kept = undefined;
    const fresh = play(course);
    courses.set(key, fresh);
    return fresh;
  }

  function listIn(scope: Scope): List {
    const found = finder.candidates(scope, caution).map((candidate) => {
      const known = courses.get(keyOf(candidate));
      return known === undefined
        ? candidate
        : { ...candidate, chance: known.chance, missed: known.missed, energy: known.energy.mid };
    });
    const all = told === undefined ? found : [candidateOf(aircraft, played(told), limits), ...found];
    const context = { count: request.aircraft.length, told, isNight };
    return optionsOf<Candidate & { readonly shape?: Shape }>(all, holder, limits, grid).map((option) => ({
      option,
      costs: costsOf(option.candidate, holder, limits, grid, context),
    }));
  }

  function list(scope: Scope): List {
    if (kept?.scope.contested !== scope.contested || kept.scope.moves !== scope.moves) {
      kept = { scope, list: listIn(scope) };
    }
    return kept.list;
  }

  return {
    aircraft,
    holder,
    list,
    lookCloser(scope) {
      const enough = aircraft.plan.wish.chance - NEARLY;
      const doubtful = list(scope)
        .map(({ option, costs }) => ({ course: option.candidate, harm: costs[2] }))
        .filter(({ course }) => course.missed && course.chance >= enough && !courses.has(keyOf(course)))
        .sort((a, b) => a.harm - b.harm);
      const different = new Map(doubtful.map(({ course }) => [keyOf(course), course]));
      return [...different.values()].slice(0, CLOSER).some((course) => !played(course).missed);
    },
    isPlayed: (course) => courses.has(keyOf(course)),
    played,
    distrust(shape, by) {
      kept = undefined;
      caution.set(shape, (caution.get(shape) ?? 0) + by);
    },
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
