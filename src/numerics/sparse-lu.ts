import { type EliminationPlan, type EntryRows, eliminationPlan } from "./elimination.js";
import type { SparsityPattern } from "./sparsity.js";

/** LU factors of shift·I - A for an ensemble of matrices A of one pattern; all arrays are [row or nonzero][member]. */
export interface SparseLu {
  /** The caller's vectors, from 0 to `room`, and after them the factors, which the caller leaves alone. */
  readonly memory: Float64Array;
  /** Factorises shift·I - A; false when a pivot of any member is zero or not finite. */
  factorise(shift: number, values: Float64Array): boolean;
  /** Replaces the right-hand side from memory[offset] on by the solution of (shift·I - A) x = b, for every member. */
  solve(offset: number): void;
}

/**
 * Sparse LU without row exchanges. Rows are never exchanged because the matrices met here are shift·I - J of a heat
 * network, an M-matrix: positive diagonal, non-positive rest, diagonally dominant for shift > 0, for which elimination
 * in any diagonal order keeps all pivots positive and does not grow (Higham, Accuracy and Stability of Numerical
 * Algorithms, 2nd ed. 2002, sections 9.3 and 9.5). For other matrices the caller must react to `false`.
 */
export function createSparseLu(pattern: SparsityPattern, members: number, room: number): SparseLu {
  const plan = eliminationPlan(pattern);
  const memory = new Float64Array(room + plan.entries * members);
  return {
    memory,
    factorise(shift, values) {
      load(plan, memory, room, members, shift, values);
      return eliminate(plan, memory, room, members);
    },
    solve: (offset) => substitute(plan, memory, room, members, offset),
  };
}

// The inner loops run over the members. Three habits keep them quick in V8, together about threefold: factors and
// vectors share one array and short sums are taken in one pass, because each pass checks each array anew for every
// member; and sums of two indices are cut to 32 bits (`| 0`), which spares their overflow check.

function load(
  plan: EliminationPlan,
  w: Float64Array,
  room: number,
  members: number,
  shift: number,
  values: Float64Array,
): void {
  const { size, diagonal, entryOfNonzero } = plan;
  w.fill(0, room);
  for (let k = 0; k < entryOfNonzero.length; k++) {
    const from = k * members;
    const to = room + entryOfNonzero[k] * members;
    for (let m = 0; m < members; m++) w[(to + m) | 0] = -values[(from + m) | 0];
  }
  for (let i = 0; i < size; i++) {
    const d = room + diagonal[i] * members;
    for (let m = 0; m < members; m++) w[(d + m) | 0] += shift;
  }
}

/** Gaussian elimination in place, leaving reciprocal pivots on the diagonal. */
function eliminate(plan: EliminationPlan, w: Float64Array, room: number, members: number): boolean {
  const { size, order, diagonal, columnStart, columnEntry, targetStart, target } = plan;
  const { start: upperStart, entry: upperEntry } = plan.upper;
  let check = 0;
  for (let p = 0; p < size; p++) {
    const d = room + diagonal[order[p]] * members;
    for (let m = 0; m < members; m++) {
      const pivot = w[(d + m) | 0];
      const inverse = 1 / pivot;
      w[(d + m) | 0] = inverse;
      // 1 unless the pivot is zero, infinite or NaN: then NaN.
      check += pivot * inverse;
    }
    const upperEnd = upperStart[p + 1];
    let t = targetStart[p];
    for (let a = columnStart[p]; a < columnStart[p + 1]; a++) {
      const l = room + columnEntry[a] * members;
      let c = upperStart[p];
      if ((upperEnd - c) % 2 === 1) {
        const u = room + upperEntry[c++] * members;
        const x = room + target[t++] * members;
        for (let m = 0; m < members; m++) {
          const factor = w[(l + m) | 0] * w[(d + m) | 0];
          w[(l + m) | 0] = factor;
          w[(x + m) | 0] -= factor * w[(u + m) | 0];
        }
      } else {
        for (let m = 0; m < members; m++) w[(l + m) | 0] *= w[(d + m) | 0];
      }
      for (; c < upperEnd; c += 2, t += 2) {
        const u = room + upperEntry[c] * members;
        const v = room + upperEntry[c + 1] * members;
        const x = room + target[t] * members;
        const y = room + target[t + 1] * members;
        for (let m = 0; m < members; m++) {
          const factor = w[(l + m) | 0];
          w[(x + m) | 0] -= factor * w[(u + m) | 0];
          w[(y + m) | 0] -= factor * w[(v + m) | 0];
        }
      }
    }
  }
  return Number.isFinite(check);
}

/** Forward and back substitution in place, on the vector from w[b] on. */
function substitute(plan: EliminationPlan, w: Float64Array, room: number, members: number, b: number): void {
  const { size, order, diagonal, lower, upper } = plan;
  for (let p = 0; p < size; p++) {
    const i = b + order[p] * members;
    const left = subtractPairs(lower, lower.start[p], lower.start[p + 1], w, room, members, b, i);
    if (left === lower.start[p + 1]) continue;
    const l = room + lower.entry[left] * members;
    const k = b + lower.column[left] * members;
    for (let m = 0; m < members; m++) w[(i + m) | 0] -= w[(l + m) | 0] * w[(k + m) | 0];
  }
  for (let p = size - 1; p >= 0; p--) {
    const i = b + order[p] * members;
    const d = room + diagonal[order[p]] * members;
    const left = subtractPairs(upper, upper.start[p], upper.start[p + 1], w, room, members, b, i);
    if (left === upper.start[p + 1]) {
      for (let m = 0; m < members; m++) w[(i + m) | 0] *= w[(d + m) | 0];
      continue;
    }
    const u = room + upper.entry[left] * members;
    const k = b + upper.column[left] * members;
    for (let m = 0; m < members; m++) {
      w[(i + m) | 0] = (w[(i + m) | 0] - w[(u + m) | 0] * w[(k + m) | 0]) * w[(d + m) | 0];
    }
  }
}

/** w_i -= Σ_k lu_ik w_k over entries from `first` on, two by two; returns where fewer than two are left before `end`. */
function subtractPairs(
  { entry, column }: EntryRows,
  first: number,
  end: number,
  w: Float64Array,
  room: number,
  members: number,
  b: number,
  i: number,
): number {
  let a = first;
  for (; a + 1 < end; a += 2) {
    const l = room + entry[a] * members;
    const k = b + column[a] * members;
    const g = room + entry[a + 1] * members;
    const j = b + column[a + 1] * members;
    for (let m = 0; m < members; m++) {
      w[(i + m) | 0] -= w[(l + m) | 0] * w[(k + m) | 0] + w[(g + m) | 0] * w[(j + m) | 0];
    }
  }
  return a;
}
