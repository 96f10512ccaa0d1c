import { inverseOf } from "../numerics/index.js";
import type { LinearRun } from "./linear-run.js";
import {
  covarianceOf,
  dot,
  grouped,
  type Row,
  rowsByAircraft,
  SHARE_OF_PROBE,
  type Variances,
} from "./rows.js";

/** Engines and nights as they are spread, one number for each name of POPULATION. */
export interface Population {
  readonly mean: Float64Array;
  /** Covariance that a new aircraft on a new night is to be given, row-major: of all the parts below. */
  readonly covariance: Float64Array;
  /** Roots of its diagonal. */
  readonly sd: Float64Array;
  readonly betweenAircraft: Float64Array;
  readonly betweenNights: Float64Array;
  /** How well the mean itself is known. */
  readonly ofMean: Float64Array;
  /** [K] standard deviation of what a reading is off beside all that. */
  readonly modelError: number;
}

/** What was held before any run was looked at. */
export interface Before {
  readonly mean: ArrayLike<number>;
  /** Of a new aircraft on a new night, all together. */
  readonly sd: ArrayLike<number>;
}

/** Shares of the variance held before: of the mean, between aircraft, between nights; project judgement. */
const SHARES = { mean: 0.5, aircraft: 0.25, nights: 0.25 } as const;
/** As many aircraft or nights the judgement of a spread counts for; project judgement. */
const WEIGHT_OF_JUDGEMENT = 4;
/** [K] model error held before; project judgement. */
const MODEL_ERROR = 2;
/**
 * Degrees of freedom of the readings' own errors, as Student's t, so that one far off the rest counts less (Lange, Little
 * & Taylor, J. Am. Stat. Assoc. 84 (1989) 881-896, from memory).
 */
const STUDENT = 4;
/** After which spreads move by less than a hundredth. */
const ROUNDS = 100;

/** One aircraft's readings with the inverse of their covariance. */
interface Block {
  readonly rows: readonly Row[];
  readonly weights: Float64Array;
  inverse: Float64Array;
}

/**
 * Most likely population for readings that are straight in the unknowns: means by generalised least squares, spreads by
 * expectation and maximisation (Dempster, Laird & Rubin, J. R. Stat. Soc. B 39 (1977) 1-38, from memory), each held to what
 * was judged before.
 */
export function fitPopulation(runs: readonly LinearRun[], before: Before): Population {
  const held = (share: number) => Float64Array.from(before.sd, (sd) => share * sd ** 2);
  let variances: Variances = {
    betweenAircraft: held(SHARES.aircraft),
    betweenNights: held(SHARES.nights),
    model: MODEL_ERROR ** 2,
  };
  const judged = variances;
  const blocks = rowsByAircraft(runs).map(
    (rows): Block => ({ rows, weights: new Float64Array(rows.length).fill(1), inverse: new Float64Array() }),
  );
  let means = meansOf([], before.mean, held(SHARES.mean));
  for (let round = 0; round < ROUNDS; round++) {
    for (const block of blocks)
      block.inverse = inverseOf(covarianceOf(block.rows, variances, block.weights), block.rows.length);
    means = meansOf(blocks, before.mean, held(SHARES.mean));
    variances = spreadsOf(blocks, means.mean, variances, judged);
  }
  return populationOf(means, variances);
}

interface Means {
  readonly mean: Float64Array;
  /** How well they are known, row-major. */
  readonly covariance: Float64Array;
}

function meansOf(blocks: readonly Block[], before: ArrayLike<number>, variance: Float64Array): Means {
  const n = variance.length;
  const information = new Float64Array(n * n);
  const pull = new Float64Array(n);
  for (let p = 0; p < n; p++) {
    information[p * n + p] = 1 / variance[p];
    pull[p] = before[p] / variance[p];
  }
  for (const { rows, inverse } of blocks) {
    rows.forEach((row, i) => {
      rows.forEach((other, j) => {
        const common = inverse[i * rows.length + j];
        for (let p = 0; p < n; p++) {
          const left = row.slopes[p] * common;
          pull[p] += left * other.off;
          for (let q = 0; q < n; q++) information[p * n + q] += left * other.slopes[q];
        }
      });
    });
  }
  const covariance = inverseOf(information, n);
  return { mean: pull.map((_, p) => dot(covariance.subarray(p * n, (p + 1) * n), pull)), covariance };
}

/** Mean squares of what each aircraft and night most likely was, with what is not known of it; weighs readings anew. */
function spreadsOf(
  blocks: readonly Block[],
  mean: Float64Array,
  now: Variances,
  judged: Variances,
): Variances {
  const aircraft = {
    sum: judged.betweenAircraft.map((v) => WEIGHT_OF_JUDGEMENT * v),
    count: WEIGHT_OF_JUDGEMENT,
  };
  const nights = {
    sum: judged.betweenNights.map((v) => WEIGHT_OF_JUDGEMENT * v),
    count: WEIGHT_OF_JUDGEMENT,
  };
  const model = { sum: WEIGHT_OF_JUDGEMENT * judged.model, count: WEIGHT_OF_JUDGEMENT };
  for (const block of blocks) {
    const { rows, inverse, weights } = block;
    const size = rows.length;
    const left = rows.map((row) => row.off - dot(row.slopes, mean));
    const pulls = rows.map((_, i) => dot(inverse.subarray(i * size, (i + 1) * size), left));
    const all = rows.map((_, i) => i);
    const some = grouped(rows, (row) => row.occasion);
    mean.forEach((_, p) => {
      aircraft.sum[p] += meanSquare(block, pulls, all, p, now.betweenAircraft[p]);
      for (const night of some) nights.sum[p] += meanSquare(block, pulls, night, p, now.betweenNights[p]);
    });
    aircraft.count += 1;
    nights.count += some.length;
    rows.forEach((row, i) => {
      const squareOf = (variance: number) =>
        (variance * pulls[i]) ** 2 + variance - variance ** 2 * inverse[i * size + i];
      model.sum += weights[i] * squareOf(now.model / weights[i]);
      model.count += 1;
      const own = (1 - SHARE_OF_PROBE) * row.errorVariance + now.model;
      weights[i] = (STUDENT + 1) / (STUDENT + squareOf(own / weights[i]) / own);
    });
  }
  return {
    betweenAircraft: aircraft.sum.map((sum) => sum / aircraft.count),
    betweenNights: nights.sum.map((sum) => sum / nights.count),
    model: model.sum / model.count,
  };
}

/** E[d²] of the deviation of parameter p that some readings of an aircraft have in common. */
function meanSquare(
  { rows, inverse }: Block,
  pulls: readonly number[],
  some: readonly number[],
  p: number,
  variance: number,
): number {
  let pull = 0;
  let known = 0;
  for (const i of some) {
    pull += rows[i].slopes[p] * pulls[i];
    for (const j of some) known += rows[i].slopes[p] * inverse[i * rows.length + j] * rows[j].slopes[p];
  }
  return (variance * pull) ** 2 + variance - variance ** 2 * known;
}

function populationOf({ mean, covariance: ofMean }: Means, variances: Variances): Population {
  const n = mean.length;
  const { betweenAircraft, betweenNights, model } = variances;
  const covariance = ofMean.slice();
  for (let p = 0; p < n; p++) covariance[p * n + p] += betweenAircraft[p] + betweenNights[p];
  const roots = (matrix: Float64Array) => mean.map((_, p) => Math.sqrt(matrix[p * n + p]));
  return {
    ...{ mean, covariance },
    sd: roots(covariance),
    betweenAircraft: betweenAircraft.map(Math.sqrt),
    betweenNights: betweenNights.map(Math.sqrt),
    ofMean: roots(ofMean),
    modelError: Math.sqrt(model),
  };
}
