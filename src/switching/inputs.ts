import type { Finding } from "../findings/index.js";
import type { SwitchFault } from "./faults.js";
import type { DurableState } from "./state.js";

/** When an input came: both clocks, because neither alone can be trusted. */
export interface Instant {
  /** [s] of a clock that never steps; its zero has no meaning. */
  readonly mono: number;
  /** [ms] since 1970 UTC by the wall clock, which can be set. */
  readonly wall: number;
}

export type OnOff = "on" | "off";

/** When the heater should be on, by the wall clock [ms]: from (inclusive) to (exclusive). */
export interface PlanWindow {
  readonly from: number;
  readonly to: number;
  readonly planId: string;
}

export type SwitchEvent =
  /** The process has started; `saved` is what was saved last, undefined when nothing ever was. */
  | { readonly kind: "started"; readonly saved: unknown }
  | { readonly kind: "tick" }
  | { readonly kind: "plan"; readonly plan: PlanWindow | null }
  /** The device says what it is, after the last command and not from memory. */
  | { readonly kind: "confirmed"; readonly is: OnOff }
  | { readonly kind: "command-failed"; readonly to: OnOff }
  /** `at`: [ms] since 1970 UTC, when it was measured. */
  | { readonly kind: "reading"; readonly probe: string; readonly at: number; readonly tempC: number }
  | { readonly kind: "device"; readonly online: boolean }
  | { readonly kind: "store"; readonly writable: boolean }
  /** The state of that number, or a later one, is durable. */
  | { readonly kind: "saved"; readonly id: number }
  /** A person's wish; it ends by itself after `forS` [s]. "plan" takes it back. */
  | { readonly kind: "by-hand"; readonly to: OnOff | "plan"; readonly forS: number }
  | { readonly kind: "acknowledge"; readonly fault: SwitchFault }
  | { readonly kind: "stop" };

export type SwitchInput = Instant & SwitchEvent;
export type InputKind = SwitchEvent["kind"];

export const INPUT_KINDS: readonly InputKind[] = [
  "started",
  "tick",
  "plan",
  "confirmed",
  "command-failed",
  "reading",
  "device",
  "store",
  "saved",
  "by-hand",
  "acknowledge",
  "stop",
];

/** Something for the logbook. */
export type SwitchFact =
  | { readonly kind: "switch-commanded"; readonly to: OnOff; readonly reason: Finding }
  | { readonly kind: "switch-confirmed"; readonly is: OnOff }
  | {
      readonly kind: "fault";
      readonly fault: SwitchFault;
      readonly text: Finding;
      readonly probe?: string;
    }
  | { readonly kind: "fault-cleared"; readonly fault: SwitchFault };

/** To be carried out in the order given; nothing waits for anything. */
export type SwitchOrder =
  /** `onTimeS`: [s] after which the device is to go off by itself. */
  | { readonly do: "command"; readonly to: OnOff; readonly onTimeS?: number }
  | { readonly do: "record"; readonly fact: SwitchFact }
  /** Keep it durably in place of what was saved before, then say "saved" with this number. */
  | { readonly do: "save"; readonly id: number; readonly saved: DurableState }
  /** What a person asked for was not taken. */
  | { readonly do: "refuse"; readonly reason: Finding };
