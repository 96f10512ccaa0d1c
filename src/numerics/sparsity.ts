/** Compressed sparse rows: row i holds nonzeros rowStart[i] ≤ k < rowStart[i+1], in columns column[k], ascending. */
export interface SparsityPattern {
  readonly rowStart: Int32Array;
  readonly column: Int32Array;
}

/** Pattern of a full matrix of n rows and columns. */
export function densePattern(size: number): SparsityPattern {
  return {
    rowStart: Int32Array.from({ length: size + 1 }, (_, i) => i * size),
    column: Int32Array.from({ length: size * size }, (_, k) => k % size),
  };
}

/** Throws a RangeError unless rows are ascending, columns are inside the matrix and every diagonal is stored. */
export function checkPattern(pattern: SparsityPattern): void {
  const { rowStart, column } = pattern;
  const size = rowStart.length - 1;
  if (!(size >= 1) || rowStart[0] !== 0 || rowStart[size] !== column.length)
    throw new RangeError(`invalid pattern.rowStart: ${rowStart} (expected 0 … ${column.length})`);
  for (let i = 0; i < size; i++) {
    let diagonal = false;
    for (let k = rowStart[i]; k < rowStart[i + 1]; k++) {
      const j = column[k];
      const ascending = k === rowStart[i] || column[k - 1] < j;
      if (!(j >= 0 && j < size && ascending))
        throw new RangeError(
          `invalid pattern.column: ${j} in row ${i} (expected ascending in 0 … ${size - 1})`,
        );
      if (j === i) diagonal = true;
    }
    if (!diagonal) throw new RangeError(`missing pattern diagonal: row ${i}`);
  }
}
