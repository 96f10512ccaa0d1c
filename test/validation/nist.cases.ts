import { relative, type ValidationCase, type ValidationGroup } from "./case.js";
import {
  NIST_DATA_SETS,
  NIST_FAILURES,
  type NistDataSet,
  type NistFit,
  type NistStart,
  nistFit,
} from "./nist-problems.js";

const REASON =
  "six digits: asked of the method for all levels; more would ask for the rounding of the models";
const ROUNDED = "residuals of 1e-13 beside values of 2.5: the spread is that of numbers near the last bit";
const SOURCE = "NIST StRD, nonlinear regression";

/** Certified values, standard deviations and sums of squares of the data sets, by level of difficulty. */
export const NIST: readonly ValidationGroup[] = (["lower", "average", "higher"] as const).map(
  (difficulty) => ({
    title: `least squares, NIST data sets of ${difficulty} difficulty`,
    part: "mathematics",
    cases: NIST_DATA_SETS.filter((data) => data.difficulty === difficulty).flatMap((data) => [
      ...fromSecondStart(data),
      ...fromFirstStart(data),
    ]),
  }),
);

function fromSecondStart(data: NistDataSet): readonly ValidationCase[] {
  const solved = once(data, "start2");
  const source = `${SOURCE}, ${data.name}`;
  const one = (name: string, expected: number, got: () => number, digits = 1e-6, reason = REASON) =>
    ({
      name: `${data.name}: ${name}`,
      source,
      mark: "published",
      unit: "-",
      expected,
      tolerance: relative(expected, digits),
      toleranceReason: reason,
      got,
    }) satisfies ValidationCase;
  const spread: readonly [number, string] = data.name === "Lanczos1" ? [2e-3, ROUNDED] : [1e-6, REASON];
  return [
    one("sum of squares", data.sumOfSquares, () => solved().result.sumOfSquares, ...spread),
    ...data.certified.flatMap((value, j) => [
      one(`b${j + 1}`, value, () => solved().result.x[j]),
      one(
        `standard deviation of b${j + 1}`,
        data.standardErrors[j],
        () => solved().standardErrors[j],
        ...spread,
      ),
    ]),
  ];
}

/** The worst of all parameters, where the fit arrives from far off. */
function fromFirstStart(data: NistDataSet): readonly ValidationCase[] {
  if (data.name in NIST_FAILURES) return [];
  const solved = once(data, "start1");
  return [
    {
      name: `${data.name}: greatest relative difference of any b, from the far start`,
      source: `${SOURCE}, ${data.name}`,
      mark: "published",
      unit: "-",
      expected: 0,
      tolerance: 1e-6,
      toleranceReason: REASON,
      got: () => Math.max(...data.certified.map((value, j) => Math.abs(solved().result.x[j] / value - 1))),
    },
  ];
}

function once(data: NistDataSet, start: NistStart): () => NistFit {
  let fit: NistFit | undefined;
  return () => {
    fit ??= nistFit(data, start);
    return fit;
  };
}
