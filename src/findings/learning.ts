/** Findings: what a temperature log tells, and what it cannot. Code to its values; keys carry their unit. */
export interface LearningFindings {
  /** Heat that a heater brings: of scaled or judged numbers, so many per cent either side in two of three aircraft. */
  "heat-unsure": { heater: string; kind: "scaled" | "estimated"; percent: number };
  "learned-from": {
    readings: number;
    origins: readonly string[];
    /** Some of it counts as unknown, as the aircraft now stands and is heated. */
    isReset: boolean;
  };
  /** Names of other aircraft of the base that are alike. */
  "learned-at-base": { aircraft: readonly string[] };
  /** A probe's name and part, when it read so, and what the model had for it. */
  "reading-contradicts": { probe: string; part: string; at: string; reading_c: number; model_c: number };
  /** Names of the probes. */
  "air-as-measured": { probes: readonly string[] };
  /** Plans that could be checked; [K] by which the outside air is taken colder (warmer below 0); [1] how much wider cases lie. */
  "corrected-by-record": { plans: number; colder_k: number; spread: number };
  // What a log may tell beside the numbers of the installation.
  "unknown-snow": Readonly<Record<never, never>>;
  "unknown-air": Readonly<Record<never, never>>;
  /** Null: of all parts. */
  "unknown-start": { part: string | null };
  "unknown-offset": { probe: string };
  "unknown-lag": { probe: string };
}
