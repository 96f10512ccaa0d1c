import { type LearningDocument, learningDocument } from "../documents/index.js";
import { type Finding, finding } from "../findings/index.js";
import {
  type AircraftFit,
  FitTrouble,
  type FittedAircraft,
  fitAircraft,
  fittedAircraft,
  hashOf,
  type LoggedStretch,
  nextReadings,
  stretchesOf,
  type TemperatureLog,
} from "../learning/index.js";
import type { AircraftScenario } from "../scenario/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import {
  completed,
  failed,
  fromDocument,
  type Outcome,
  type QuestionOptions,
  refused,
  STOPPED,
  type Watched,
} from "./question.js";

/** Moments at which another reading is tried. */
const NEXT_TIMES = 12;

/**
 * Fits the scenario's aircraft on a log of what the scenario describes, and on every cool-down after a flight that lies in
 * it: what was learned, what the log could not tell, and which reading would help most to know the crankshaft at the
 * departure (or at the end, where none is wanted).
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
  watched: Watched,
): Outcome<LearningDocument> {
  const { scenario, want } = asked;
  const all = stretchesOf(log, scenario);
  const known = all.flatMap((stretch) => {
    const hash = hashOf(stretch.log);
    return asked.learned?.evidence.filter((evidence) => evidence.hash === hash) ?? [];
  });
  if (all.length > 0 && known.length === all.length) {
    const received = `${log.origin}, learned from before as ${known[0].origin}`;
    return refused("log", "a log not learned from yet", received);
  }
  const fitted = fitsOf(asked, all, watched);
  if (fitted.status !== "completed") return fitted;
  const { fits, learned } = fitted.result;
  const at = want?.wish.departure ?? scenario.duration;
  try {
    const next = nextReadings({
      scenario,
      posterior: learned.multipliers,
      wanted: { part: "crankshaft", at },
      times: Array.from({ length: NEXT_TIMES }, (_, i) => (at * (i + 1)) / NEXT_TIMES),
    });
    const told = { ...asked, assumptions: [...asked.assumptions, ...measuredAir(log)] };
    return completed(learningDocument(fits, log, learned, next, told));
  } catch (error) {
    if (error instanceof FitTrouble) return failed(error.message);
    throw error;
  }
}

/** Fits stretch after stretch, each with what the former taught; those learned from before and empty ones are passed over. */
function fitsOf(
  { learned: before, scenario }: AircraftScenario,
  stretches: readonly LoggedStretch[],
  { onProgress }: Watched,
): Outcome<{ readonly fits: readonly [AircraftFit, ...AircraftFit[]]; readonly learned: FittedAircraft }> {
  const fits: AircraftFit[] = [];
  let learned = before;
  let message = `the log has no cool-down and no readings with the engine stopped within the scenario's ${scenario.duration / SECONDS_OF_HOUR} h`;
  for (const [n, stretch] of stretches.entries()) {
    const hash = hashOf(stretch.log);
    if (learned?.evidence.some((evidence) => evidence.hash === hash)) continue;
    const fit = fitAircraft({
      ...stretch,
      distrustOutliers: true,
      ...(learned === undefined ? {} : { earlier: learned.multipliers }),
      ...(onProgress && { onProgress: (done) => onProgress((n + done) / stretches.length) }),
    });
    if (fit.status === "nothing-to-fit") message = fit.message;
    else if (fit.status !== "fitted") return fit.status === "cancelled" ? STOPPED : failed(fit.message);
    else {
      fits.push(fit);
      learned = fittedAircraft(fit, stretch.log, learned);
    }
  }
  const [first, ...others] = fits;
  if (first === undefined || learned === undefined) return refused("log", "readings of parts", message);
  return completed({ fits: [first, ...others], learned });
}

/** Says that probes in the air count for more than the scenario's weather. */
export function measuredAir({ probes }: TemperatureLog): Finding[] {
  const inAir = probes.filter(({ place }) => typeof place !== "object").map(({ name }) => name);
  if (inAir.length === 0) return [];
  return [finding("air-as-measured", { probes: inAir })];
}
