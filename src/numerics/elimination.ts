import { checkPattern, type SparsityPattern } from "./sparsity.js";

/**
 * The fixed course of Gaussian elimination without row exchanges on one sparsity pattern. "Entry" is a place in the
 * array holding L, U and the diagonal together; pivot number p eliminates component order[p].
 */
export interface EliminationPlan {
  readonly size: number;
  /** Entries of L + U + diagonal, fill-in included. */
  readonly entries: number;
  /** Component eliminated by pivot p. */
  readonly order: Int32Array;
  /** Diagonal entry of component i. */
  readonly diagonal: Int32Array;
  /** Entry into which nonzero k of the pattern goes. */
  readonly entryOfNonzero: Int32Array;
  /** Pivot p owns lowerStart[p] ≤ a < lowerStart[p+1]: L entries below it and their components. */
  readonly lowerStart: Int32Array;
  readonly lowerEntry: Int32Array;
  readonly lowerRow: Int32Array;
  /** Pivot p owns upperStart[p] ≤ b < upperStart[p+1]: U entries to its right and their components. */
  readonly upperStart: Int32Array;
  readonly upperEntry: Int32Array;
  readonly upperColumn: Int32Array;
  /** Entry changed by the b-th U entry under the a-th L entry of pivot p: target[targetStart[p] + a*countUpper + b]. */
  readonly targetStart: Int32Array;
  readonly target: Int32Array;
}

const plans = new WeakMap<SparsityPattern, EliminationPlan>();

/**
 * Elimination plan of a pattern; analysed once per pattern object. Pivots stay on the diagonal and are chosen by the
 * smallest product (row count - 1)(column count - 1), ties by index: Markowitz, Management Science 3 (1957) 255-269,
 * which for a symmetric pattern is minimum degree (Tinney & Walker, Proc. IEEE 55 (1967) 1801-1809).
 */
export function eliminationPlan(pattern: SparsityPattern): EliminationPlan {
  const known = plans.get(pattern);
  if (known !== undefined) return known;
  checkPattern(pattern);
  const plan = analyse(pattern);
  plans.set(pattern, plan);
  return plan;
}

function analyse(pattern: SparsityPattern): EliminationPlan {
  const { rowStart, column } = pattern;
  const size = rowStart.length - 1;
  const entryAt = new Int32Array(size * size).fill(-1);
  const entryOfNonzero = new Int32Array(column.length);
  let entries = 0;
  for (let i = 0; i < size; i++) {
    for (let k = rowStart[i]; k < rowStart[i + 1]; k++) {
      entryOfNonzero[k] = entries;
      entryAt[i * size + column[k]] = entries++;
    }
  }

  const alive = new Uint8Array(size).fill(1);
  const order = new Int32Array(size);
  const lowerStart = [0];
  const lowerRow: number[] = [];
  const lowerEntry: number[] = [];
  const upperStart = [0];
  const upperColumn: number[] = [];
  const upperEntry: number[] = [];
  const targetStart: number[] = [];
  const target: number[] = [];
  for (let p = 0; p < size; p++) {
    const pivot = cheapestPivot(entryAt, alive, size);
    order[p] = pivot;
    alive[pivot] = 0;
    const rows = others((i) => entryAt[i * size + pivot] >= 0);
    const columns = others((j) => entryAt[pivot * size + j] >= 0);
    for (const i of rows) {
      lowerRow.push(i);
      lowerEntry.push(entryAt[i * size + pivot]);
    }
    for (const j of columns) {
      upperColumn.push(j);
      upperEntry.push(entryAt[pivot * size + j]);
    }
    targetStart.push(target.length);
    for (const i of rows) {
      for (const j of columns) {
        if (entryAt[i * size + j] < 0) entryAt[i * size + j] = entries++;
        target.push(entryAt[i * size + j]);
      }
    }
    lowerStart.push(lowerRow.length);
    upperStart.push(upperColumn.length);
  }
  return {
    size,
    entries,
    order,
    diagonal: Int32Array.from({ length: size }, (_, i) => entryAt[i * size + i]),
    entryOfNonzero,
    lowerStart: Int32Array.from(lowerStart),
    lowerEntry: Int32Array.from(lowerEntry),
    lowerRow: Int32Array.from(lowerRow),
    upperStart: Int32Array.from(upperStart),
    upperEntry: Int32Array.from(upperEntry),
    upperColumn: Int32Array.from(upperColumn),
    targetStart: Int32Array.from(targetStart),
    target: Int32Array.from(target),
  };

  function others(wanted: (index: number) => boolean): number[] {
    const found: number[] = [];
    for (let i = 0; i < size; i++) if (alive[i] === 1 && wanted(i)) found.push(i);
    return found;
  }
}

function cheapestPivot(entryAt: Int32Array, alive: Uint8Array, size: number): number {
  let best = -1;
  let lowest = Number.POSITIVE_INFINITY;
  for (let k = 0; k < size; k++) {
    if (alive[k] === 0) continue;
    let inRow = 0;
    let inColumn = 0;
    for (let i = 0; i < size; i++) {
      if (alive[i] === 0 || i === k) continue;
      if (entryAt[k * size + i] >= 0) inRow++;
      if (entryAt[i * size + k] >= 0) inColumn++;
    }
    if (inRow * inColumn < lowest) {
      lowest = inRow * inColumn;
      best = k;
    }
  }
  return best;
}
