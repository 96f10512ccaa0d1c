import type { EliminationPlan, EntryRows } from "./elimination.js";
import type { SparseLu } from "./sparse-lu.js";

/**
 * L D U factors of one matrix, both triangles with unit diagonal. With a single member, loops over rows of two or three
 * entries cost more for their mispredicted ends than for their products; here the products of a whole triangle stand in
 * one list, which makes a trajectory a tenth quicker. Signs as in sparse-lu.ts: what is stored adds.
 */
export function createSingleLu(plan: EliminationPlan, room: number): SparseLu {
  const { order, targetStart } = plan;
  const memory = new Float64Array(room + plan.entries);
  const place = (entry: number) => room + entry;
  const diagonal = plan.diagonal.map(place);
  const pivots = order.map((i) => diagonal[i]);
  const updates = updatesOf(plan, place);
  const lower = productsOf(plan.lower, order, place);
  const upper = productsOf(plan.upper, order, place);
  const pivotsOfLower = lower.source.map((i) => diagonal[i]);
  const pivotsOfUpper = upper.target.map((i) => diagonal[i]);
  const upperFromBelow = {
    target: upper.target.slice().reverse(),
    factor: upper.factor.slice().reverse(),
    source: upper.source.slice().reverse(),
  };
  return {
    memory,
    factorise(shift, values) {
      memory.set(values, room);
      memory.fill(0, room + values.length);
      for (let p = 0; p < pivots.length; p++) memory[pivots[p]] -= shift;
      const check = eliminate(memory, pivots, targetStart, updates);
      multiply(memory, lower.factor, pivotsOfLower);
      multiply(memory, upper.factor, pivotsOfUpper);
      return Number.isFinite(check);
    },
    solve(offset) {
      addProducts(memory, lower, offset);
      for (let p = 0; p < pivots.length; p++) memory[(offset + order[p]) | 0] *= memory[pivots[p]];
      addProducts(memory, upperFromBelow, offset);
    },
  };
}

/** w[target] += w[left] w[right]/(-pivot), for each pivot from its start on. */
interface Updates {
  readonly target: Int32Array;
  readonly left: Int32Array;
  readonly right: Int32Array;
}

/** w[target] += w[factor] w[source] in turn; targets and sources are components of the vector solved for. */
interface Products {
  readonly target: Int32Array;
  readonly factor: Int32Array;
  readonly source: Int32Array;
}

/** Leaves negative reciprocal pivots on the diagonal; the result is not finite when a pivot is zero or not finite. */
function eliminate(
  w: Float64Array,
  pivots: Int32Array,
  start: Int32Array,
  { target, left, right }: Updates,
): number {
  let check = 0;
  for (let p = 0; p < pivots.length; p++) {
    const pivot = w[pivots[p]];
    const reciprocal = -1 / pivot;
    w[pivots[p]] = reciprocal;
    check += pivot * reciprocal;
    const end = p + 1 < pivots.length ? start[p + 1] : target.length;
    for (let t = start[p]; t < end; t++) w[target[t]] += w[left[t]] * w[right[t]] * reciprocal;
  }
  return check;
}

function multiply(w: Float64Array, entries: Int32Array, pivots: Int32Array): void {
  for (let a = 0; a < entries.length; a++) w[entries[a]] *= w[pivots[a]];
}

function addProducts(w: Float64Array, { target, factor, source }: Products, b: number): void {
  for (let a = 0; a < target.length; a++) w[(b + target[a]) | 0] += w[factor[a]] * w[(b + source[a]) | 0];
}

function updatesOf(plan: EliminationPlan, place: (entry: number) => number): Updates {
  const { size, columnStart, columnEntry, upper, target } = plan;
  const left: number[] = [];
  const right: number[] = [];
  for (let p = 0; p < size; p++) {
    for (let a = columnStart[p]; a < columnStart[p + 1]; a++) {
      for (let c = upper.start[p]; c < upper.start[p + 1]; c++) {
        left.push(columnEntry[a]);
        right.push(upper.entry[c]);
      }
    }
  }
  return {
    target: target.map(place),
    left: Int32Array.from(left, place),
    right: Int32Array.from(right, place),
  };
}

function productsOf(rows: EntryRows, order: Int32Array, place: (entry: number) => number): Products {
  const target: number[] = [];
  order.forEach((i, p) => {
    for (let a = rows.start[p]; a < rows.start[p + 1]; a++) target.push(i);
  });
  return { target: Int32Array.from(target), factor: rows.entry.map(place), source: rows.column };
}
