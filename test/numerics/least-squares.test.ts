import fc from "fast-check";
import { inverse, Matrix } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { createRandom, leastSquares, parameterCovariance } from "../../src/numerics/index.js";
import type { LeastSquaresProblem } from "../../src/numerics/least-squares.js";

/** Fit of y = p0 exp(-p1 t) with logarithms as parameters, as the learning folder does it. */
function decay(
  times: readonly number[],
  y: readonly number[],
  start: readonly number[],
): LeastSquaresProblem {
  return {
    residualCount: times.length,
    start,
    evaluate([a, b], residuals, jacobian) {
      times.forEach((t, i) => {
        const value = Math.exp(a - Math.exp(b) * t);
        residuals[i] = value - y[i];
        jacobian?.set([value, -value * Math.exp(b) * t], 2 * i);
      });
      return true;
    },
  };
}

const TIMES = Array.from({ length: 20 }, (_, i) => 0.3 * i);
const NOISY = (() => {
  const random = createRandom(5).stream("least squares");
  return TIMES.map((t) => 40 * Math.exp(-0.7 * t) + 0.5 * random.normal());
})();

test("a linear problem is solved whatever the start, with the covariance of its normal equations", () => {
  const numbers = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 20, maxLength: 20 });
  fc.assert(
    fc.property(numbers, numbers, fc.double({ min: -100, max: 100, noNaN: true }), (slopes, noise, start) => {
      const rows = noise.map((_, i) => [1, i / 10, slopes[i]]);
      const normal = new Matrix(rows).transpose().mmul(new Matrix(rows));
      const inverted = inverse(normal);
      fc.pre(inverted.to1DArray().every((entry) => Math.abs(entry) < 1e4));
      const result = leastSquares({
        residualCount: 20,
        start: [start, -start, start],
        evaluate(x, residuals, jacobian) {
          rows.forEach((row, i) => {
            residuals[i] = row[0] * x[0] + row[1] * x[1] + row[2] * x[2] - noise[i];
            jacobian?.set(row, 3 * i);
          });
          return true;
        },
      });
      expect(result.status).toBe("converged");
      const theirs = inverted.mmul(new Matrix(rows).transpose()).mmul(Matrix.columnVector(noise)).to1DArray();
      const { covariance, standardErrors, rank, undetermined } = parameterCovariance(result.jacobian, 3, 1);
      expect([rank, undetermined]).toEqual([3, []]);
      for (let j = 0; j < 3; j++) {
        expect(Math.abs(result.x[j] - theirs[j])).toBeLessThan(1e-5 * standardErrors[j] + 1e-9);
        for (let k = 0; k < 3; k++) expect(covariance[3 * j + k]).toBeCloseTo(inverted.get(j, k), 6);
      }
    }),
    { numRuns: 60 },
  );
});

test("the path does not depend on the units of the parameters", () => {
  const plain = leastSquares(decay(TIMES, NOISY, [2, 1]));
  const inOtherUnits = decay(TIMES, NOISY, [2, 1]);
  const factor = [1e6, 1e-4];
  const other = leastSquares({
    residualCount: TIMES.length,
    start: [2e6, 1e-4],
    evaluate(x, residuals, jacobian) {
      const ok = inOtherUnits.evaluate(
        x.map((v, j) => v / factor[j]),
        residuals,
        jacobian,
      );
      if (jacobian !== undefined) for (let k = 0; k < jacobian.length; k++) jacobian[k] /= factor[k % 2];
      return ok;
    },
  });
  expect(plain.status).toBe("converged");
  expect([other.steps, other.evaluations]).toEqual([plain.steps, plain.evaluations]);
  expect(other.x[0] / factor[0]).toBeCloseTo(plain.x[0], 10);
  expect(other.x[1] / factor[1]).toBeCloseTo(plain.x[1], 10);
});

test("the 90 % band of a parameter holds its true value nine times in ten", () => {
  const random = createRandom(11).stream("coverage");
  const truth = [Math.log(40), Math.log(0.7)];
  let inside = 0;
  for (let run = 0; run < 400; run++) {
    const y = TIMES.map((t) => 40 * Math.exp(-0.7 * t) + 0.5 * random.normal());
    const result = leastSquares(decay(TIMES, y, [3, 0]));
    expect(result.status).toBe("converged");
    const { standardErrors } = parameterCovariance(result.jacobian, 2, 0.25);
    for (const j of [0, 1]) if (Math.abs(result.x[j] - truth[j]) < 1.645 * standardErrors[j]) inside++;
  }
  // 800 draws of which the pairs correlate: ±0.03 is two to three standard deviations.
  expect(Math.abs(inside / 800 - 0.9)).toBeLessThan(0.03);
});

test("what is known beforehand comes in as residuals and holds what the data do not tell", () => {
  // Only the sum of the two is observed; each is known to 1 ± 0.5 beforehand.
  const result = leastSquares({
    residualCount: 3,
    start: [0, 0],
    evaluate([a, b], residuals, jacobian) {
      residuals.set([(a + b - 3) / 0.1, (a - 1) / 0.5, (b - 1) / 0.5]);
      jacobian?.set([10, 10, 2, 0, 0, 2]);
      return true;
    },
  });
  expect(result.status).toBe("converged");
  // Posterior by hand: each 1 + 0.25 / (0.5 + 0.01), variance 0.25 - 0.25^2 / 0.51.
  expect(result.x[0]).toBeCloseTo(1 + 0.25 / 0.51, 6);
  const { standardErrors, covariance } = parameterCovariance(result.jacobian, 2, 1);
  expect(standardErrors[0]).toBeCloseTo(Math.sqrt(0.25 - 0.0625 / 0.51), 9);
  expect(covariance[1]).toBeCloseTo(-0.0625 / 0.51, 9);
});

describe("ends other than a minimum", () => {
  test("parameters that cannot be told apart are named, the others keep their errors", () => {
    const result = leastSquares({
      residualCount: TIMES.length,
      start: [1, 2, 0],
      evaluate([a, b, c], residuals, jacobian) {
        TIMES.forEach((t, i) => {
          residuals[i] = a + b + c * t - NOISY[i];
          jacobian?.set([1, 1, t], 3 * i);
        });
        return true;
      },
    });
    expect(result.status).toBe("rank-deficient");
    expect(result.remedy).toMatch(/hold fast/);
    const variance = 1e-6;
    const both = parameterCovariance(result.jacobian, 3, variance);
    expect([both.rank, both.undetermined]).toEqual([2, [0, 1]]);
    expect([...both.standardErrors.subarray(0, 2)]).toEqual([
      Number.POSITIVE_INFINITY,
      Number.POSITIVE_INFINITY,
    ]);
    expect(both.covariance[1]).toBeNaN();
    const one = parameterCovariance(Float64Array.from(TIMES.flatMap((t) => [1, t])), 2, variance);
    expect(both.standardErrors[2]).toBeCloseTo(one.standardErrors[1], 9);
  });

  test("a parameter that nothing depends on", () => {
    const { rank, undetermined, standardErrors } = parameterCovariance(
      Float64Array.from([1, 0, 1, 0, 1, 0]),
      2,
      4,
    );
    expect([rank, undetermined]).toEqual([1, [1]]);
    expect(standardErrors[0]).toBeCloseTo(2 / Math.sqrt(3), 12);
  });

  test("residuals that go to zero", () => {
    const exact = TIMES.map((t) => 40 * Math.exp(-0.7 * t));
    const result = leastSquares(decay(TIMES, exact, [2, 1]));
    expect(result.status).toBe("converged");
    expect(Math.exp(result.x[0])).toBeCloseTo(40, 8);
    const atZero = leastSquares({
      residualCount: 2,
      start: [1],
      evaluate([x], residuals, jacobian) {
        residuals.set([x, 2 * Math.sin(x)]);
        jacobian?.set([1, 2 * Math.cos(x)]);
        return true;
      },
    });
    expect(atZero.status).toBe("converged");
    expect(Math.abs(atZero.x[0])).toBeLessThan(1e-9);
  });

  test("as many residuals as parameters", () => {
    const result = leastSquares({
      residualCount: 2,
      start: [-1.2, 1],
      // Rosenbrock's valley: Comput. J. 3 (1960) 175-184.
      evaluate([x, y], residuals, jacobian) {
        residuals.set([10 * (y - x * x), 1 - x]);
        jacobian?.set([-20 * x, 10, -1, 0]);
        return true;
      },
    });
    expect(result.status).toBe("converged");
    expect([...result.x].map((v) => Math.abs(v - 1) < 1e-9)).toEqual([true, true]);
  });

  test("steps into places without residuals are refused", () => {
    let sawNegative = false;
    const result = leastSquares({
      residualCount: 2,
      start: [20],
      evaluate([x], residuals, jacobian) {
        if (!(x > 0)) sawNegative = true;
        // A logarithm of a negative number is NaN, which must be as good as saying so.
        residuals.set([10 * Math.log(x) - 10, x - 2]);
        jacobian?.set([10 / x, 1]);
        return x < 100;
      },
    });
    expect(result.status).toBe("converged");
    expect(sawNegative).toBe(true);
    expect(result.x[0]).toBeGreaterThan(2.6);
    expect(result.x[0]).toBeLessThan(Math.E);
    const never = leastSquares({ residualCount: 1, start: [0], evaluate: () => false });
    expect([never.status, never.evaluations]).toEqual(["no-residuals-at-start", 1]);
    expect(never.remedy).not.toBe("");
  });

  test("a wrong Jacobian stalls, and says how far off it is", () => {
    const right = decay(TIMES, NOISY, [3, 0]);
    const result = leastSquares({
      ...right,
      evaluate(x, residuals, jacobian) {
        right.evaluate(x, residuals, jacobian);
        for (let k = 0; k < (jacobian?.length ?? 0); k++) jacobian![k] *= -1;
        return true;
      },
    });
    expect(result.status).toBe("stalled");
    expect(result.remedy).toMatch(/check the Jacobian/);
    expect(result.offset).toBeGreaterThan(0.1);
  });

  test("cancelled and out of evaluations; going on from x ends where it would have", () => {
    const whole = leastSquares(decay(TIMES, NOISY, [0, 2]));
    const seen: number[] = [];
    const stopped = leastSquares(decay(TIMES, NOISY, [0, 2]), {
      onStep: ({ steps, sumOfSquares }) => {
        seen.push(sumOfSquares);
        return steps < 3;
      },
    });
    expect([stopped.status, stopped.steps]).toEqual(["cancelled", 3]);
    expect(seen).toEqual([...seen].sort((a, b) => b - a));
    const limited = leastSquares(decay(TIMES, NOISY, [0, 2]), { maximumEvaluations: 5 });
    expect([limited.status, limited.evaluations]).toEqual(["too-many-evaluations", 5]);
    const resumed = leastSquares(decay(TIMES, NOISY, [...limited.x]));
    expect(resumed.x[0]).toBeCloseTo(whole.x[0], 7);
  });
});

test("noise in the residuals is no hindrance with a tolerance to match", () => {
  // A thousandth of the standard deviation, drawn anew at each x: the sum of squares is rough.
  const rough = decay(TIMES, NOISY, [3, 0]);
  const result = leastSquares(
    {
      ...rough,
      evaluate(x, residuals, jacobian) {
        rough.evaluate(x, residuals, jacobian);
        const random = createRandom(Math.round(1e6 * x[0]) ^ Math.round(1e7 * x[1]));
        for (let i = 0; i < residuals.length; i++) residuals[i] += 0.0005 * random.normal();
        return true;
      },
    },
    { tolerance: 0.1 },
  );
  expect(result.status).toBe("converged");
});

test.each([
  [{ start: [] }, {}, /invalid start/],
  [{ start: [Number.NaN] }, {}, /invalid start/],
  [{ residualCount: 0 }, {}, /invalid residualCount: 0/],
  [{ residualCount: 1.5 }, {}, /invalid residualCount/],
  [{}, { tolerance: Number.NaN }, /invalid tolerance: NaN/],
  [{}, { maximumEvaluations: 0 }, /invalid maximumEvaluations: 0/],
])("bad argument %#", (problem, options, message) => {
  const good = { residualCount: 1, start: [0], evaluate: () => true };
  expect(() => leastSquares({ ...good, ...problem }, options)).toThrow(message);
});

test("bad arguments of the covariance", () => {
  expect(() => parameterCovariance(new Float64Array(3), 2, 1)).toThrow(/invalid jacobian: 3/);
  expect(() => parameterCovariance(new Float64Array(4), 2, -1)).toThrow(/invalid variance: -1/);
});
