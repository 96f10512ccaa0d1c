/** Findings: what a temperature log tells, and what it cannot. Code to its values; keys carry their unit. */
export interface LearningFindings {
  readonly "learned-from": {
    readonly readings: number;
    readonly origins: readonly string[];
    /** Some of it counts as unknown, as the aircraft now stands and is heated. */
    readonly isReset: boolean;
  };
  /** Names of other aircraft of the base that are alike. */
  readonly "learned-at-base": { readonly aircraft: readonly string[] };
  /** A probe's name and part, when it read so, and what the model had for it. */
  readonly "reading-contradicts": {
    readonly probe: string;
    readonly part: string;
    readonly at: string;
    readonly reading_c: number;
    readonly model_c: number;
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
