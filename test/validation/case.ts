import { expect, test } from "vitest";

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
  /** Absolute tolerance in `unit`, and why it is that wide. */
  readonly tolerance: number;
  readonly toleranceReason: string;
  readonly got: () => number;
}

/** A named group of cases; every case becomes a test, and the file exports the group for the table. */
export interface ValidationGroup {
  readonly title: string;
  readonly cases: readonly ValidationCase[];
}

/** Tolerance as a fraction of the expected value. */
export function relative(expected: number, fraction: number): number {
  return Math.abs(expected) * fraction;
}

export function runValidation(group: ValidationGroup): void {
  test.each(group.cases.map((c) => [`${group.title}: ${c.name} [${c.source}]`, c] as const))("%s", (_, c) => {
    const got = c.got();
    expect(Number.isFinite(got), `${c.name}: got ${got}`).toBe(true);
    expect(
      Math.abs(got - c.expected),
      `expected ${c.expected} ± ${c.tolerance} ${c.unit}, got ${got}`,
    ).toBeLessThanOrEqual(c.tolerance);
  });
}
