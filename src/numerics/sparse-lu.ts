import { eliminationPlan } from "./elimination.js";
import type { SparsityPattern } from "./sparsity.js";

/** LU factors of shift·I - A for an ensemble of matrices A of one pattern; all arrays are [row or nonzero][member]. */
export interface SparseLu {
  /** Factorises shift·I - A; false when a pivot of any member is zero or not finite. */
  factorise(shift: number, values: Float64Array): boolean;
  /** Replaces the right-hand side by the solution of (shift·I - A) x = b, for every member. */
  solve(b: Float64Array): void;
}

/**
 * Sparse LU without row exchanges. Rows are never exchanged because the matrices met here are shift·I - J of a heat
 * network, an M-matrix: positive diagonal, non-positive rest, diagonally dominant for shift > 0, for which elimination
 * in any diagonal order keeps all pivots positive and does not grow (Higham, Accuracy and Stability of Numerical
 * Algorithms, 2nd ed. 2002, sections 9.3 and 9.5). For other matrices the caller must react to `false`.
 */
export function createSparseLu(pattern: SparsityPattern, members: number): SparseLu {
  const plan = eliminationPlan(pattern);
  const { size, order, diagonal, entryOfNonzero, lowerStart, lowerEntry, lowerRow } = plan;
  const { upperStart, upperEntry, upperColumn, targetStart, target } = plan;
  const lu = new Float64Array(plan.entries * members);

  function load(shift: number, values: Float64Array): void {
    lu.fill(0);
    for (let k = 0; k < entryOfNonzero.length; k++) {
      const from = k * members;
      const to = entryOfNonzero[k] * members;
      for (let m = 0; m < members; m++) lu[to + m] = -values[from + m];
    }
    for (let i = 0; i < size; i++) {
      const d = diagonal[i] * members;
      for (let m = 0; m < members; m++) lu[d + m] += shift;
    }
  }

  /** Inverts the pivots in place; NaN when one of them is zero or not finite, else 0. */
  function invert(d: number): number {
    let fault = 0;
    for (let m = 0; m < members; m++) {
      const pivot = lu[d + m];
      const inverse = 1 / pivot;
      lu[d + m] = inverse;
      fault += inverse - inverse + (pivot - pivot);
    }
    return fault;
  }

  return {
    factorise(shift, values) {
      load(shift, values);
      let fault = 0;
      for (let p = 0; p < size; p++) {
        const d = diagonal[order[p]] * members;
        fault += invert(d);
        const firstUpper = upperStart[p];
        const countUpper = upperStart[p + 1] - firstUpper;
        let t = targetStart[p];
        for (let a = lowerStart[p]; a < lowerStart[p + 1]; a++) {
          const l = lowerEntry[a] * members;
          for (let m = 0; m < members; m++) lu[l + m] *= lu[d + m];
          for (let b = 0; b < countUpper; b++) {
            const u = upperEntry[firstUpper + b] * members;
            const x = target[t++] * members;
            for (let m = 0; m < members; m++) lu[x + m] -= lu[l + m] * lu[u + m];
          }
        }
      }
      return fault === 0;
    },
    solve(b) {
      for (let p = 0; p < size; p++) {
        const k = order[p] * members;
        for (let a = lowerStart[p]; a < lowerStart[p + 1]; a++) {
          const l = lowerEntry[a] * members;
          const i = lowerRow[a] * members;
          for (let m = 0; m < members; m++) b[i + m] -= lu[l + m] * b[k + m];
        }
      }
      for (let p = size - 1; p >= 0; p--) {
        const k = order[p] * members;
        const d = diagonal[order[p]] * members;
        for (let c = upperStart[p]; c < upperStart[p + 1]; c++) {
          const u = upperEntry[c] * members;
          const j = upperColumn[c] * members;
          for (let m = 0; m < members; m++) b[k + m] -= lu[u + m] * b[j + m];
        }
        for (let m = 0; m < members; m++) b[k + m] *= lu[d + m];
      }
    },
  };
}
