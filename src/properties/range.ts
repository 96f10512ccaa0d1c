/**
 * Where a correlation was made and checked by its author. Outside it the function still computes; the caller
 * flags.
 */
export interface ValidityRange {
  /** What is bounded, with its unit. */
  readonly quantity: string;
  readonly min: number;
  readonly max: number;
  readonly source: string;
}

/** Whether `value` lies inside the published range of a correlation. NaN is outside. */
export function isInsideRange(range: ValidityRange, value: number): boolean {
  return value >= range.min && value <= range.max;
}
