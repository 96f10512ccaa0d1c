import { describe, expect, test } from "vitest";
import { NIST_MODELS } from "../validation/nist-models.js";
import { NIST_DATA_SETS, NIST_FAILURES, nistFit, nistProblem } from "../validation/nist-problems.js";

test("all 27 data sets are there, each with a model", () => {
  expect(NIST_DATA_SETS).toHaveLength(27);
  expect(NIST_DATA_SETS.map((data) => data.name).sort()).toEqual(Object.keys(NIST_MODELS).sort());
});

describe.each(NIST_DATA_SETS)("$name", (data) => {
  test("model and slopes agree with the certified sum of squares and with differences", () => {
    const { evaluate, residualCount: m } = nistProblem(data, "start2");
    const n = data.certified.length;
    const b = Float64Array.from(data.certified);
    const residuals = new Float64Array(m);
    const jacobian = new Float64Array(m * n);
    evaluate(b, residuals, jacobian);
    const sum = residuals.reduce((total, r) => total + r * r, 0);
    // Eleven digits of b leave the sum of Lanczos1, at 1e-25, a matter of their rounding.
    if (data.name !== "Lanczos1") expect(sum / data.sumOfSquares).toBeCloseTo(1, 6);
    expect(Math.sqrt(data.sumOfSquares / (m - n)) / data.residualSd).toBeCloseTo(1, 9);
    const [above, below] = [new Float64Array(m), new Float64Array(m)];
    for (let j = 0; j < n; j++) {
      const step = 1e-5 * Math.abs(b[j]);
      evaluate(
        Float64Array.from(b, (v, k) => (k === j ? v + step : v)),
        above,
        undefined,
      );
      evaluate(
        Float64Array.from(b, (v, k) => (k === j ? v - step : v)),
        below,
        undefined,
      );
      const slopes = Array.from({ length: m }, (_, i) => jacobian[i * n + j]);
      const largest = Math.max(...slopes.map(Math.abs));
      slopes.forEach((slope, i) => {
        expect(Math.abs((above[i] - below[i]) / (2 * step) - slope)).toBeLessThan(1e-5 * largest);
      });
    }
  });

  test("ends in the status it should, from both starts", () => {
    expect(nistFit(data, "start2").result.status).toBe("converged");
    const far = nistFit(data, "start1").result;
    expect(far.status).toBe(NIST_FAILURES[data.name] ?? "converged");
    if (far.status !== "converged") expect(far.remedy).not.toBe("");
  });
});
