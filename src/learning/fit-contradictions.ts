import type { FitData } from "./fit-data.js";
import type { Prediction } from "./fit-model.js";
import type { Discrepancy } from "./sensor-noise.js";

/**
 * A reading contradicts the model where it is further off than so many standard deviations of noise and model error as they
 * usually are, and than so many kelvins; project judgement.
 */
const CONTRADICTS = 4;
const CONTRADICTS_BY = 6;
/** Where a larger share of a probe's readings contradicts, it is the aircraft that is strange, and nothing is left out. */
const MOST_LEFT_OUT = 1 / 3;

/**
 * Rows of each probe whose readings no aircraft like this one explains. Judged by the errors as they usually are: a fit that
 * misses much has made its own errors wider.
 */
export function contradictions(
  { probes }: FitData,
  prediction: Prediction,
  discrepancy: Discrepancy,
): readonly (readonly number[])[] {
  return probes.map(({ sensor, readings, rows, rise }, p) =>
    rows.filter((row) => {
      const sd = Math.hypot(sensor.noise, discrepancy.floor, discrepancy.share * rise[row]);
      return Math.abs(readings[row] - prediction[p][row]) > Math.max(CONTRADICTS * sd, CONTRADICTS_BY);
    }),
  );
}

/** Rows of each probe that a fit goes without. */
export function leftOut(data: FitData, prediction: Prediction, discrepancy: Discrepancy) {
  return contradictions(data, prediction, discrepancy).map(
    (rows, p) => new Set(rows.length <= MOST_LEFT_OUT * data.probes[p].rows.length ? rows : []),
  );
}
