import { type EliminationPlan, eliminationPlan } from "./elimination.js";
import { add, div, mul, num, rowKernel, sub, WORD } from "./row-kernel.js";
import type { PassList, RowLayout, RowMemory } from "./row-memory.js";
import type { SparsityPattern } from "./sparsity.js";

/** LU factors of shift·I - A for an ensemble of matrices A of one pattern; all arrays are [row or nonzero][member]. */
export interface SparseLu {
  /** Factorises shift·I - A; false when a pivot of any member is zero or not finite. */
  factorise(shift: number, values: Float64Array): boolean;
  /** Replaces the right-hand side, a vector from byte `vector` of the memory on, by the solution of (shift·I - A) x = b. */
  solve(vector: number): void;
}

// With B = A - shift·I = -(shift·I - A) eliminated as it stands, storing each factor and each reciprocal pivot with the
// other sign turns every subtraction below into an addition and gives the solution of (shift·I - A) x = b directly.

const SHIFT = rowKernel({ pivot: "row" }, ["shift"], ({ pivot, shift }, { set }) => {
  set(pivot, sub(pivot, shift));
});
/** Leaves the negative reciprocal; the check falls by 1 unless the pivot is zero, infinite or NaN: then it is NaN. */
const PIVOT = rowKernel({ pivot: "row", check: "row" }, [], ({ pivot, check }, { keep, set }) => {
  const reciprocal = keep(div(num(-1), pivot));
  set(check, add(check, mul(pivot, reciprocal)));
  set(pivot, reciprocal);
});
const SCALE = rowKernel({ factor: "row", pivot: "row" }, [], ({ factor, pivot }, { set }) => {
  set(factor, mul(factor, pivot));
});
const UPDATE = rowKernel({ entry: "row", below: "row", beside: "row" }, [], (terms, { set }) => {
  set(terms.entry, add(terms.entry, mul(terms.below, terms.beside)));
});
const PRODUCT = rowKernel(
  { target: "vector-row", factor: "row", source: "vector-row" },
  [],
  ({ target, factor, source }, { set }) => set(target, add(target, mul(factor, source))),
);
const DIVIDE = rowKernel({ target: "vector-row", pivot: "row" }, [], ({ target, pivot }, { set }) => {
  set(target, mul(target, pivot));
});

/** Where the factors of a pattern stand in a memory, and what is done with them in which order. */
export interface SparseLuPlan {
  readonly plan: EliminationPlan;
  readonly members: number;
  /** Byte at which the entries begin. */
  readonly entries: number;
  readonly check: number;
  readonly diagonal: PassList;
  /** Pivots of a level do not wait for each other: their reciprocals, their factors and what these change. */
  readonly levels: readonly {
    readonly pivots: PassList;
    readonly factors: PassList;
    readonly updates: PassList;
  }[];
  readonly beside: PassList;
  readonly lower: PassList;
  readonly divided: PassList;
  readonly upper: PassList;
}

/**
 * Sparse LU without row exchanges. Rows are never exchanged because the matrices met here are shift·I - J of a heat
 * network, an M-matrix: positive diagonal, non-positive rest, diagonally dominant for shift > 0, for which elimination
 * in any diagonal order keeps all pivots positive and does not grow (Higham, Accuracy and Stability of Numerical
 * Algorithms, 2nd ed. 2002, sections 9.3 and 9.5). For other matrices the caller must react to `false`.
 */
export function planSparseLu(pattern: SparsityPattern, members: number, layout: RowLayout): SparseLuPlan {
  const plan = eliminationPlan(pattern);
  const { order, diagonal, lower, upper, columnStart, columnEntry, targetStart, target } = plan;
  const row = WORD * members;
  const entries = layout.take(plan.entries * members);
  const check = layout.take(members);
  const place = (entry: number) => entries + entry * row;
  const pivot = (p: number) => place(diagonal[order[p]]);
  const range = (from: number, to: number) => Array.from({ length: to - from }, (_, k) => from + k);
  const all = range(0, plan.size);
  const besideOf = (p: number) => range(upper.start[p], upper.start[p + 1]).map((a) => upper.entry[a]);
  const belowOf = (p: number) => range(columnStart[p], columnStart[p + 1]).map((a) => columnEntry[a]);
  const updatesOf = (p: number) => {
    const beside = besideOf(p);
    return belowOf(p).flatMap((below, k) =>
      beside.map((entry, j) => [
        place(target[targetStart[p] + k * beside.length + j]),
        place(below),
        place(entry),
      ]),
    );
  };
  const products = ({ start, entry, column }: typeof lower, p: number) =>
    range(start[p], start[p + 1]).map((a) => [row * order[p], place(entry[a]), row * column[a]]);
  return {
    ...{ plan, members, entries, check },
    diagonal: layout.list(
      SHIFT,
      all.map((p) => [pivot(p)]),
    ),
    levels: levelsOf(plan).map((level) => ({
      pivots: layout.list(
        PIVOT,
        level.map((p) => [pivot(p), check]),
      ),
      factors: layout.list(
        SCALE,
        level.flatMap((p) => belowOf(p).map((entry) => [place(entry), pivot(p)])),
      ),
      updates: layout.list(UPDATE, level.flatMap(updatesOf)),
    })),
    beside: layout.list(
      SCALE,
      all.flatMap((p) => besideOf(p).map((entry) => [place(entry), pivot(p)])),
    ),
    lower: layout.list(
      PRODUCT,
      all.flatMap((p) => products(lower, p)),
    ),
    divided: layout.list(
      DIVIDE,
      all.map((p) => [row * order[p], pivot(p)]),
    ),
    upper: layout.list(
      PRODUCT,
      [...all].reverse().flatMap((p) => products(upper, p)),
    ),
  };
}

export function createSparseLu(plan: SparseLuPlan, memory: RowMemory): SparseLu {
  const { members, entries, check, diagonal, levels, beside, lower, divided, upper } = plan;
  const row = WORD * members;
  const shifted = memory.bind(SHIFT);
  const invert = memory.bind(PIVOT);
  const scale = memory.bind(SCALE);
  const update = memory.bind(UPDATE);
  const addProducts = memory.bind(PRODUCT);
  const divide = memory.bind(DIVIDE);
  const first = entries / WORD;
  const afterLast = first + plan.plan.entries * members;
  return {
    factorise(shift, values) {
      const { floats } = memory;
      floats.set(values, first);
      floats.fill(0, first + values.length, afterLast);
      floats.fill(0, check / WORD, check / WORD + members);
      shifted(diagonal.at, diagonal.count, 0, row, shift);
      for (const { pivots, factors, updates } of levels) {
        invert(pivots.at, pivots.count, 0, row);
        scale(factors.at, factors.count, 0, row);
        update(updates.at, updates.count, 0, row);
      }
      scale(beside.at, beside.count, 0, row);
      let sum = 0;
      for (let k = check / WORD; k < check / WORD + members; k++) sum += floats[k];
      return Number.isFinite(sum);
    },
    solve(vector) {
      addProducts(lower.at, lower.count, vector, row);
      divide(divided.at, divided.count, vector, row);
      addProducts(upper.at, upper.count, vector, row);
    },
  };
}

/** Pivots by how many others, one upon the other, must go before them. */
function levelsOf({ size, order, lower, upper }: EliminationPlan): number[][] {
  const levelOf = new Int32Array(size);
  const levels: number[][] = [];
  for (let p = 0; p < size; p++) {
    const pivot = order[p];
    for (let a = lower.start[p]; a < lower.start[p + 1]; a++)
      levelOf[pivot] = Math.max(levelOf[pivot], levelOf[lower.column[a]] + 1);
    for (let a = upper.start[p]; a < upper.start[p + 1]; a++)
      levelOf[upper.column[a]] = Math.max(levelOf[upper.column[a]], levelOf[pivot] + 1);
    const level = levels[levelOf[pivot]] ?? [];
    level.push(p);
    levels[levelOf[pivot]] = level;
  }
  return levels;
}
