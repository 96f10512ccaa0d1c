import { type LearningDocument, learningDocument } from "../documents/index.js";
import { type Finding, finding } from "../findings/index.js";
import {
  FitTrouble,
  fitAircraft,
  fittedAircraft,
  hashOf,
  nextReadings,
  type TemperatureLog,
} from "../learning/index.js";
import type { AircraftScenario } from "../scenario/index.js";
import {
  completed,
  fromDocument,
  type Outcome,
  type QuestionOptions,
  refused,
  type Watched,
} from "./question.js";

/** Moments at which another reading is tried. */
const NEXT_TIMES = 12;

/**
 * Fits the scenario's aircraft on a log of what the scenario describes: what was learned, what the log could not tell,
 * and which reading would help most to know the crankshaft at the departure (or at the end, where none is wanted).
 */
export function learnFromDocument(
  source: unknown,
  log: TemperatureLog,
  options: QuestionOptions = {},
): Outcome<LearningDocument> {
  return fromDocument(source, options, (asked) => learnFrom(asked, log, options));
}

function learnFrom(
  asked: AircraftScenario,
  log: TemperatureLog,
  { onProgress }: Watched,
): Outcome<LearningDocument> {
  const { scenario, learned, want } = asked;
  const fit = fitAircraft({
    log,
    scenario,
    ...(learned === undefined ? {} : { earlier: learned.multipliers }),
    ...(onProgress === undefined ? {} : { onProgress }),
  });
  if (fit.status === "nothing-to-fit") return refused("log", "readings of parts", fit.message);
  if (fit.status !== "fitted") return { status: fit.status, message: fit.message };
  const known = learned?.evidence.find((e) => e.hash === hashOf(log));
  if (known !== undefined) {
    const received = `${log.origin}, learned from before as ${known.origin}`;
    return refused("log", "a log not learned from yet", received);
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
    const told = { ...asked, assumptions: [...asked.assumptions, ...measuredAir(log)] };
    return completed(learningDocument(fit, log, taught, next, told));
  } catch (error) {
    if (error instanceof FitTrouble) return { status: "failed", message: error.message };
    throw error;
  }
}

/** Says that probes in the air count for more than the scenario's weather. */
export function measuredAir({ probes }: TemperatureLog): Finding[] {
  const inAir = probes.filter(({ place }) => typeof place !== "object").map(({ name }) => name);
  if (inAir.length === 0) return [];
  return [finding("air-as-measured", { probes: inAir })];
}
