import { parameterCovariance } from "../numerics/index.js";
import type { MultiplierPosterior, Scenario } from "../simulation/index.js";
import { type ErrorScales, type FitData, fitData, whiteningOf } from "./fit-data.js";
import { createBatch, type MemberBatch } from "./fit-members.js";
import { createFitModel, type FitModel, FitTrouble, type Linearisation } from "./fit-model.js";
import { mostLikely } from "./fit-most-likely.js";
import { posteriorOf } from "./fit-posterior.js";
import { sameScales, tunedScales } from "./fit-scales.js";
import { measuredSurroundings } from "./fit-surroundings.js";
import { type FitPriors, type Unknowns, unknownsOf } from "./fit-unknowns.js";
import type { TemperatureLog } from "./log.js";
import { type SensorKnowledge, sensorsOf } from "./sensor.js";
import { type Discrepancy, USUAL_DISCREPANCY, type Whitening } from "./sensor-noise.js";

export interface FitRequest {
  readonly log: TemperatureLog;
  /**
   * The aircraft as the catalogue has it, and what was done with it while the log ran: its start and duration, weather,
   * place, initial temperatures with their sd, and events.
   */
  readonly scenario: Scenario;
  /** [K] by which single parts may start off the initial temperature given for them; the usual for parts with a probe. */
  readonly initialSd?: ReadonlyMap<string, number>;
  /** What is known of the probes beyond what is usual. */
  readonly sensors?: SensorKnowledge;
  /** What earlier logs of this aircraft taught. */
  readonly earlier?: MultiplierPosterior;
  /**
   * Readings far off the rest count less, as if their noise had the tails of Student's t with 4 degrees of freedom
   * (Lange, Little & Taylor, J. Am. Stat. Assoc. 84 (1989) 881-896, from memory), and
   * those that contradict the model are left out. Without it every reading counts alike.
   */
  readonly distrustOutliers?: boolean;
  readonly discrepancy?: Discrepancy;
  /** Called between pieces of work with the share done [0..1]; returning false stops the fit. */
  readonly onProgress?: (done: number) => boolean;
}

/** The most likely values of everything unknown, and how sure they are. */
export interface AircraftFit {
  readonly status: "fitted";
  readonly unknowns: Unknowns;
  /** Most likely values in standard deviations of the priors. */
  readonly z: Float64Array;
  /** Covariance of z, row-major. */
  readonly covariance: Float64Array;
  readonly posterior: MultiplierPosterior;
  readonly data: FitData;
  readonly batch: MemberBatch;
  readonly model: FitModel;
  readonly linearisation: Linearisation;
  readonly whitenings: readonly Whitening[];
  readonly scales: ErrorScales;
  readonly scenario: Scenario;
  readonly discrepancy: Discrepancy;
  readonly evaluations: number;
}

export interface FitFailure {
  readonly status: "cancelled" | "failed" | "nothing-to-fit";
  readonly message: string;
}

/** [K] by which a part with a probe may start off what is given for it; project judgement. */
const INITIAL_PART_SD = 1.5;
/** Snow is guessed by eye; project judgement. */
const SNOW_LOG_SD = 0.6;
/** Fits with the sizes of the errors found out in the one before. */
const MOST_ROUNDS = 3;

/**
 * Maximum a posteriori estimate of an installation's parameters, its probes' offsets and lags, and the state it began
 * in, from one log; several logs are fitted one after the other, each with what the former taught as `earlier`.
 */
export function fitAircraft(request: FitRequest): AircraftFit | FitFailure {
  const { log, discrepancy = USUAL_DISCREPANCY } = request;
  const sensors = sensorsOf(log, request.sensors);
  const { scenario, hangarAir, airSd } = measuredSurroundings(log, request.scenario);
  const batch = createBatch({ scenario, ...(hangarAir === undefined ? {} : { hangarAir }) });
  const priors: FitPriors = {
    ...(request.earlier === undefined ? {} : { multipliers: request.earlier }),
    ...(request.initialSd === undefined ? {} : { initialParts: request.initialSd }),
    ...{ airSd, initialPartSd: INITIAL_PART_SD, snowLogSd: SNOW_LOG_SD },
  };
  const unknowns = unknownsOf(scenario, batch.parts, sensors, priors);
  const data = fitData(log, scenario, batch, sensors);
  if (data.time.length < 2) {
    return {
      status: "nothing-to-fit",
      message: "the log has no readings of parts between the scenario's start and end",
    };
  }
  const model = createFitModel(scenario, batch, unknowns, data);
  try {
    return fittedInRounds(request, { scenario, batch, unknowns, data, model, discrepancy });
  } catch (error) {
    if (error instanceof Cancelled) return { status: "cancelled", message: "the fit was stopped" };
    if (error instanceof FitTrouble) return { status: "failed", message: error.message };
    throw error;
  }
}

class Cancelled extends Error {}

type Prepared = Pick<AircraftFit, "scenario" | "batch" | "unknowns" | "data" | "model" | "discrepancy">;

function fittedInRounds(request: FitRequest, prepared: Prepared): AircraftFit {
  const { unknowns, data, model, discrepancy } = prepared;
  const progress = progressOf(request);
  let z: Float64Array = new Float64Array(unknowns.list.length);
  let scales: ErrorScales = { noise: data.probes.map(() => 1), discrepancy: 1 };
  let evaluations = 0;
  for (let round = 1; ; round++) {
    const whitenings = whiteningOf(data, discrepancy, scales);
    const found = mostLikely(z, data, model, whitenings, progress);
    z = found.z;
    evaluations += found.evaluations;
    const tuned = tunedScales(
      data,
      found.linearisation.prediction,
      discrepancy,
      scales,
      request.distrustOutliers ?? false,
    );
    if (round < MOST_ROUNDS && !sameScales(scales, tuned)) {
      scales = tuned;
      continue;
    }
    // Everything has a prior, so nothing is undetermined; residuals are in units of their own standard deviation.
    const { covariance } = parameterCovariance(found.jacobian, unknowns.list.length, 1);
    return {
      status: "fitted",
      ...prepared,
      ...{ z, covariance, whitenings, scales, evaluations, linearisation: found.linearisation },
      posterior: posteriorOf(unknowns, z, covariance),
    };
  }
}

/** How many evaluations it takes is not known beforehand; the share approaches 1. */
function progressOf({ onProgress }: FitRequest): () => void {
  let pieces = 0;
  return () => {
    pieces++;
    if (onProgress !== undefined && !onProgress(1 - 1 / (1 + pieces / 10))) throw new Cancelled();
  };
}
