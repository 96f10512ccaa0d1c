import type { DrawnScenario } from "../scenario/index.js";
import { heatersUsed } from "../scenario/index.js";
import type { Trajectory } from "../simulation/index.js";
import { courseDocument } from "./course-document.js";
import { happeningsOf, headerOf } from "./result-header.js";
import type { SimulationDocument } from "./result-schema.js";

/** A scenario played with its own events. */
export function simulationDocument(course: Trajectory, context: DrawnScenario): SimulationDocument {
  const { scenario } = context.read;
  return {
    ...headerOf(context, heatersUsed(scenario)),
    kind: "simulation",
    happenings: happeningsOf(context.read, scenario.events),
    course: courseDocument(course, context),
  };
}
