type Nothing = Readonly<Record<never, never>>;

/** Findings: how winters and kits are compared. Code to its values; keys carry their unit. */
export interface WinterFindings {
  // Limits and makers' words that keep a kit or a habit from being recommended.
  readonly "rule-outdoors-only": { readonly heater: string };
  readonly "rule-engine-too-small": {
    readonly heater: string;
    readonly least_l: number;
    readonly engine_l: number;
  };
  readonly "rule-longest-on": {
    readonly heater: string;
    readonly on_h: number;
    readonly longest_on_h: number;
  };
  readonly "rule-always-on": Nothing;
  // How heaters are used, and why they cannot be used so.
  readonly "habit-always-on": Nothing;
  readonly "habit-clock": { readonly lead_h: number };
  /** Clock times. */
  readonly "habit-daily": { readonly from: string; readonly until: string };
  /** Null where the chance that it plans for is not spoken of. */
  readonly "habit-planned": { readonly chance: number | null };
  readonly "no-heater-to-switch": Nothing;
  readonly "heater-attended": { readonly heater: string };
  readonly "times-need-timer": Nothing;
  readonly "least-over-longest": Nothing;
  readonly "heats-too-short": { readonly least_on_h: number };
  // How a winter is counted.
  readonly "winter-flown-warm": Nothing;
  readonly "winter-lead-table": Nothing;
  readonly "winter-aims": Nothing;
  readonly "winter-time-counted": Nothing;
  readonly "winter-wet-counted": Nothing;
  readonly "winter-by-hand": { readonly kits: readonly string[] };
  readonly "always-on-compared": { readonly heater: string; readonly longest_on_h: number };
}
