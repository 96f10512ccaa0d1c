import type { Finding } from "./index.js";

type Nothing = Record<never, never>;

/** Findings: heater switches and the keeper of a base. Code to its values; keys carry their unit. */
export interface SwitchingFindings {
  // Why a switch is off, or was told so.
  readonly "server-stops": Nothing;
  readonly "unknown-after-start": Nothing;
  readonly "unknown-after-lost-link": Nothing;
  readonly "unknown-after-failed-command": Nothing;
  readonly "on-perhaps-late": Nothing;
  readonly "switched-on-by-other": Nothing;
  readonly "switched-off-by-other": Nothing;
  readonly "switched-off-by-hand": Nothing;
  readonly "switched-on-by-hand": Nothing;
  readonly "plan-was-withdrawn": Nothing;
  readonly "outside-wanted-hours": Nothing;
  /** Null where the plan has no name. */
  readonly "on-by-plan": { readonly plan: string | null };
  readonly "switch-locked": { readonly fault: string };
  readonly "switch-unconfirmed": { readonly to: "on" | "off"; readonly within_s: number };
  readonly "switch-memory-lost": Nothing;
  readonly "switch-silent": Nothing;
  readonly "switching-failed": { readonly error: string };
  readonly "clock-jumped": Nothing;
  readonly "nothing-written-down": Nothing;
  readonly "probe-too-hot": { readonly probe: string; readonly temp_c: number; readonly at_most_c: number };
  readonly "probe-stuck": { readonly probe: string; readonly temp_c: number; readonly for_min: number };
  readonly "probe-silent": { readonly probe: string; readonly within_s: number };
  readonly "on-time-used-up": { readonly longest_min: number };
  // Why a person's wish is not taken.
  readonly "fault-ends-itself": { readonly fault: string };
  readonly "fault-not-open": { readonly fault: string };
  readonly "off-not-confirmed": Nothing;
  readonly "switch-not-ready": Nothing;
  // What a set-up holds that is not safe, or has to be known.
  readonly "switch-unsafe": {
    readonly issues: readonly {
      readonly place: string;
      readonly expected: string;
      readonly received: string;
    }[];
  };
  readonly "switch-no-on-time": Nothing;
  // Why a plan is not switched.
  readonly "plan-not-switched": { readonly reason: Finding };
  readonly "heater-needs-somebody": { readonly heater: string };
  readonly "chance-too-low-to-heat": { readonly chance: number };
  readonly "circuit-overloaded": {
    readonly circuit: string;
    readonly load_w: number;
    readonly limit_w: number;
    readonly share: number;
  };
  // What the keeper cannot do.
  readonly "store-not-writable": Nothing;
  readonly "broker-unreachable": Nothing;
  readonly "switch-no-answer": { readonly switch: string };
  readonly "switch-stays-off": { readonly switch: string; readonly reason: Finding };
  readonly "switch-cannot-be-used": { readonly switch: string; readonly error: string };
  readonly "aircraft-not-worked-out": { readonly aircraft: string; readonly error: string };
  readonly "no-estimate": { readonly aircraft: string; readonly reason: Finding };
  readonly "no-plan": { readonly aircraft: string; readonly reason: Finding };
  // Why a plan no longer stands.
  readonly "aircraft-was-started": Nothing;
  readonly "departure-no-longer-wanted": Nothing;
  // What the live estimate noticed, and how sure it is [0..1].
  readonly "heater-seems-cold": { readonly chance: number };
  readonly "cover-seems-off": { readonly chance: number };
  readonly "probe-seems-out": { readonly chance: number };
}
