import { knownPlan, type PlanState } from "../data/plan-state.js";

export type Standing = "good" | "care" | "bad" | "unknown";

/** How a plan stands, for mark and colour; words say the same. */
export function standingOf(state: PlanState | undefined): Standing {
  const plan = knownPlan(state);
  if (plan === undefined) return "unknown";
  if (plan.status === "not-reachable") return plan.chance >= 0.5 ? "care" : "bad";
  return "good";
}
