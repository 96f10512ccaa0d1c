import type { Plan } from "../planning/index.js";
import { configurationAt, prepareRun, timelineOf } from "../simulation/index.js";
import { criteriaDocument } from "./criterion-document.js";
import { flowsAt } from "./heat-flows.js";
import { plannedChanges } from "./plan-document.js";
import { headerOf, type ResultContext, stampOf } from "./result-header.js";
import type { ExplanationDocument } from "./result-schema.js";
import type { WishWithHeaters } from "./wish-reading.js";

/** Why a plan is what it is: every criterion, and where the heat goes just before unplugging and at the start. */
export function explanationDocument(
  plan: Plan,
  want: WishWithHeaters,
  context: ResultContext,
): ExplanationDocument {
  const { read, draws } = context;
  const run = prepareRun(read.scenario, draws);
  const timeline = timelineOf(read.scenario.initial.configuration, plannedChanges(plan, want, read));
  const just = (t: number) => configurationAt(timeline, t - 1);
  return {
    ...headerOf(context, want.heaters),
    kind: "explanation",
    departure: stampOf(read, plan.departure),
    chance: plan.chance,
    weakest: plan.weakest.criterion.id,
    criteria: criteriaDocument(plan.verdict),
    heating:
      plan.plugIn !== undefined ? flowsAt(run, plan.course, just(plan.unplug), plan.unplug, read) : null,
    at_departure: flowsAt(run, plan.course, just(plan.departure), plan.departure, read),
  };
}
