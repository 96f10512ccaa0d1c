import type { KnownPlan } from "../../first-screen/index.js";
import { knownPlan, type PlanState } from "../data/plan-state.js";

export type Standing = "good" | "look" | "care" | "bad" | "unknown";

/** How a plan stands, for mark and colour; words say the same. */
export function standingOf(state: PlanState | undefined): Standing {
  return standingOfPlan(knownPlan(state));
}

/** A tick only with the wanted chance, and with nothing to be looked at first. */
export function standingOfPlan(plan: KnownPlan | undefined): Standing {
  if (plan === undefined) return "unknown";
  if (plan.status === "look-first") return "look";
  if (plan.status !== "not-reachable" && plan.chance >= plan.wanted_chance) return "good";
  return plan.chance >= 0.5 ? "care" : "bad";
}
