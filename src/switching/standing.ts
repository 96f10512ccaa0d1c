import type { Finding } from "../findings/index.js";
import { holdsOf, isPowered, isWanted } from "./holds.js";
import type { SwitchRules } from "./rules.js";
import type { SwitchState } from "./state.js";

/** For whoever shows the switch: what it does, and what holds it off. */
export interface SwitchStanding {
  readonly phase: SwitchState["phase"];
  readonly wanted: boolean;
  readonly powered: boolean;
  readonly holds: readonly Finding[];
}

export function standingOf(rules: SwitchRules, state: SwitchState): SwitchStanding {
  return {
    phase: state.phase,
    wanted: isWanted(state),
    powered: isPowered(state),
    holds: holdsOf(rules, state).map(({ text }) => text),
  };
}
