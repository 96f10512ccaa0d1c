import { lowerCholesky } from "../numerics/index.js";
import type { MultiplierPosterior } from "../simulation/index.js";
import { logMultiplier, type Unknowns } from "./fit-unknowns.js";

/** What was learned of the multipliers, in logarithms. */
export function posteriorOf(
  unknowns: Unknowns,
  z: Float64Array,
  covariance: Float64Array,
): MultiplierPosterior {
  const { posterior: prior, multipliers: count } = unknowns;
  const n = unknowns.list.length;
  const { names, factor } = prior;
  // ln(multiplier) = mean + L z, so its covariance is L C Lᵀ.
  const half = names.map((_, i) =>
    names.map((_, k) => {
      let sum = 0;
      for (let j = 0; j <= i; j++) sum += factor[i][j] * covariance[j * n + k];
      return sum;
    }),
  );
  const joint = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let k = 0; k < count; k++) {
      for (let j = 0; j <= k; j++) joint[i * count + k] += half[i][j] * factor[k][j];
    }
  }
  const root = lowerCholesky(joint, count);
  return {
    names,
    mean: names.map((_, i) => logMultiplier(prior, i, z)),
    factor: names.map((_, i) => Array.from(root.subarray(i * count, (i + 1) * count))),
  };
}
