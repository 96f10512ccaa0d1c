import type { Aim } from "../readiness/index.js";
import type { Candidate, Course, Holder } from "./candidate.js";
import { courseFinder } from "./candidates.js";
import type { Priced } from "./choose.js";
import { costsOf } from "./costs.js";
import { coursePlayer, type PlayedCourse, wetTimeOf } from "./exact.js";
import type { Scope, Shape } from "./heater-option.js";
import { keepsRules, onBefore, rulesOf } from "./heater-rules.js";
import type { Grid } from "./limits.js";
import type { BaseAircraft, BaseRequest } from "./request.js";
import { type Option, optionsOf } from "./rows.js";

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
  /** Asks a higher chance on a line of courses of a shape: their predictions were too good by so much. */
  raiseMargin(aim: Aim, shape: Shape, by: number): void;
  /** A course that was played, as one more to choose. */
  priced(played: PlayedCourse): List[number];
}

/** A chance read is at most that much short where it is looked at closer: two of 40 scouts; project judgement. */
const NEARLY = 0.05;
/** Courses that are played when looking closer. */
const CLOSER = 3;

export function contenderOf(aircraft: BaseAircraft, request: BaseRequest, grid: Grid): Contender {
  const { limits, isNight } = request;
  const { told } = aircraft;
  const finder = courseFinder(aircraft, limits, grid, (course) => played(course));
  const { holder } = finder;
  const play = coursePlayer(aircraft, limits);
  const courses = new Map<string, PlayedCourse>();
  const context = { count: request.aircraft.length, told, isNight };
  const asked = new Map<string, number>();
  const margin = (aim: Aim, shape: Shape) => asked.get(`${aim} ${shape}`) ?? 0;
  let kept: { readonly scope: Scope; readonly list: List } | undefined;

  function played(course: Course): PlayedCourse {
    const key = keyOf(course);
    const known = courses.get(key);
    // Played alike, but it stays the course that was asked about: its circuit and its outlet count for others.
    if (known !== undefined) return { ...known, course };
    kept = undefined;
    const fresh = play(course);
    courses.set(key, fresh);
    return fresh;
  }

  function listIn(scope: Scope): List {
    const found = finder.candidates(scope, margin).map((candidate) => {
      const known = courses.get(keyOf(candidate));
      if (known === undefined) return candidate;
      const { chance, missed, missesWarm, energy } = known;
      return { ...candidate, chance, missed, missesWarm, energy: energy.mid };
    });
    // What was told is not kept to where no heat is required at all.
    const isIdle = found.every((c) => c.blocks.length === 0 && !c.missed);
    const all =
      told === undefined || isIdle || !keepsTold()
        ? found
        : [candidateOf(aircraft, played(told), limits), ...found];
    return optionsOf<Candidate & { readonly shape?: Shape }>(all, holder, limits, grid).map((option) => ({
      option,
      costs: costsOf(option.candidate, holder, limits, grid, context),
    }));
  }

  /** What was told before may be more than the heaters allow. */
  function keepsTold(): boolean {
    const { scenario, wish } = aircraft.plan;
    const used = (told?.heaters ?? []).flatMap((id) => holder.heaters.get(id) ?? []);
    return (
      told !== undefined &&
      keepsRules(rulesOf(used), {
        course: told,
        departure: wish.departure,
        onFor: onBefore(scenario),
        moveTime: limits.hangar?.moveTime ?? 0,
      })
    );
  }

  function list(scope: Scope): List {
    const { contested, bothLines, moves } = kept?.scope ?? {};
    if (
      kept === undefined ||
      contested !== scope.contested ||
      bothLines !== scope.bothLines ||
      moves !== scope.moves
    ) {
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
        .map(({ option, costs }) => ({ course: option.candidate, harm: costs[3] }))
        .filter(({ course }) => course.missed && course.chance >= enough && !courses.has(keyOf(course)))
        .sort((a, b) => a.harm - b.harm);
      const different = new Map(doubtful.map(({ course }) => [keyOf(course), course]));
      return [...different.values()].slice(0, CLOSER).some((course) => !played(course).missed);
    },
    isPlayed: (course) => courses.has(keyOf(course)),
    played,
    raiseMargin(aim, shape, by) {
      kept = undefined;
      asked.set(`${aim} ${shape}`, margin(aim, shape) + by);
    },
    priced(one) {
      const [option] = optionsOf([candidateOf(aircraft, one, limits)], holder, limits, grid);
      return { option, costs: costsOf(option.candidate, holder, limits, grid, context) };
    },
  };
}

/** Courses that are played alike: on which circuit makes no difference to the engine. */
function keyOf({ cart, heaters, blocks, stay }: Course): string {
  return JSON.stringify([cart ?? null, heaters, blocks.map((b) => [b.from, b.to]), stay ?? null]);
}

function candidateOf(
  aircraft: BaseAircraft,
  { course, chance, missed, missesWarm, energy }: PlayedCourse,
  limits: BaseRequest["limits"],
): Candidate {
  const heated = course.blocks.reduce((sum, b) => sum + b.to - b.from, 0);
  return {
    ...course,
    chance,
    missed,
    missesWarm,
    harm: heated + wetTimeOf(aircraft, course, limits),
    energy: energy.mid,
  };
}
