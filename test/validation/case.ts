/** How far the expected value can be trusted. */
export type Mark =
  /** read in the named source or in a public reproduction of it */
  | "published"
  /** the published formula evaluated independently (other program, more digits) */
  | "computed from the published formula"
  /** known from general knowledge of the named source, not read again */
  | "from memory"
  /** common practice, no published source */
  | "common practice, no published source";

/** One number of ours held against one from outside. Listed in docs/validation.md by `npm run validation`. */
export interface ValidationCase {
  /** What is compared, with its conditions: "kinematic viscosity of SAE 50 at -20 °C". */
  readonly name: string;
  /** Document, edition, table or example number. */
  readonly source: string;
  readonly mark: Mark;
  readonly unit: string;
  readonly expected: number;
  /** Absolute tolerance in `unit`, above zero, and why it is that wide. */
  readonly tolerance: number;
  readonly toleranceReason: string;
  readonly got: () => number;
  /** The number is among those that a curve or constant was fitted to: it shows how well the fit holds, and validates nothing. */
  readonly isCalibration?: boolean;
}

/** A named group of cases: physics of the product, general mathematics and decoding, or a whole engine. */
export interface ValidationGroup {
  readonly title: string;
  readonly part: "physics" | "mathematics" | "engine";
  readonly cases: readonly ValidationCase[];
}

export function caseOf(
  name: string,
  source: string,
  mark: Mark,
  unit: string,
  expected: number,
  tolerance: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  return { name, source, mark, unit, expected, tolerance, toleranceReason, got };
}

export function calibration(one: ValidationCase): ValidationCase {
  return { ...one, isCalibration: true };
}

/** Tolerance as a fraction of the expected value. */
export function relative(expected: number, fraction: number): number {
  return Math.abs(expected) * fraction;
}
