import { type Band, bandOf } from "../numerics/index.js";
import { heatingImpact } from "../planning/index.js";
import { judge, type Verdict } from "../readiness/index.js";
import { type ByAim, chancesOf, play, readyMembers } from "../response/index.js";
import { type EnsembleRun, prepareRun, sampleAt, timelineOf } from "../simulation/index.js";
import type { Course } from "./candidate.js";
import { playedScenario, withCart } from "./course-run.js";
import type { BaseLimits } from "./limits.js";
import type { BaseAircraft } from "./request.js";

/** A course as it is, over all members, nothing read between. */
export interface PlayedCourse {
  readonly course: Course;
  /** For each line, 1 for every member that is ready. */
  readonly ready: ByAim<Uint8Array>;
  /** Of the least that makers ask for. */
  readonly chance: number;
  /** [s] after the departure up to which it can be started with the wanted chance, covers off; none: not even then. */
  readonly startWithin: number | undefined;
  readonly verdict: Verdict;
  readonly missed: boolean;
  readonly missesWarm: boolean;
  /** [J] */
  readonly energy: Band;
}

/** Plays courses of one aircraft over all its members. */
export type CoursePlayer = (course: Course) => PlayedCourse;

/** [s] before the first thing a course does from which its state is kept: what is tried next mostly begins a little earlier. */
const KEPT_BEFORE = 7200;
const KEPT_EVERY = 600;
/** [s] after the departure at which it is looked whether it can still be started. */
const LATER = [300, 600, 1200, 1800];

/** Until the first thing that a course does all courses are alike: states on the way there are kept and gone on from. */
export function coursePlayer(aircraft: BaseAircraft, limits: BaseLimits): CoursePlayer {
  const runs = new Map<number | undefined, EnsembleRun>();
  const kept = new Map<number | undefined, Map<number, Float64Array>>();

  return (course) => {
    const plan = withCart(aircraft, limits, course.cart);
    const { criteria, wish } = plan;
    const scenario = playedScenario(plan, course, limits);
    const run = runs.get(course.cart) ?? prepareRun(plan.scenario, plan.draws);
    runs.set(course.cart, run);
    const states = kept.get(course.cart) ?? new Map<number, Float64Array>();
    kept.set(course.cart, states);
    const { departure } = wish;
    const begins = Math.min(
      course.blocks[0]?.from ?? departure,
      course.stay?.from ?? course.stay?.to ?? departure,
    );
    const from = [...states.keys()].filter((t) => t <= begins).reduce((a, b) => Math.max(a, b), 0);
    const hot = course.blocks.at(-1)?.to ?? departure;
    const near = Array.from({ length: KEPT_BEFORE / KEPT_EVERY + 1 }, (_, k) => begins - k * KEPT_EVERY);
    const far = Array.from({ length: Math.floor(begins / KEPT_BEFORE) }, (_, k) => (k + 1) * KEPT_BEFORE);
    const early = [...near, ...far].filter((t) => t > from && t <= begins && t < departure);
    const ends = course.blocks.flatMap((b) => [b.from, b.to]);
    const later = LATER.map((t) => departure + t).filter((t) => t <= scenario.duration);
    const times = [...new Set([from, ...early, ...ends, hot, departure, ...later])].filter((t) => t >= from);
    const played = play(run, {
      state: states.get(from) ?? run.initial,
      timeline: timelineOf(scenario.initial.configuration, scenario.events),
      sampleTimes: times.sort((a, b) => a - b),
    });
    for (const t of early) states.set(t, Float64Array.from(sampleAt(played, t)));
    const { parts, members } = played;
    const temps = sampleAt(played, departure);
    const verdict = judge(
      criteria,
      { temps, parts, members },
      { temps: sampleAt(played, hot), parts, members },
    );
    const tooHot = course.blocks.length > 0 && verdict.tooHot.length > 0;
    const isStill = (t: number) =>
      chancesOf(criteria, { temps: sampleAt(played, t), parts, members }).least >= wish.chance;
    const missed = tooHot || verdict.chance < wish.chance;
    const cold = missed ? undefined : later.findIndex((t) => !isStill(t));
    // None cold is -1, and so the last one that was looked at.
    const still = cold === undefined ? undefined : [departure, ...later].at(cold);
    return {
      course,
      ready: readyMembers(criteria, { temps, parts, members }),
      chance: verdict.chance,
      verdict,
      startWithin: still === undefined ? undefined : still - departure,
      missed,
      missesWarm: tooHot || verdict.warm.chance < wish.chance,
      energy: bandOf(played.energy.subarray(played.energy.length - members)),
    };
  };
}

/** [s] wet hours of a course, every uncertain number at its middle value. */
export function wetTimeOf(aircraft: BaseAircraft, course: Course, limits: BaseLimits): number {
  const plan = withCart(aircraft, limits, course.cart);
  const scenario = playedScenario(plan, course, limits);
  return heatingImpact(
    { ...plan, heaters: [], wish: { ...plan.wish, pulledOut: false }, scenario },
    undefined,
  ).wetTime;
}
