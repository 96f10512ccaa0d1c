/**
 * Sample quantile of type 7: linear between order statistics at position (n - 1) p. Values are not changed.
 * Hyndman & Fan, The American Statistician 50 (1996) 361-365, definition 7 (the default of R and NumPy).
 * @param p [0..1]
 * @example quantile([1, 2, 3, 4], 0.25) // 1.75
 */
export function quantile(values: ArrayLike<number>, p: number): number {
  return quantileOfSorted(new Float64Array(values).sort(), p);
}

/** The same for values already ascending. */
export function quantileOfSorted(sorted: Float64Array, p: number): number {
  const n = sorted.length;
  if (n === 0) throw new RangeError("missing values: none given");
  if (!(p >= 0 && p <= 1)) throw new RangeError(`invalid p: ${p} (expected 0 to 1)`);
  // Sorting puts NaN last.
  if (Number.isNaN(sorted[n - 1])) throw new RangeError("invalid values: NaN (expected numbers)");
  const position = (n - 1) * p;
  const below = Math.floor(position);
  const above = Math.min(below + 1, n - 1);
  return sorted[below] + (position - below) * (sorted[above] - sorted[below]);
}

/** 5, 50 and 95 % values. */
export interface Band {
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

/** Band of values in any order, sorted once. */
export function bandOf(values: ArrayLike<number>): Band {
  const sorted = new Float64Array(values).sort();
  return {
    low: quantileOfSorted(sorted, 0.05),
    mid: quantileOfSorted(sorted, 0.5),
    high: quantileOfSorted(sorted, 0.95),
  };
}
