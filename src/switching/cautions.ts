import { type Finding, finding } from "../findings/index.js";
import type { SwitchDescription } from "./description.js";
import { switchProtocol } from "./protocols/index.js";

/**
 * What a person must know of a switch that is allowed but not safe in every case. Where nobody else switches off, a missing
 * on-time is no caution but a fault.
 */
export function cautionsOf({
  on_time_s,
  via,
}: Pick<SwitchDescription, "on_time_s" | "via">): readonly Finding[] {
  const isWatched = on_time_s !== undefined || !switchProtocol(via).hasLastWill;
  return isWatched ? [] : [finding("switch-no-on-time", {})];
}
