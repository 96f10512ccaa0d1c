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
  /** Plans that could be checked; [K] by which the outside air is taken colder (warmer below 0); [1] how much wider cases lie. */
  readonly "corrected-by-record": {
    readonly plans: number;
    readonly colder_k: number;
    readonly spread: number;
  };
}
