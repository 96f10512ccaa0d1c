import { type SimulationDocument, simulationDocument } from "../documents/index.js";
import { type AircraftScenario, drawnFrom } from "../scenario/index.js";
import { type Scenario, simulate } from "../simulation/index.js";
import { SECONDS_OF_MINUTE } from "../units/index.js";
import {
  completed,
  failed,
  fromDocument,
  type Outcome,
  type QuestionOptions,
  STOPPED,
  type Watched,
} from "./question.js";

/** [s] spacing of results; moments of the scenario's events come on top. */
const SAMPLE_STEP = 10 * SECONDS_OF_MINUTE;

/** Every part over time, as the document's own events have it. */
export function simulateFromDocument(
  source: unknown,
  options: QuestionOptions = {},
): Outcome<SimulationDocument> {
  return fromDocument(source, options, (asked) => played(asked, options));
}

function played(asked: AircraftScenario, { onProgress }: Watched): Outcome<SimulationDocument> {
  const drawn = drawnFrom(asked);
  const { scenario } = asked;
  const course = simulate(scenario, drawn.draws, sampleTimes(scenario), () => onProgress?.() ?? true);
  if (course.status === "cancelled") return STOPPED;
  if (course.status !== "completed") return failed(course.remedy);
  return completed(simulationDocument(course, drawn));
}

function sampleTimes({ duration, events }: Scenario): number[] {
  const times = new Set([0, duration, ...events.map((e) => e.at)]);
  for (let t = SAMPLE_STEP; t < duration; t += SAMPLE_STEP) times.add(t);
  return [...times].sort((a, b) => a - b);
}
