/**
 * Where a correlation was made and checked by its author. Functions refuse what lies outside by `requireInRange`, or say
 * that they compute on; callers whose ends may count clamp to it.
 */
export interface ValidityRange {
  /** What is bounded, with its unit. */
  readonly quantity: string;
  readonly min: number;
  readonly max: number;
  readonly source: string;
}
