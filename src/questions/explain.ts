import { type ExplanationDocument, explanationDocument } from "../documents/index.js";
import { plannedChanges } from "../planning/index.js";
import type { AircraftScenario } from "../scenario/index.js";
import { configurationAt, prepareRun, timelineOf } from "../simulation/index.js";
import { heatFlowsAt } from "./heat-flows.js";
import { planned } from "./plan.js";
import { completed, fromDocument, type Outcome, type QuestionOptions, type Watched } from "./question.js";

/** Why the plan is what it is: every criterion, and where the heat goes just before unplugging and at the start. */
export function explainFromDocument(
  source: unknown,
  options: QuestionOptions = {},
): Outcome<ExplanationDocument> {
  return fromDocument(source, options, (asked) => explain(asked, options));
}

function explain(asked: AircraftScenario, watched: Watched): Outcome<ExplanationDocument> {
  const found = planned(asked, watched);
  if (found.status !== "completed") return found;
  const { plan, want, drawn } = found.result;
  const { scenario } = asked;
  const run = prepareRun(scenario, drawn.draws);
  const timeline = timelineOf(scenario.initial.configuration, plannedChanges(plan, want, scenario));
  const flowsJustBefore = (t: number) => heatFlowsAt(run, plan.course, configurationAt(timeline, t - 1), t);
  const flows = {
    heating: plan.plugIn === undefined ? undefined : flowsJustBefore(plan.unplug),
    atDeparture: flowsJustBefore(plan.departure),
  };
  return completed(explanationDocument(plan, want.heaters, flows, drawn));
}
