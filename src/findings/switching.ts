import type { Finding } from "./index.js";

type Nothing = Record<never, never>;

/** Findings: heater switches and the keeper of a base. Code to its values; keys carry their unit. */
export interface SwitchingFindings {
  // Why a switch is off, or was told so.
  "server-stops": Nothing;
  "unknown-after-start": Nothing;
  "unknown-after-lost-link": Nothing;
  "unknown-after-failed-command": Nothing;
  "on-perhaps-late": Nothing;
  "switched-on-by-other": Nothing;
  "switched-off-by-other": Nothing;
  "switched-off-by-hand": Nothing;
  "switched-on-by-hand": Nothing;
  "plan-was-withdrawn": Nothing;
  "outside-wanted-hours": Nothing;
  /** Null where the plan has no name. */
  "on-by-plan": { plan: string | null };
  "switch-locked": { fault: string };
  "switch-unconfirmed": { to: "on" | "off"; within_s: number };
  "switch-memory-lost": Nothing;
  "switch-silent": Nothing;
  "switching-failed": { error: string };
  "clock-jumped": Nothing;
  "nothing-written-down": Nothing;
  "probe-too-hot": { probe: string; temp_c: number; at_most_c: number };
  "probe-stuck": { probe: string; temp_c: number; for_min: number };
  "probe-silent": { probe: string; within_s: number };
  "on-time-used-up": { longest_min: number };
  // Why a person's wish is not taken.
  "fault-ends-itself": { fault: string };
  "fault-not-open": { fault: string };
  "off-not-confirmed": Nothing;
  "switch-not-ready": Nothing;
  // What a set-up holds that is not safe, or has to be known.
  "switch-unsafe": {
    issues: readonly {
      place: string;
      expected: string;
      received: string;
    }[];
  };
  "switch-no-on-time": Nothing;
  // Why a plan is not switched.
  "plan-not-switched": { reason: Finding };
  "heater-needs-somebody": { heater: string };
  "chance-too-low-to-heat": { chance: number };
  "circuit-overloaded": { circuit: string; load_w: number; limit_w: number; share: number };
  // What the keeper cannot do.
  "store-not-writable": Nothing;
  "broker-unreachable": Nothing;
  "switch-no-answer": { switch: string };
  "switch-stays-off": { switch: string; reason: Finding };
  "switch-cannot-be-used": { switch: string; error: string };
  "aircraft-not-worked-out": { aircraft: string; error: string };
  "no-estimate": { aircraft: string; reason: Finding };
  "no-plan": { aircraft: string; reason: Finding };
  // Why a plan no longer stands.
  "aircraft-was-started": Nothing;
  "departure-no-longer-wanted": Nothing;
  // What the live estimate noticed, and how sure it is [0..1].
  "heater-seems-cold": { chance: number };
  "cover-seems-off": { chance: number };
  "probe-seems-out": { chance: number };
}
