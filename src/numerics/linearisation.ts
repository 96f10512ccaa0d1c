import { dampedStep } from "./damped-step.js";
import { multiplyByQTransposed, numericalRank, pivotedQr, solveByQr } from "./pivoted-qr.js";

/** r(x + h) ~ r + J h about one x, with the parameters scaled so that the columns of J have lengths of at most 1. */
export interface Linearisation {
  /** Number of independent columns of J. */
  readonly rank: number;
  /** |part of r in the span of J|, which a step can take away to first order. */
  readonly within: number;
  /** |part of r at right angles to it|. */
  readonly across: number;
  /** Length of the undamped step over that of x, both in units of the slopes at x. */
  relativeStep(x: Float64Array): number;
  /** Writes the damped step h and returns by how much it makes the sum of squares smaller to first order. */
  step(damping: number, out: Float64Array): number;
}

/**
 * Linearisation from r and the m x n row-major J; undefined where they are not finite. `scale` keeps the length of the
 * longest column so far of each parameter and is brought up to date (Moré 1978: the method is then the same
 * in whatever units the parameters come, and a parameter that matters little for a while does not run away).
 */
export function linearised(
  residuals: Float64Array,
  jacobian: Float64Array,
  scale: Float64Array,
): Linearisation | undefined {
  const m = residuals.length;
  const n = scale.length;
  const lengths = columnLengths(jacobian, n);
  if (!Number.isFinite(squared(residuals))) return undefined;
  if (!lengths.every(Number.isFinite)) return undefined;
  for (let j = 0; j < n; j++) scale[j] = Math.max(scale[j], lengths[j]);
  const divisor = scale.map((length) => (length > 0 ? length : 1));
  const qr = pivotedQr(
    jacobian.map((slope, k) => slope / divisor[k % n]),
    m,
    n,
  );
  const rank = numericalRank(qr, rankTolerance(m));
  const turned = Float64Array.from(residuals);
  multiplyByQTransposed(qr, turned);
  const scaled = new Float64Array(n);

  return {
    rank,
    within: lengthOf(turned.subarray(0, rank)),
    across: lengthOf(turned.subarray(rank)),
    relativeStep(x) {
      solveByQr(qr, turned, rank, scaled);
      const step = scaled.map((value, j) => (value * lengths[j]) / divisor[j]);
      return lengthOf(step) / lengthOf(x.map((value, j) => value * lengths[j]));
    },
    step(damping, out) {
      dampedStep(qr, turned, damping, scaled);
      for (let j = 0; j < n; j++) out[j] = scaled[j] / divisor[j];
      // Two sums of squares, so that nothing cancels: (J'J + d) z = -J'r turns -2 z'J'r - |J z|^2 into this.
      return squaredImage(jacobian, out, m) + 2 * damping * squared(scaled);
    },
  };
}

/** Below this share of the largest, a diagonal entry of R is rounding: m epsilon (Golub & Van Loan 2013, section 5.5). */
export function rankTolerance(rows: number): number {
  return rows * Number.EPSILON;
}

export function columnLengths(jacobian: Float64Array, columns: number): Float64Array {
  const squares = new Float64Array(columns);
  for (let k = 0; k < jacobian.length; k++) squares[k % columns] += jacobian[k] ** 2;
  return squares.map(Math.sqrt);
}

export function squared(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}

function lengthOf(values: Float64Array): number {
  return Math.sqrt(squared(values));
}

function squaredImage(jacobian: Float64Array, h: Float64Array, rows: number): number {
  const n = h.length;
  let sum = 0;
  for (let i = 0; i < rows; i++) {
    let image = 0;
    for (let j = 0; j < n; j++) image += jacobian[i * n + j] * h[j];
    sum += image * image;
  }
  return sum;
}
