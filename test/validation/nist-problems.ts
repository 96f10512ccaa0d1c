import { readFileSync } from "node:fs";
import { leastSquares, parameterCovariance } from "../../src/numerics/index.js";
import type {
  LeastSquaresProblem,
  LeastSquaresResult,
  LeastSquaresStatus,
} from "../../src/numerics/least-squares.js";
import { NIST_MODELS } from "./nist-models.js";

/** One data set of test/data/nist (origin in the README there). */
export interface NistDataSet {
  readonly name: string;
  readonly difficulty: "lower" | "average" | "higher";
  readonly model: string;
  readonly start1: readonly number[];
  readonly start2: readonly number[];
  readonly certified: readonly number[];
  readonly standardErrors: readonly number[];
  readonly sumOfSquares: number;
  readonly residualSd: number;
  readonly y: readonly number[];
  readonly x: readonly number[];
  readonly x2?: readonly number[];
}

export const NIST_DATA_SETS: readonly NistDataSet[] = JSON.parse(
  readFileSync(new URL("../data/nist/nonlinear-regression.json", import.meta.url), "utf8"),
);

export type NistStart = "start1" | "start2";

export function nistProblem(data: NistDataSet, start: NistStart): LeastSquaresProblem {
  const model = NIST_MODELS[data.name];
  const n = data.certified.length;
  const slopes = new Float64Array(n);
  return {
    residualCount: data.y.length,
    start: data[start],
    evaluate(b, residuals, jacobian) {
      for (let i = 0; i < data.y.length; i++) {
        residuals[i] = model(b, data.x[i], data.x2?.[i] ?? 0, slopes) - observed(data, i);
        jacobian?.set(slopes, i * n);
      }
      return true;
    },
  };
}

export interface NistFit {
  readonly result: LeastSquaresResult;
  readonly standardErrors: Float64Array;
}

export function nistFit(data: NistDataSet, start: NistStart): NistFit {
  const result = leastSquares(nistProblem(data, start), { maximumEvaluations: 2000 });
  const n = data.certified.length;
  const sum = result.residuals.reduce((all, one) => all + one * one, 0);
  const variance = sum / (result.residuals.length - n);
  const { standardErrors } = parameterCovariance(result.jacobian, n, variance);
  return { result, standardErrors };
}

/** Where the fit does not arrive from the first start, and what it says then (test/data/nist/README.md has the reasons). */
export const NIST_FAILURES: Readonly<Record<string, LeastSquaresStatus>> = {
  BoxBOD: "rank-deficient",
  MGH10: "too-many-evaluations",
};

/** Nelson's response is the logarithm of its first column. */
function observed(data: NistDataSet, i: number): number {
  return data.name === "Nelson" ? Math.log(data.y[i]) : data.y[i];
}
