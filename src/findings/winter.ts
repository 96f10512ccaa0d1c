type Nothing = Readonly<Record<never, never>>;

/** Findings: how winters and kits are compared. Code to its values; keys carry their unit. */
export interface WinterFindings {
  // Limits and makers' words that keep a kit or a habit from being recommended.
  "rule-outdoors-only": { heater: string };
  "rule-engine-too-small": { heater: string; least_l: number; engine_l: number };
  "rule-longest-on": { heater: string; on_h: number; longest_on_h: number };
  "rule-always-on": Nothing;
  // How heaters are used, and why they cannot be used so.
  "habit-always-on": Nothing;
  "habit-clock": { lead_h: number };
  /** Clock times. */
  "habit-daily": { from: string; until: string };
  /** Null where the chance that it plans for is not spoken of. */
  "habit-planned": { chance: number | null };
  "no-heater-to-switch": Nothing;
  "heater-attended": { heater: string };
  "times-need-timer": Nothing;
  "least-over-longest": Nothing;
  "heats-too-short": { least_on_h: number };
  // How a winter is counted.
  "winter-flown-warm": Nothing;
  "winter-lead-table": Nothing;
  "winter-aims": Nothing;
  "winter-time-counted": Nothing;
  "winter-wet-counted": Nothing;
  "winter-by-hand": { kits: readonly string[] };
  "always-on-compared": { heater: string; longest_on_h: number };
}
