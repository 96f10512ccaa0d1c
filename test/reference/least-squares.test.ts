import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { createRandom, leastSquares, parameterCovariance } from "../../src/numerics/index.js";
import type { LeastSquaresProblem } from "../../src/numerics/least-squares.js";
import { pythonWithScipy } from "./python.js";

/** Rise above the start of a body that warms quickly through one neighbour and slowly through another (invented). */
const TIMES = Array.from({ length: 120 }, (_, i) => i / 10);
const NOISE_SD = 0.3;
const PRIOR = [50, 0.5, 0.5, 3].map(Math.log);
const PRIOR_SD = 0.5;
const READINGS = (() => {
  const random = createRandom(2026).stream("readings");
  const rise = (t: number) => 38 * (1 - 0.7 * Math.exp(-t / 0.8) - 0.3 * Math.exp(-t / 5));
  return TIMES.map((t) => rise(t) + NOISE_SD * random.normal());
})();

const PROBLEM: LeastSquaresProblem = {
  residualCount: TIMES.length + PRIOR.length,
  start: PRIOR,
  evaluate(x, residuals, jacobian) {
    const [rise, share, fast, slow] = x.map(Math.exp);
    jacobian?.fill(0);
    TIMES.forEach((t, i) => {
      const [early, late] = [Math.exp(-t / fast), Math.exp(-t / slow)];
      const model = rise * (1 - share * early - (1 - share) * late);
      residuals[i] = (model - READINGS[i]) / NOISE_SD;
      jacobian?.set(
        [
          model,
          rise * share * (late - early),
          (-rise * share * early * t) / fast,
          (-rise * (1 - share) * late * t) / slow,
        ].map((slope) => slope / NOISE_SD),
        4 * i,
      );
    });
    PRIOR.forEach((centre, j) => {
      residuals[TIMES.length + j] = (x[j] - centre) / PRIOR_SD;
      if (jacobian !== undefined) jacobian[(TIMES.length + j) * 4 + j] = 1 / PRIOR_SD;
    });
    return true;
  },
};

test("a fit of logarithms with priors, against scipy's least_squares", ({ skip }) => {
  const python = pythonWithScipy();
  if (python === undefined) {
    const missing = "no python3 with scipy (Debian: python3-scipy), so the fit was not checked against it";
    if (process.env.CI !== undefined) throw new Error(`${missing}; it may not be skipped in CI`);
    console.warn(missing);
    skip(missing);
    return;
  }
  const input = { times: TIMES, readings: READINGS, prior: PRIOR, noise_sd: NOISE_SD, prior_sd: PRIOR_SD };
  const script = fileURLToPath(new URL("least_squares.py", import.meta.url));
  const theirs: { x: number[]; sum: number; covariance: number[] } = JSON.parse(
    execFileSync(python, [script], { input: JSON.stringify(input), encoding: "utf8" }),
  );
  const ours = leastSquares(PROBLEM);
  const { covariance, standardErrors } = parameterCovariance(ours.jacobian, 4, 1);
  expect(ours.status).toBe("converged");
  expect(Math.abs(ours.sumOfSquares / theirs.sum - 1)).toBeLessThan(1e-9);
  for (let j = 0; j < 4; j++) {
    // Scipy's slopes are differences, and it stops by the sum: a hundred-thousandth of a standard error is what both can tell.
    expect(Math.abs(ours.x[j] - theirs.x[j])).toBeLessThan(1e-5 * standardErrors[j]);
    for (let k = 0; k < 4; k++)
      expect(Math.abs(covariance[4 * j + k] - theirs.covariance[4 * j + k])).toBeLessThan(
        1e-5 * standardErrors[j] * standardErrors[k],
      );
  }
});
