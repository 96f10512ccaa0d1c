import { columnLengths, rankTolerance } from "./linearisation.js";
import { numericalRank, type PivotedQr, pivotedQr } from "./pivoted-qr.js";

export interface ParameterCovariance {
  /** Number of independent columns of the Jacobian. */
  readonly rank: number;
  /** Parameters that the residuals do not determine, ascending: they can be changed, with others, without any change of r. */
  readonly undetermined: readonly number[];
  /** n x n, entry [j * n + k]; for an undetermined parameter infinite on the diagonal and NaN beside it. */
  readonly covariance: Float64Array;
  readonly standardErrors: Float64Array;
}

/**
 * (J^T J)^-1 times `variance`, from a pivoted QR of J. `variance` is 1 where the residuals are in units of their own
 * standard deviation, else `residualVariance`. Seber & Wild, Nonlinear Regression (1989), section 2.1.
 */
export function parameterCovariance(
  jacobian: Float64Array,
  parameters: number,
  variance: number,
): ParameterCovariance {
  const n = parameters;
  const m = jacobian.length / n;
  if (!(Number.isInteger(m) && m >= n))
    throw new RangeError(`invalid jacobian: ${jacobian.length} entries (expected ${n} for each residual)`);
  if (!(variance >= 0)) throw new RangeError(`invalid variance: ${variance} (expected >= 0)`);
  // Columns of length 1, so that the rank does not depend on the units of the parameters.
  const scale = columnLengths(jacobian, n).map((length) => (length > 0 ? length : 1));
  const qr = pivotedQr(
    jacobian.map((slope, k) => slope / scale[k % n]),
    m,
    n,
  );
  const rank = numericalRank(qr, rankTolerance(m));
  const undetermined = undeterminedBy(qr, rank);
  const inverse = inverseOfTriangle(qr, rank);
  const covariance = new Float64Array(n * n);
  // A determined parameter has the same variance whichever of the others the choice of pivots holds fast.
  for (let k = 0; k < rank; k++) {
    for (let l = 0; l < rank; l++) {
      let sum = 0;
      for (let i = Math.max(k, l); i < rank; i++) sum += inverse[k * n + i] * inverse[l * n + i];
      const [j, other] = [qr.pivot[k], qr.pivot[l]];
      covariance[j * n + other] = (variance * sum) / (scale[j] * scale[other]);
    }
  }
  for (const j of undetermined) {
    for (let k = 0; k < n; k++) covariance[j * n + k] = covariance[k * n + j] = Number.NaN;
  }
  for (const j of undetermined) covariance[j * n + j] = Number.POSITIVE_INFINITY;
  const standardErrors = Float64Array.from({ length: n }, (_, j) => Math.sqrt(covariance[j * n + j]));
  return { rank, undetermined, covariance, standardErrors };
}

/** Parameters with a share in a combination that J maps to zero: with R11 z = R12 column, (z, -1) is such a one. */
function undeterminedBy(qr: PivotedQr, rank: number): readonly number[] {
  const { columns: n, factors, pivot } = qr;
  const found = new Set<number>();
  const z = new Float64Array(rank);
  for (let c = rank; c < n; c++) {
    found.add(pivot[c]);
    for (let k = rank - 1; k >= 0; k--) {
      let sum = factors[k * n + c];
      for (let j = k + 1; j < rank; j++) sum -= factors[k * n + j] * z[j];
      z[k] = sum / factors[k * n + k];
      if (Math.abs(z[k]) > SHARE) found.add(pivot[k]);
    }
  }
  return [...found].sort((a, b) => a - b);
}

/** Shares below this are rounding: the root of epsilon (project judgement). */
const SHARE = 1.5e-8;

/** Inverse of the leading `rank` x `rank` part of R, row-major with n entries a row. */
function inverseOfTriangle({ columns: n, factors }: PivotedQr, rank: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let c = 0; c < rank; c++) {
    inverse[c * n + c] = 1 / factors[c * n + c];
    for (let k = c - 1; k >= 0; k--) {
      let sum = 0;
      for (let j = k + 1; j <= c; j++) sum += factors[k * n + j] * inverse[j * n + c];
      inverse[k * n + c] = -sum / factors[k * n + k];
    }
  }
  return inverse;
}
