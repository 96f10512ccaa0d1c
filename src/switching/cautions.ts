import type { SwitchDescription } from "./description.js";
import { switchProtocol } from "./protocols/index.js";

/** What a person must know of a switch that is allowed but not safe in every case. */
export const SWITCH_CAUTIONS = {
  "no-on-time":
    "This switch does not go off by itself. If the base's computer stops, the broker switches it off. If the broker or " +
    "the network stops too, the heater stays on. Use a device that goes off by itself, or put a mains timer in the line.",
} as const;

export type SwitchCaution = keyof typeof SWITCH_CAUTIONS;

/** Where nobody else switches off, a missing on-time is no caution but a fault. */
export function cautionsOf({
  on_time_s,
  via,
}: Pick<SwitchDescription, "on_time_s" | "via">): readonly SwitchCaution[] {
  return on_time_s === undefined && switchProtocol(via).hasLastWill ? ["no-on-time"] : [];
}
