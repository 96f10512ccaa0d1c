import { RADIANS_PER_SECOND_OF_RPM } from "../units/index.js";

/** The state of an ensemble at one moment, as criteria read it. */
export interface EnsembleState {
  /** [K] part i, member m at `[i * members + m]` */
  readonly temps: Float64Array;
  readonly parts: readonly string[];
  readonly members: number;
}

/**
 * What a value is, so that it can be shown in the user's unit. Values are SI: [K], [rad/s]; "fraction" [0..1], "ratio",
 * "index" [0..100] and "count" are plain numbers.
 */
export type Quantity =
  | "temperature"
  | "temperature-difference"
  | "rotational-speed"
  | "fraction"
  | "ratio"
  | "index"
  | "count";

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
  /** Shown with its margin, but neither in the chance of being ready nor able to bind: rules of thumb and indices. */
  readonly advisory?: true;
  /** Counts only where the engine is to be warm through; the least that makers ask for does without it. */
  readonly aim?: "warm-through";
  /** Why it matters, one sentence. */
  readonly reason: string;
  /** Where the limit comes from. */
  readonly source: string;
  /** Writes each member's value (length `members`). */
  values(state: EnsembleState, out: Float64Array): void;
}

/**
 * The two lines of a plan: "least", every part past the engine maker's limit, where heating becomes mandatory, and
 * "warm-through", where the engine is warm.
 */
export type Aim = "least" | "warm-through";

/** Whether a criterion decides if the engine may be started: the line of the least. */
export function isGating({ judged, advisory, aim }: Criterion): boolean {
  return judged === "at-start" && advisory !== true && aim === undefined;
}

/** The criteria that decide on one of the two lines. */
export function gatingOf(criteria: readonly Criterion[], line: Aim): Criterion[] {
  return criteria.filter((c) => isGating(c) || isOfLine(c, line));
}

/** Whether a criterion decides on this line only. */
export function isOfLine({ judged, aim }: Criterion, line: Aim): boolean {
  return judged === "at-start" && aim === line;
}

/** Margin of a value: positive when the criterion holds. */
export function marginOf({ direction, limit }: Criterion, value: number): number {
  return direction === "at-least" ? value - limit : limit - value;
}

/** A margin in words, in the unit people use: "-12.3 K", "25 rpm". */
export function marginText({ quantity }: Criterion, margin: number): string {
  switch (quantity) {
    case "temperature":
    case "temperature-difference":
      return `${margin.toFixed(1)} K`;
    case "rotational-speed":
      return `${whole(margin / RADIANS_PER_SECOND_OF_RPM)} rpm`;
    case "fraction":
      return `${(100 * margin).toFixed(1)} %`;
    case "ratio":
      return `${margin.toFixed(1)} times`;
    case "index":
      return `${whole(margin)} of 100`;
    case "count":
      return whole(margin);
  }
}

/** Adding 0 turns -0 into 0. */
function whole(value: number): string {
  return String(Math.round(value) + 0);
}

export function rowOf({ parts }: EnsembleState, part: string): number {
  const row = parts.indexOf(part);
  if (row < 0) throw new RangeError(`unknown part: ${part} (expected one of ${parts.join(", ")})`);
  return row;
}
