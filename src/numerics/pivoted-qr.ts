/** A P = Q R of an m x n matrix, m >= n, with |R_kk| not rising with k. */
export interface PivotedQr {
  readonly rows: number;
  readonly columns: number;
  /** Column of A that stands at position k of R. */
  readonly pivot: Int32Array;
  /** Row-major m x n: R on and above the diagonal, below it the tails of the Householder vectors (head 1). */
  readonly factors: Float64Array;
  /** v^T v / 2 of each Householder vector, inverted; 0 where nothing was reflected. */
  readonly tau: Float64Array;
}

/**
 * Householder QR with column pivoting, in place on the row-major `a`. The diagonal of R shows how many columns are
 * independent. Golub & Van Loan, Matrix Computations, 4th ed. 2013, algorithm 5.4.1, column norms taken anew at each step
 * instead of updated, which costs half as much again and spares the care against cancellation.
 */
export function pivotedQr(a: Float64Array, rows: number, columns: number): PivotedQr {
  const pivot = Int32Array.from({ length: columns }, (_, j) => j);
  const tau = new Float64Array(columns);
  const work = new Float64Array(columns);
  for (let k = 0; k < columns; k++) {
    squaresBelow(a, rows, columns, k, work);
    const longest = indexOfLargest(work, k);
    const norm = Math.sqrt(work[longest]);
    exchange(a, rows, columns, pivot, k, longest);
    tau[k] = reflect(a, rows, columns, k, norm, work);
  }
  return { rows, columns, pivot, factors: a, tau };
}

/** Replaces b, of m entries, by Q^T b. */
export function multiplyByQTransposed(qr: PivotedQr, b: Float64Array): void {
  const { rows, columns, factors, tau } = qr;
  for (let k = 0; k < columns; k++) {
    if (tau[k] === 0) continue;
    let sum = b[k];
    for (let i = k + 1; i < rows; i++) sum += factors[i * columns + k] * b[i];
    sum *= tau[k];
    b[k] -= sum;
    for (let i = k + 1; i < rows; i++) b[i] -= sum * factors[i * columns + k];
  }
}

/** Number of diagonal entries of R above `tolerance` times the first. */
export function numericalRank({ columns, factors }: PivotedQr, tolerance: number): number {
  const limit = tolerance * Math.abs(factors[0]);
  let rank = 0;
  while (rank < columns && Math.abs(factors[rank * columns + rank]) > limit) rank++;
  return rank;
}

/**
 * Writes the x that makes |A x - b| least, from Q^T b; of the columns past `rank`, which depend on the others, none is
 * used.
 */
export function solveByQr(qr: PivotedQr, qTransposedB: Float64Array, rank: number, out: Float64Array): void {
  const { columns, factors, pivot } = qr;
  const z = new Float64Array(columns);
  for (let k = rank - 1; k >= 0; k--) {
    let sum = qTransposedB[k];
    for (let j = k + 1; j < rank; j++) sum -= factors[k * columns + j] * z[j];
    z[k] = sum / factors[k * columns + k];
  }
  for (let k = 0; k < columns; k++) out[pivot[k]] = z[k];
}

function squaresBelow(
  a: Float64Array,
  rows: number,
  columns: number,
  k: number,
  squares: Float64Array,
): void {
  squares.fill(0);
  for (let i = k; i < rows; i++) {
    for (let j = k; j < columns; j++) squares[j] += a[i * columns + j] ** 2;
  }
}

function indexOfLargest(values: Float64Array, from: number): number {
  let best = from;
  for (let j = from + 1; j < values.length; j++) if (values[j] > values[best]) best = j;
  return best;
}

function exchange(
  a: Float64Array,
  rows: number,
  columns: number,
  pivot: Int32Array,
  k: number,
  j: number,
): void {
  if (j === k) return;
  for (let i = 0; i < rows; i++) {
    const kept = a[i * columns + k];
    a[i * columns + k] = a[i * columns + j];
    a[i * columns + j] = kept;
  }
  const kept = pivot[k];
  pivot[k] = pivot[j];
  pivot[j] = kept;
}

/** Reflects rows k… so that column k, of length `norm`, becomes R_kk and zeros; `work` is overwritten. */
function reflect(
  a: Float64Array,
  rows: number,
  columns: number,
  k: number,
  norm: number,
  work: Float64Array,
): number {
  if (norm === 0) return 0;
  const head = a[k * columns + k];
  const diagonal = head > 0 ? -norm : norm;
  const first = head - diagonal;
  for (let i = k + 1; i < rows; i++) a[i * columns + k] /= first;
  // v = (1, tail): v^T v = 2 |R_kk| / |first|, exactly for exact norms.
  const tau = -first / diagonal;
  for (let j = k + 1; j < columns; j++) work[j] = a[k * columns + j];
  for (let i = k + 1; i < rows; i++) {
    const v = a[i * columns + k];
    for (let j = k + 1; j < columns; j++) work[j] += v * a[i * columns + j];
  }
  for (let j = k + 1; j < columns; j++) {
    work[j] *= tau;
    a[k * columns + j] -= work[j];
  }
  for (let i = k + 1; i < rows; i++) {
    const v = a[i * columns + k];
    for (let j = k + 1; j < columns; j++) a[i * columns + j] -= v * work[j];
  }
  a[k * columns + k] = diagonal;
  return tau;
}
