import { type EliminationPlan, type EntryRows, eliminationPlan } from "./elimination.js";
import { createSingleLu } from "./single-lu.js";
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
  if (members === 1) return createSingleLu(plan, room);
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

// With B = A - shift·I = -(shift·I - A) eliminated as it stands, storing each row factor and each reciprocal pivot with the
// other sign turns every subtraction below into an addition and gives the solution of (shift·I - A) x = b directly.
//
// The inner loops run over the members. Three habits keep them quick in V8, together more than twofold: factors and
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
  const { size, diagonal } = plan;
  w.set(values, room);
  w.fill(0, room + values.length);
  for (let i = 0; i < size; i++) {
    const d = room + diagonal[i] * members;
    for (let m = 0; m < members; m++) w[(d + m) | 0] -= shift;
  }
}

/** Gaussian elimination in place, leaving negative reciprocal pivots on the diagonal. */
function eliminate(plan: EliminationPlan, w: Float64Array, room: number, members: number): boolean {
  const { size, order, diagonal, columnStart, columnEntry, targetStart, target } = plan;
  const { start: upperStart, entry: upperEntry } = plan.upper;
  let check = 0;
  for (let p = 0; p < size; p++) {
    const d = room + diagonal[order[p]] * members;
    for (let m = 0; m < members; m++) {
      const pivot = w[(d + m) | 0];
      const reciprocal = -1 / pivot;
      w[(d + m) | 0] = reciprocal;
      // -1 unless the pivot is zero, infinite or NaN: then NaN.
      check += pivot * reciprocal;
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
          w[(x + m) | 0] += factor * w[(u + m) | 0];
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
          w[(x + m) | 0] += factor * w[(u + m) | 0];
          w[(y + m) | 0] += factor * w[(v + m) | 0];
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
    const { start, entry, column } = lower;
    const i = b + order[p] * members;
    let a = start[p];
    if ((start[p + 1] - a) % 2 === 1) {
      const l = room + entry[a] * members;
      const k = b + column[a++] * members;
      for (let m = 0; m < members; m++) w[(i + m) | 0] += w[(l + m) | 0] * w[(k + m) | 0];
    }
    addPairs(lower, a, start[p + 1], w, room, members, b, i);
  }
  for (let p = size - 1; p >= 0; p--) {
    const { start, entry, column } = upper;
    const i = b + order[p] * members;
    const d = room + diagonal[order[p]] * members;
    const end = start[p + 1];
    const count = end - start[p];
    if (count === 0) {
      for (let m = 0; m < members; m++) w[(i + m) | 0] *= w[(d + m) | 0];
      continue;
    }
    // The last product, or the last two, are taken together with the division by the pivot.
    const u = room + entry[end - 1] * members;
    const k = b + column[end - 1] * members;
    if (count % 2 === 1) {
      addPairs(upper, start[p], end - 1, w, room, members, b, i);
      for (let m = 0; m < members; m++) {
        w[(i + m) | 0] = (w[(i + m) | 0] + w[(u + m) | 0] * w[(k + m) | 0]) * w[(d + m) | 0];
      }
    } else {
      addPairs(upper, start[p], end - 2, w, room, members, b, i);
      const v = room + entry[end - 2] * members;
      const j = b + column[end - 2] * members;
      for (let m = 0; m < members; m++) {
        const sum = w[(u + m) | 0] * w[(k + m) | 0] + w[(v + m) | 0] * w[(j + m) | 0];
        w[(i + m) | 0] = (w[(i + m) | 0] + sum) * w[(d + m) | 0];
      }
    }
  }
}

/** Adds Σ_k lu_ik w_k to w_i over an even number of entries, two by two. */
function addPairs(
  { entry, column }: EntryRows,
  first: number,
  end: number,
  w: Float64Array,
  room: number,
  members: number,
  b: number,
  i: number,
): void {
  for (let a = first; a < end; a += 2) {
    const l = room + entry[a] * members;
    const k = b + column[a] * members;
    const g = room + entry[a + 1] * members;
    const j = b + column[a + 1] * members;
    for (let m = 0; m < members; m++) {
      w[(i + m) | 0] += w[(l + m) | 0] * w[(k + m) | 0] + w[(g + m) | 0] * w[(j + m) | 0];
    }
  }
}
