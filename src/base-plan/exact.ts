import { NumericalFailure, tollOf } from "../planning/index.js";
import { judge, type Verdict } from "../readiness/index.js";
import {
  type Band,
  bandOf,
  type Draws,
  ENSEMBLE_TOLERANCE,
  prepareRun,
  sampleAt,
  timelineOf,
  trajectory,
} from "../simulation/index.js";
import type { Course } from "./candidate.js";
import { playedScenario, readyMembers, withCart } from "./course-run.js";
import type { BaseLimits } from "./limits.js";
import type { BaseAircraft } from "./request.js";

/** A course as it is, over all members, nothing read between. */
export interface PlayedCourse {
  readonly course: Course;
  /** 1 for every member that is ready. */
  readonly ready: Uint8Array;
  readonly chance: number;
  readonly verdict: Verdict;
  readonly missed: boolean;
  /** [J] */
  readonly energy: Band;
}

export function playCourse(
  aircraft: BaseAircraft,
  course: Course,
  limits: BaseLimits,
  draws: Draws = aircraft.plan.draws,
): PlayedCourse {
  const plan = withCart(aircraft, limits, course.cart);
  const { criteria, wish } = plan;
  const scenario = playedScenario(plan, course, limits);
  const run = prepareRun(scenario, draws);
  const hot = course.blocks.at(-1)?.to ?? wish.departure;
  const times = [...new Set([0, ...course.blocks.flatMap((b) => [b.from, b.to]), hot, wish.departure])];
  const played = trajectory(run, {
    state: run.initial,
    timeline: timelineOf(scenario.initial.configuration, scenario.events),
    sampleTimes: times.sort((a, b) => a - b),
    tolerance: ENSEMBLE_TOLERANCE,
  });
  if (played.status !== "completed") throw new NumericalFailure(`${played.status}: ${played.remedy}`);
  const { parts, members } = played;
  const temps = sampleAt(played, wish.departure);
  const verdict = judge(
    criteria,
    { temps, parts, members },
    { temps: sampleAt(played, hot), parts, members },
  );
  const tooHot = course.blocks.length > 0 && verdict.tooHot.length > 0;
  return {
    course,
    ready: readyMembers(criteria, temps, parts, members),
    chance: verdict.chance,
    verdict,
    missed: tooHot || verdict.chance < wish.chance,
    energy: bandOf(played.energy.subarray(played.energy.length - members)),
  };
}

/** [s] wet hours of a course, every uncertain number at its middle value. */
export function wetTimeOf(aircraft: BaseAircraft, course: Course, limits: BaseLimits): number {
  const plan = withCart(aircraft, limits, course.cart);
  const scenario = playedScenario(plan, course, limits);
  return tollOf({ ...plan, heaters: [], wish: { ...plan.wish, pulledOut: false }, scenario }, undefined)
    .wetTime;
}
