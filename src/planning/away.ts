import { finding } from "../findings/index.js";
import type { Criterion, Verdict } from "../readiness/index.js";
import { NumericalFailure } from "../response/index.js";
import type { Draws, Scenario, Trajectory } from "../simulation/index.js";
import { SECONDS_OF_MINUTE } from "../units/index.js";
import { type Bridge, bridgesTo, furthestReach, type Reach } from "./away-bridges.js";
import { type AwayModel, BARE, COVERED, createAwayModel, type Keeping } from "./away-model.js";
import type { StayWarm } from "./plan.js";
import type { PlanFailure } from "./preheat.js";
import { readyTimes } from "./stay.js";

/** The answer to "no power here: will it start when I am back?". Times are [s] from now, the start of the scenario. */
export interface AwayReport {
  readonly status: "judged";
  /** Ready now? */
  readonly now: Verdict;
  readonly back: number | undefined;
  /** Every cover it carries put on now, and off again shortly before the start; undefined where none is carried. */
  readonly covered: AwayCase | undefined;
  readonly uncovered: AwayCase;
  /** What would bring it to the return with the wanted chance; empty when nothing is needed, or nothing does. */
  readonly bridges: readonly Bridge[];
  /** The furthest return with all that can be done here; only where neither the cover now nor a bridge reaches. */
  readonly furthest: Reach | undefined;
  /** When the weather alone makes it ready, where it is not ready now; undefined when it does not. */
  readonly soonest: number | undefined;
}

export interface AwayCase {
  /** `sure` is 0 where it is not ready now with the wanted chance. */
  readonly lasting: StayWarm;
  /** At the return, over all cases; undefined where no return was named. */
  readonly atReturn: Verdict | undefined;
  readonly course: Trajectory;
}

export interface AwayRequest {
  readonly scenario: Scenario;
  readonly criteria: readonly Criterion[];
  readonly draws: Draws;
  /** Wanted share of all cases [0..1]. */
  readonly chance: number;
  /** [s] when it is to be started again. */
  readonly back?: number;
  /** [s] covers come off this long before a start. */
  readonly coverOffBefore?: number;
}

/** [s] to take covers off, walk round and get in; project judgement. */
export const USUAL_COVER_OFF = 10 * SECONDS_OF_MINUTE;

/**
 * How long an aircraft stays ready from now on without heat where it stands, whether it starts at the return, and what
 * would make it do so. There is no power: heaters stay off. The scenario's own moves happen as they are written.
 */
export function stayAway(request: AwayRequest): AwayReport | PlanFailure {
  const { scenario, chance: wanted, back, coverOffBefore = USUAL_COVER_OFF } = request;
  if (!(wanted > 0 && wanted < 1))
    throw new RangeError(`invalid chance: ${wanted} (expected between 0 and 1)`);
  if (back !== undefined && !(back > 0 && back <= scenario.duration))
    throw new RangeError(`invalid back: ${back} s (expected within the ${scenario.duration} s looked at)`);
  try {
    return report(createAwayModel({ ...request, coverOffBefore }), wanted, back);
  } catch (error) {
    if (error instanceof NumericalFailure)
      return { status: "failed", message: finding("not-calculated", { remedy: error.message }) };
    throw error;
  }
}

function report(model: AwayModel, wanted: number, back: number | undefined): AwayReport {
  const now = model.start(BARE, 0).verdict();
  const caseOf = (keeping: Keeping, course: Trajectory): AwayCase => ({
    lasting: lastingOf(model, keeping, wanted),
    atReturn: back === undefined ? undefined : model.start(keeping, back).verdict(),
    course,
  });
  const uncovered = caseOf(BARE, model.bare);
  const covered = model.hasCovers ? caseOf(COVERED, model.covered) : undefined;
  const isLost = (each: AwayCase | undefined) => (each?.atReturn?.chance ?? 0) < wanted;
  const isAsked = back !== undefined && isLost(uncovered);
  const bridges = isAsked ? bridgesTo(model, back, wanted) : [];
  return {
    status: "judged",
    now,
    back,
    covered,
    uncovered,
    bridges,
    furthest: isAsked && bridges.length === 0 ? furthestReach(model, back, wanted) : undefined,
    soonest: now.chance < wanted ? soonestReady(model, wanted) : undefined,
  };
}

/** The time that the wanted share of all cases outlasts, and the one that half of them do, each tried with the model. */
function lastingOf(model: AwayModel, keeping: Keeping, wanted: number): StayWarm {
  const course = keeping.coverOn === undefined ? model.bare : model.covered;
  const times = readyTimes(course, model.criteria, 0);
  const lasts = (share: number) => {
    const holds = (t: number) => model.start(keeping, t).chance >= share;
    if (!holds(0)) return 0;
    const limit = outlasted(times, share);
    return limit >= model.horizon && holds(limit) ? limit : lastWholeMinute(limit, holds);
  };
  return { sure: lasts(wanted), median: lasts(0.5), horizon: model.horizon };
}

/** [s] that at least this share of the cases outlasts. */
function outlasted(times: Float64Array, share: number): number {
  const sorted = times.slice().sort();
  return sorted[Math.max(0, sorted.length - Math.ceil(share * sorted.length - 1e-9))];
}

/** The last whole minute up to `limit` that holds, where 0 does. */
function lastWholeMinute(limit: number, holds: (t: number) => boolean): number {
  const whole = limit - (limit % SECONDS_OF_MINUTE);
  if (holds(whole)) return whole;
  let [good, bad] = [0, whole / SECONDS_OF_MINUTE];
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2);
    if (holds(middle * SECONDS_OF_MINUTE)) good = middle;
    else bad = middle;
  }
  return good * SECONDS_OF_MINUTE;
}

/** The first sample at which nothing on the cowl and milder weather have made it ready. */
function soonestReady(model: AwayModel, wanted: number): number | undefined {
  return model.bare.time.find((t) => model.start(BARE, t).chance >= wanted);
}
