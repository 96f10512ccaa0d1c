import type { AircraftFit } from "../../src/learning/fit-aircraft.js";
import { createRandom, lowerCholesky } from "../../src/numerics/index.js";

/** How far the normal approximation at the top of a posterior agrees with the posterior itself. */
interface SamplingCheck {
  /** Share of the proposed steps that were taken; around a quarter is best. */
  readonly accepted: number;
  /** Per unknown: shift of the mean in the approximation's sd, and ratio of the true sd to the approximation's. */
  readonly unknowns: readonly { readonly meanShift: number; readonly sdRatio: number }[];
}

interface SamplingRequest {
  /** Chains side by side, the members of one solve. */
  readonly chains: number;
  /** Steps of each chain; the first half only finds the way in. */
  readonly steps: number;
  readonly seed: number;
}

/**
 * Random-walk Metropolis from the normal approximation, steps of 2.4/√n of its covariance (Roberts, Gelman & Gilks, Ann.
 * Appl. Probab. 7 (1997) 110-120), all chains in one ensemble.
 */
export function checkBySampling(fit: AircraftFit, { chains, steps, seed }: SamplingRequest): SamplingCheck {
  const n = fit.z.length;
  const factor = lowerCholesky(fit.covariance, n);
  const random = createRandom(seed);
  const moved = (from: Float64Array, size: number) => {
    const u = Float64Array.from({ length: n }, () => random.normal());
    return from.map((z, i) => z + size * rowTimes(factor, n, i, u));
  };
  let places = Array.from({ length: chains }, () => moved(fit.z, 1));
  let densities = logPosterior(fit, places);
  let taken = 0;
  let count = 0;
  const sum = new Float64Array(n);
  const sumOfSquares = new Float64Array(n);
  for (let step = 0; step < steps; step++) {
    const proposed = places.map((place) => moved(place, 2.4 / Math.sqrt(n)));
    const there = logPosterior(fit, proposed);
    const accepts = there.map((density, c) => Math.log(random.uniform()) < density - densities[c]);
    places = places.map((place, c) => (accepts[c] ? proposed[c] : place));
    densities = densities.map((density, c) => (accepts[c] ? there[c] : density));
    taken += accepts.filter((accept) => accept).length;
    if (step < steps / 2) continue;
    count += chains;
    for (const place of places) {
      for (let j = 0; j < n; j++) {
        sum[j] += place[j] - fit.z[j];
        sumOfSquares[j] += (place[j] - fit.z[j]) ** 2;
      }
    }
  }
  return {
    accepted: taken / (chains * steps),
    unknowns: Array.from(sum, (total, j) => {
      const sd = Math.sqrt(fit.covariance[j * n + j]);
      const mean = total / count;
      return { meanShift: mean / sd, sdRatio: Math.sqrt(sumOfSquares[j] / count - mean ** 2) / sd };
    }),
  };
}

/** Logarithm of the posterior density at each z, up to a constant. */
function logPosterior({ model, data, whitenings }: AircraftFit, zs: readonly Float64Array[]): number[] {
  return model.predict(zs).map((prediction, m) => {
    let sum = squared(zs[m]);
    whitenings.forEach((whitening, p) => {
      const whitened = new Float64Array(whitening.rows.length);
      whitening.apply(
        prediction[p].map((value, k) => value - data.probes[p].readings[k]),
        whitened,
      );
      sum += squared(whitened);
    });
    return -0.5 * sum;
  });
}

function rowTimes(factor: Float64Array, n: number, row: number, u: Float64Array): number {
  let sum = 0;
  for (let j = 0; j <= row; j++) sum += factor[row * n + j] * u[j];
  return sum;
}

function squared(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}
