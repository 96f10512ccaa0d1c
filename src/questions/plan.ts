import { type PlanDocument, planDocument } from "../documents/index.js";
import { type Plan, type PlanRequest, plannedChanges, planPreheat } from "../planning/index.js";
import { allCriteria } from "../readiness/index.js";
import {
  type AircraftScenario,
  type DrawnScenario,
  drawnFrom,
  usedKit,
  type WishWithHeaters,
} from "../scenario/index.js";
import { briefingAt } from "./briefing.js";
import {
  completed,
  fromDocument,
  type Outcome,
  type QuestionOptions,
  refused,
  type Watched,
} from "./question.js";

/** When to plug in for the departure that a scenario document wants. */
export function planFromDocument(source: unknown, options: QuestionOptions = {}): Outcome<PlanDocument> {
  return fromDocument(source, options, (asked) => planFor(asked, options));
}

/** When to plug in for the departure wanted. */
export function planFor(asked: AircraftScenario, watched: Watched = {}): Outcome<PlanDocument> {
  const found = planned(asked, watched);
  if (found.status !== "completed") return found;
  const { plan, want, drawn } = found.result;
  return completed(planResult(plan, want, drawn));
}

export interface Planned {
  readonly plan: Plan;
  readonly want: WishWithHeaters;
  readonly drawn: DrawnScenario;
}

export function planned(asked: AircraftScenario, { onProgress }: Watched): Outcome<Planned> {
  const { want } = asked;
  if (want === undefined) return refused("want", "a departure to plan for", "nothing");
  const drawn = drawnFrom(asked);
  const plan = planPreheat({
    ...planRequest(drawn, want),
    ...(onProgress === undefined ? {} : { onProgress }),
  });
  return "course" in plan ? completed({ plan, want, drawn }) : plan;
}

/** What is asked of the planning core. */
export function planRequest({ read, draws }: DrawnScenario, { wish, heaters }: WishWithHeaters): PlanRequest {
  const { scenario, limits } = read;
  return {
    scenario,
    wish,
    heaters,
    criteria: allCriteria(scenario.installation, usedKit(read), limits),
    draws,
  };
}

/** A plan with what is done for it and what to know at the start, as it is stored, exchanged and shown. */
export function planResult(plan: Plan, want: WishWithHeaters, drawn: DrawnScenario): PlanDocument {
  const changes = plannedChanges(plan, want, drawn.read.scenario);
  return planDocument(plan, want, drawn, {
    changes,
    briefing: briefingAt(plan.course, plan.departure, drawn),
  });
}
