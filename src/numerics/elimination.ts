import { checkPattern, type SparsityPattern } from "./sparsity.js";

/**
 * The fixed course of Gaussian elimination without row exchanges on one sparsity pattern. "Entry" is a place in the
 * array holding L, U and the diagonal together; pivot number p eliminates component order[p].
 */
export interface EliminationPlan {
  readonly size: number;
  /** Entries of L + U + diagonal: the pattern's nonzeros in their order, then the fill-in. */
  readonly entries: number;
  /** Component eliminated by pivot p. */
  readonly order: Int32Array;
  /** Diagonal entry of component i. */
  readonly diagonal: Int32Array;
  /** L by rows, in the order of elimination: row p owns lower.start[p] ≤ a < lower.start[p+1]. */
  readonly lower: EntryRows;
  /** U by rows, likewise. */
  readonly upper: EntryRows;
  /** L by columns: pivot p owns columnStart[p] ≤ a < columnStart[p+1], entries of L below it. */
  readonly columnStart: Int32Array;
  readonly columnEntry: Int32Array;
  /** Entries changed by pivot p from targetStart[p] on: for each L entry below it, each U entry beside it. */
  readonly targetStart: Int32Array;
  readonly target: Int32Array;
}

/** Off-diagonal entries of a triangular factor, row after row, with the component of their column. */
export interface EntryRows {
  readonly start: Int32Array;
  readonly entry: Int32Array;
  readonly column: Int32Array;
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
  let entries = column.length;
  for (let i = 0; i < size; i++) {
    for (let k = rowStart[i]; k < rowStart[i + 1]; k++) entryAt[i * size + column[k]] = k;
  }

  const alive = new Uint8Array(size).fill(1);
  const order: number[] = [];
  const lower: Entry[][] = Array.from({ length: size }, () => []);
  const upper: Entry[][] = [];
  const columnStart = [0];
  const columnEntry: number[] = [];
  const targetStart: number[] = [];
  const target: number[] = [];
  for (let p = 0; p < size; p++) {
    const pivot = cheapestPivot(entryAt, alive, size);
    order.push(pivot);
    alive[pivot] = 0;
    const rows = others((i) => entryAt[i * size + pivot] >= 0);
    const columns = others((j) => entryAt[pivot * size + j] >= 0);
    upper.push(columns.map((j) => ({ entry: entryAt[pivot * size + j], column: j })));
    targetStart.push(target.length);
    for (const i of rows) {
      const entry = entryAt[i * size + pivot];
      lower[i].push({ entry, column: pivot });
      columnEntry.push(entry);
      for (const j of columns) {
        if (entryAt[i * size + j] < 0) entryAt[i * size + j] = entries++;
        target.push(entryAt[i * size + j]);
      }
    }
    columnStart.push(columnEntry.length);
  }
  return {
    size,
    entries,
    order: Int32Array.from(order),
    diagonal: Int32Array.from({ length: size }, (_, i) => entryAt[i * size + i]),
    lower: entryRows(order.map((i) => lower[i])),
    upper: entryRows(upper),
    columnStart: Int32Array.from(columnStart),
    columnEntry: Int32Array.from(columnEntry),
    targetStart: Int32Array.from(targetStart),
    target: Int32Array.from(target),
  };

  function others(wanted: (index: number) => boolean): number[] {
    const found: number[] = [];
    for (let i = 0; i < size; i++) if (alive[i] === 1 && wanted(i)) found.push(i);
    return found;
  }
}

interface Entry {
  readonly entry: number;
  readonly column: number;
}

function entryRows(rows: readonly (readonly Entry[])[]): EntryRows {
  const start = new Int32Array(rows.length + 1);
  rows.forEach((row, p) => {
    start[p + 1] = start[p] + row.length;
  });
  const all = rows.flat();
  return {
    start,
    entry: Int32Array.from(all, ({ entry }) => entry),
    column: Int32Array.from(all, ({ column }) => column),
  };
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
