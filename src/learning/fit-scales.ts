import { leftOut } from "./fit-contradictions.js";
import { type ErrorScales, type FitData, LEFT_OUT, whiteningOf } from "./fit-data.js";
import type { Prediction } from "./fit-model.js";
import type { Discrepancy } from "./sensor-noise.js";

/** Noise may turn out smaller than assumed or larger; the model's own error only larger. */
const NOISE_SCALES = [0.25, 0.35, 0.5, 0.7, 1, 1.4, 2, 2.8, 4];
const DISCREPANCY_SCALES = [1, 1.25, 1.6, 2, 2.5, 3.2, 4];
/** Standard deviation of the logarithm of both scales before looking; project judgement. */
const SCALE_LOG_SD = 0.5;
/** Readings of a probe from which its noise can be told from the model's error; fewer, and a fit's own closeness deceives. */
const ENOUGH = 30;
/** Degrees of freedom of Student's t for outliers. */
const TAIL = 4;

/**
 * Sizes of the errors under which the differences left by a fit are most likely. They are taken at the fit's own
 * differences, which a fit has made small, so the model's error is never taken smaller than assumed.
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
  const without = distrustOutliers ? leftOut(data, prediction, discrepancy) : undefined;
  const reading = without?.map((rows) => data.time.map((_, k) => (rows.has(k) ? LEFT_OUT : 1)));
  const noiseScales = data.probes.map(({ rows }) => (rows.length < ENOUGH ? [1] : NOISE_SCALES));

  function costs(noise: readonly number[], size: number): number[] {
    const scales = { ...current, noise, discrepancy: size, ...(reading && { reading }) };
    return whiteningOf(data, discrepancy, scales).map((whitening, p) => {
      const out = new Float64Array(whitening.rows.length);
      whitening.apply(differences[p], out);
      return whitening.halfLogDeterminant + 0.5 * out.reduce((sum, r) => sum + r * r, 0) + prior(noise[p]);
    });
  }
  function bestNoise(size: number): { noise: number[]; cost: number } {
    const tried = NOISE_SCALES.map((scale) => ({
      noise: data.probes.map((_, p) => (noiseScales[p].includes(scale) ? scale : 1)),
    }));
    const table = tried.map(({ noise }) => costs(noise, size));
    const best = data.probes.map((_, p) => least(tried, (one) => table[tried.indexOf(one)][p]));
    return {
      noise: best.map(({ noise }, p) => noise[p]),
      cost: best.reduce((sum, one, p) => sum + table[tried.indexOf(one)][p], 0),
    };
  }
  const found = DISCREPANCY_SCALES.map((size) => ({ size, ...bestNoise(size) }));
  const { size, noise } = least(found, (one) => one.cost + prior(one.size));
  const scales: ErrorScales = { noise, discrepancy: size };
  return reading === undefined
    ? scales
    : { ...scales, reading: outlierScales(data, differences, discrepancy, { ...scales, reading }) };
}

/** Noise of each reading grown where it lies far off what the readings before it let expect. */
function outlierScales(
  data: FitData,
  differences: readonly Float64Array[],
  discrepancy: Discrepancy,
  scales: ErrorScales & Required<Pick<ErrorScales, "reading">>,
): Float64Array[] {
  return whiteningOf(data, discrepancy, scales).map((whitening, p) => {
    const surprise = new Float64Array(whitening.rows.length);
    whitening.apply(differences[p], surprise);
    const grown = Float64Array.from(scales.reading[p]);
    whitening.rows.forEach((row, k) => {
      grown[row] = Math.sqrt((TAIL + surprise[k] ** 2) / (TAIL + 1));
    });
    return grown;
  });
}

/** Whether two scales differ so little that fitting again is not worth it. */
export function sameScales(a: ErrorScales, b: ErrorScales): boolean {
  const same = (x: ArrayLike<number>, y: ArrayLike<number>) =>
    Array.from(x).every((value, k) => value === y[k] || Math.abs(value / y[k] - 1) < 0.2);
  const readings = (b.reading ?? []).every((values, p) =>
    same(values, a.reading?.[p] ?? new Float64Array(values.length).fill(1)),
  );
  return same(a.noise, b.noise) && same([a.discrepancy], [b.discrepancy]) && readings;
}

function prior(scale: number): number {
  return 0.5 * (Math.log(scale) / SCALE_LOG_SD) ** 2;
}

function least<T>(candidates: readonly T[], cost: (candidate: T) => number): T {
  return candidates.reduce((best, one) => (cost(one) < cost(best) ? one : best));
}
