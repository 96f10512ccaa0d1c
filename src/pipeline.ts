import {
  type DocumentIssue,
  type ExplanationDocument,
  explanationDocument,
  type LearningDocument,
  learningDocument,
  type Overrides,
  overridden,
  type PlanDocument,
  planDocument,
  type ReadFile,
  type ReadScenario,
  type ResultContext,
  readScenarioDocument,
  type SimulationDocument,
  simulationDocument,
  usedKit,
  type WishWithHeaters,
} from "./documents/index.js";
import {
  FitTrouble,
  type FittedAircraft,
  fitAircraft,
  fittedAircraft,
  hashOf,
  nextReadings,
  posteriorFor,
  type TemperatureLog,
} from "./learning/index.js";
import { type Plan, planPreheat } from "./planning/index.js";
import { allCriteria } from "./readiness/index.js";
import { drawEnsemble, type MultiplierPosterior, simulate } from "./simulation/index.js";

// The whole flow: document -> scenario -> draws -> plan or trajectory -> document.

/** What a stage of the flow ended in; the three ways to fail stay apart. */
export type Outcome<T> =
  | { readonly status: "completed"; readonly result: T }
  | { readonly status: "refused"; readonly issues: readonly DocumentIssue[] }
  | { readonly status: "failed" | "cancelled"; readonly message: string };

export interface PipelineOptions {
  /** What-ifs put over the document. */
  readonly overrides?: Overrides;
  /** Gives the text of weather files that the document names. */
  readonly readFile?: ReadFile;
  /** Called now and then with the share done [0..1], where it is known; returning false stops the work. */
  readonly onProgress?: (done?: number) => boolean;
}

/** When to plug in for the departure that a scenario document wants. */
export function planFromDocument(source: unknown, options: PipelineOptions = {}): Outcome<PlanDocument> {
  return planned(source, options, planDocument);
}

/** Why the plan is what it is: criteria and heat flows. */
export function explainFromDocument(
  source: unknown,
  options: PipelineOptions = {},
): Outcome<ExplanationDocument> {
  return planned(source, options, explanationDocument);
}

/** Every part over time, as the document's own events have it. */
export function simulateFromDocument(
  source: unknown,
  options: PipelineOptions = {},
): Outcome<SimulationDocument> {
  const read = scenarioFrom(source, options);
  if (!read.ok) return { status: "refused", issues: read.issues };
  const context = drawnFrom(read);
  const { onProgress } = options;
  const course = simulate(read.scenario, context.draws, sampleTimes(read), () => onProgress?.() ?? true);
  if (course.status === "cancelled") return { status: "cancelled", message: "the simulation was stopped" };
  if (course.status !== "completed") return { status: "failed", message: course.remedy };
  return { status: "completed", result: simulationDocument(course, context) };
}

function planned<T>(
  source: unknown,
  options: PipelineOptions,
  toDocument: (plan: Plan, want: WishWithHeaters, context: ResultContext) => T,
): Outcome<T> {
  const read = scenarioFrom(source, options);
  if (!read.ok) return { status: "refused", issues: read.issues };
  const { want } = read;
  if (want === undefined) return { status: "refused", issues: [NOTHING_WANTED] };
  const context = drawnFrom(read);
  const plan = planPreheat({
    scenario: read.scenario,
    wish: want.wish,
    heaters: want.heaters,
    criteria: allCriteria(read.scenario.installation, usedKit(read), read.limits),
    draws: context.draws,
    ...(options.onProgress === undefined ? {} : { onProgress: options.onProgress }),
  });
  if (!("course" in plan)) return plan;
  return { status: "completed", result: toDocument(plan, want, context) };
}

const NOTHING_WANTED: DocumentIssue = {
  path: "want",
  expected: "a departure to plan for",
  received: "nothing",
};

export function scenarioFrom(source: unknown, { overrides = {}, readFile }: PipelineOptions) {
  return readScenarioDocument(overridden(source, overrides), readFile === undefined ? {} : { readFile });
}

export function drawnFrom(read: ReadScenario): ResultContext {
  const { members, seed } = read.ensemble;
  const { weather } = read.scenario;
  if (read.learned === undefined) return { read, draws: drawEnsemble({ members, seed, weather }) };
  const posterior = posteriorOf(read, read.learned);
  const assumptions = [...read.assumptions, learnedText(read.learned, posterior)];
  return { read: { ...read, assumptions }, draws: drawEnsemble({ members, seed, weather, posterior }) };
}

/** What was learned, as far as it holds for how the aircraft stands and what heats it. */
export function posteriorOf({ scenario, want }: ReadScenario, learned: FittedAircraft): MultiplierPosterior {
  const { place, coversOn, heatersOn } = scenario.initial.configuration;
  const setting = { place, covers: [...coversOn].sort() };
  return posteriorFor(learned, { setting, heaters: want?.heaters ?? [...heatersOn] });
}

function learnedText({ evidence, multipliers }: FittedAircraft, used: MultiplierPosterior): string {
  const readings = evidence.reduce((sum, e) => sum + e.readings, 0);
  const reset =
    used === multipliers
      ? ""
      : "; what was learned under other covers, heaters or at another place counts as unknown";
  return `This aircraft's numbers are as learned from ${readings} readings (${evidence.map((e) => e.origin).join(", ")})${reset}.`;
}

/**
 * Fits the scenario's aircraft on a log of what the scenario describes: what was learned, what the log could not tell,
 * and which reading would help most to know the crankshaft at the departure (or at the end, where none is wanted).
 */
export function learnFromDocument(
  source: unknown,
  log: TemperatureLog,
  options: PipelineOptions = {},
): Outcome<LearningDocument> {
  const read = scenarioFrom(source, options);
  if (!read.ok) return { status: "refused", issues: read.issues };
  const { scenario, learned, want } = read;
  const fit = fitAircraft({
    log,
    scenario,
    ...(learned === undefined ? {} : { earlier: learned.multipliers }),
    ...(options.onProgress === undefined ? {} : { onProgress: options.onProgress }),
  });
  if (fit.status === "nothing-to-fit") {
    return {
      status: "refused",
      issues: [{ path: "log", expected: "readings of parts", received: fit.message }],
    };
  }
  if (fit.status !== "fitted") return { status: fit.status, message: fit.message };
  const known = learned?.evidence.find((e) => e.hash === hashOf(log));
  if (known !== undefined) {
    const received = `${log.origin}, learned from before as ${known.origin}`;
    return { status: "refused", issues: [{ path: "log", expected: "a log not learned from yet", received }] };
  }
  const taught = fittedAircraft(fit, log, learned);
  const at = want?.wish.departure ?? scenario.duration;
  try {
    const next = nextReadings({
      scenario,
      posterior: taught.multipliers,
      wanted: { part: "crankshaft", at },
      times: Array.from({ length: NEXT_TIMES }, (_, i) => (at * (i + 1)) / NEXT_TIMES),
    });
    const told = { ...read, assumptions: [...read.assumptions, ...measuredAirText(log)] };
    return { status: "completed", result: learningDocument(fit, log, taught, next, told) };
  } catch (error) {
    if (error instanceof FitTrouble) return { status: "failed", message: error.message };
    throw error;
  }
}

/** Says that probes in the air count for more than the scenario's weather. */
export function measuredAirText({ probes }: TemperatureLog): string[] {
  const inAir = probes.filter(({ place }) => typeof place !== "object").map(({ name }) => name);
  if (inAir.length === 0) return [];
  return [`The air around the aircraft is as ${inAir.join(" and ")} measured it, not as the weather has it.`];
}

/** Moments at which another reading is tried. */
const NEXT_TIMES = 12;

/** [s] spacing of results; moments of the scenario's events come on top. */
const SAMPLE_STEP = 600;

function sampleTimes({ scenario }: ReadScenario): number[] {
  const { duration, events } = scenario;
  const times = new Set([0, duration, ...events.map((e) => e.at)]);
  for (let t = SAMPLE_STEP; t < duration; t += SAMPLE_STEP) times.add(t);
  return [...times].sort((a, b) => a - b);
}
