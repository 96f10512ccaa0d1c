import { type Criterion, judge, type Verdict } from "../readiness/index.js";
import {
  type Change,
  type Draws,
  ENSEMBLE_TOLERANCE,
  prepareRun,
  type Scenario,
  sampleAt,
  type Trajectory,
  timelineOf,
  trajectory,
} from "../simulation/index.js";
import { COURSE_STEP, NumericalFailure } from "./chance.js";
import type { StayWarm } from "./plan.js";
import type { PlanFailure } from "./preheat.js";
import { stayWarm } from "./stay.js";

/** The answer to "no power here: how long have I got?". Times are [s] from now, the start of the scenario. */
export interface AwayReport {
  readonly status: "judged";
  /** Ready now? */
  readonly now: Verdict;
  /** How long it stays ready with every cover it carries put on now, and with none. */
  readonly covered: StayWarm;
  readonly uncovered: StayWarm;
  readonly coveredCourse: Trajectory;
  readonly uncoveredCourse: Trajectory;
}

export interface AwayRequest {
  readonly scenario: Scenario;
  readonly criteria: readonly Criterion[];
  readonly draws: Draws;
  /** Chance that the time named as sure is outlasted [0..1]. */
  readonly chance: number;
}

/**
 * How long a warm aircraft stays ready from now on without heat, covered and uncovered, where it stands. The
 * scenario's own events happen as they are written, except that covers are as each case says.
 */
export function stayAway({ scenario, criteria, draws, chance }: AwayRequest): AwayReport | PlanFailure {
  if (!(chance > 0 && chance < 1))
    throw new RangeError(`invalid chance: ${chance} (expected between 0 and 1)`);
  const covers = scenario.kit.covers.map((c) => c.id);
  const run = prepareRun(scenario, draws);
  const parts = run.network.parts.map((p) => p.name);
  const play = (change: Change) => {
    const ownEvents = scenario.events.filter(
      (e) => e.change.do !== "cover-on" && e.change.do !== "cover-off",
    );
    const course = trajectory(run, {
      state: run.initial,
      timeline: timelineOf(scenario.initial.configuration, [{ at: 0, change }, ...ownEvents]),
      sampleTimes: Array.from(
        { length: Math.floor(scenario.duration / COURSE_STEP) + 1 },
        (_, i) => i * COURSE_STEP,
      ),
      tolerance: ENSEMBLE_TOLERANCE,
    });
    if (course.status !== "completed") throw new NumericalFailure(`${course.status}: ${course.remedy}`);
    return course;
  };
  try {
    const coveredCourse = play({ do: "cover-on", covers });
    const uncoveredCourse = play({ do: "cover-off", covers });
    const state = { temps: sampleAt(coveredCourse, 0), parts, members: run.members };
    return {
      status: "judged",
      now: judge(criteria, state),
      covered: stayWarm(coveredCourse, criteria, chance, 0),
      uncovered: stayWarm(uncoveredCourse, criteria, chance, 0),
      coveredCourse,
      uncoveredCourse,
    };
  } catch (error) {
    if (error instanceof NumericalFailure) return { status: "failed", message: error.message };
    throw error;
  }
}
