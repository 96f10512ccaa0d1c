import { type ErrorScales, type FitData, whiteningOf } from "./fit-data.js";
import type { Prediction } from "./fit-model.js";
import { createWhitening, type Discrepancy } from "./sensor-noise.js";

/** Noise may turn out smaller than assumed or larger; the model's own error only larger. */
const NOISE_SCALES = [0.25, 0.35, 0.5, 0.7, 1, 1.4, 2, 2.8, 4];
const DISCREPANCY_SCALES = [1, 1.25, 1.6, 2, 2.5, 3.2, 4];
/** Standard deviation of the logarithm of both scales before looking; project judgement. */
const SCALE_LOG_SD = 0.5;
/** Degrees of freedom of Student's t for outliers. */
const TAIL = 4;

/**
 * Sizes of the errors under which the differences left by a fit are most likely. They are taken at the fit's own
 * differences, which a fit has made small, so the model's error may be found too small but never below what is assumed.
 */
export function tunedScales(
  data: FitData,
  prediction: Prediction,
  discrepancy: Discrepancy,
  current: ErrorScales,
  distrustOutliers: boolean,
): ErrorScales {
  const differences = data.probes.map(({ readings }, p) =>
    readings.map((reading, k) => (Number.isNaN(reading) ? 0 : prediction[p][k] - reading)),
  );
  const costOf = (p: number, noise: number, size: number) => {
    const scales = {
      ...current,
      noise: current.noise.map((n, q) => (q === p ? noise : n)),
      discrepancy: size,
    };
    const probe = data.probes[p];
    const { rows, rise, sensor } = probe;
    const reading = current.reading?.[p];
    const whitening = createWhitening(
      data.time,
      rows,
      rows.map((row) => sensor.noise * noise * (reading?.[row] ?? 1)),
      rows.map((row) => scales.discrepancy * Math.hypot(discrepancy.floor, discrepancy.share * rise[row])),
      discrepancy.correlationTime,
    );
    const out = new Float64Array(rows.length);
    whitening.apply(differences[p], out);
    return whitening.halfLogDeterminant + 0.5 * out.reduce((sum, r) => sum + r * r, 0) + prior(noise);
  };
  const bestNoise = (p: number, size: number) => least(NOISE_SCALES, (noise) => costOf(p, noise, size));
  const size = least(DISCREPANCY_SCALES, (s) => {
    const cost = data.probes.reduce((sum, _, p) => sum + costOf(p, bestNoise(p, s), s), 0);
    return cost + prior(s);
  });
  const scales: ErrorScales = { noise: data.probes.map((_, p) => bestNoise(p, size)), discrepancy: size };
  return distrustOutliers
    ? { ...scales, reading: outlierScales(data, differences, discrepancy, scales) }
    : scales;
}

/** Noise of each reading grown where it lies far off what the readings before it let expect. */
function outlierScales(
  data: FitData,
  differences: readonly Float64Array[],
  discrepancy: Discrepancy,
  scales: ErrorScales,
): Float64Array[] {
  return whiteningOf(data, discrepancy, scales).map((whitening, p) => {
    const surprise = new Float64Array(whitening.rows.length);
    whitening.apply(differences[p], surprise);
    const grown = new Float64Array(data.time.length).fill(1);
    whitening.rows.forEach((row, k) => {
      grown[row] = Math.sqrt((TAIL + surprise[k] ** 2) / (TAIL + 1));
    });
    return grown;
  });
}

export function sameScales(a: ErrorScales, b: ErrorScales): boolean {
  const same = (x: ArrayLike<number>, y: ArrayLike<number>) =>
    Array.from(x).every((value, k) => Math.abs(value / y[k] - 1) < 0.2);
  const readings = (b.reading ?? []).every((values, p) =>
    same(values, a.reading?.[p] ?? new Float64Array(values.length).fill(1)),
  );
  return same(a.noise, b.noise) && same([a.discrepancy], [b.discrepancy]) && readings;
}

function prior(scale: number): number {
  return 0.5 * (Math.log(scale) / SCALE_LOG_SD) ** 2;
}

function least(candidates: readonly number[], cost: (candidate: number) => number): number {
  let best = candidates[0];
  let lowest = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const value = cost(candidate);
    if (value < lowest) {
      lowest = value;
      best = candidate;
    }
  }
  return best;
}
