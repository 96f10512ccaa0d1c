/** The state of an ensemble at one moment, as criteria read it. */
export interface EnsembleState {
  /** [K] part i, member m at `[i * members + m]` */
  readonly temps: Float64Array;
  readonly parts: readonly string[];
  readonly members: number;
}

/** What a value is, so that it can be shown in the user's unit. Values are SI. */
export type Quantity = "temperature" | "temperature-difference";

/**
 * One thing that must hold for a start. Criteria judged "at-start" are read at the moment of the start; those judged
 * "while-heating" at the moment of unplugging, when heater and oil are hottest.
 */
export interface Criterion {
  readonly id: string;
  readonly title: string;
  readonly quantity: Quantity;
  readonly direction: "at-least" | "at-most";
  readonly judged: "at-start" | "while-heating";
  readonly limit: number;
  /** Why it matters, one sentence. */
  readonly reason: string;
  /** Where the limit comes from. */
  readonly source: string;
  /** Writes each member's value (length `members`). */
  values(state: EnsembleState, out: Float64Array): void;
}

/** Margin of a value: positive when the criterion holds. */
export function marginOf({ direction, limit }: Criterion, value: number): number {
  return direction === "at-least" ? value - limit : limit - value;
}

export function rowOf({ parts }: EnsembleState, part: string): number {
  const row = parts.indexOf(part);
  if (row < 0) throw new RangeError(`unknown part: ${part} (expected one of ${parts.join(", ")})`);
  return row;
}
