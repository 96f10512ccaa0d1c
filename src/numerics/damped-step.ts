import { multiplyByQTransposed, type PivotedQr, pivotedQr, solveByQr } from "./pivoted-qr.js";

/**
 * Writes the z that makes |A z + r|^2 + damping |z|^2 least, from A P = Q R and Q^T r. By a QR of R stacked on
 * sqrt(damping) I and not by R^T R + damping I, so that nothing is squared. Moré, The Levenberg-Marquardt algorithm:
 * implementation and theory, Lecture Notes in Mathematics 630 (1978) 105-116.
 */
export function dampedStep(
  qr: PivotedQr,
  qTransposedR: Float64Array,
  damping: number,
  out: Float64Array,
): void {
  const { columns: n, factors, pivot } = qr;
  const stacked = new Float64Array(2 * n * n);
  const right = new Float64Array(2 * n);
  const root = Math.sqrt(damping);
  for (let k = 0; k < n; k++) {
    for (let j = k; j < n; j++) stacked[k * n + j] = factors[k * n + j];
    stacked[(n + k) * n + k] = root;
    right[k] = -qTransposedR[k];
  }
  const inner = pivotedQr(stacked, 2 * n, n);
  multiplyByQTransposed(inner, right);
  const z = new Float64Array(n);
  solveByQr(inner, right, n, z);
  for (let k = 0; k < n; k++) out[pivot[k]] = z[k];
}
