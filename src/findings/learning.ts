/** Findings: what a temperature log tells, and what it cannot. Code to its values; keys carry their unit. */
export interface LearningFindings {
  readonly "learned-from": {
    readonly readings: number;
    readonly origins: readonly string[];
    /** Some of it counts as unknown, as the aircraft now stands and is heated. */
    readonly isReset: boolean;
  };
  /** Names of the probes. */
  readonly "air-as-measured": { readonly probes: readonly string[] };
}
