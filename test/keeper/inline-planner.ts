import type { Planner } from "../../src/keeper/planner.js";
import { estimateNow, planOf } from "../../src/questions/index.js";

/** Plans in this thread, with few members: the same core that the planning thread runs. */
export function inlinePlanner(
  members = 40,
): Planner & { readonly jobs: { aircraft: string; resumed: boolean }[] } {
  const jobs: { aircraft: string; resumed: boolean }[] = [];
  return {
    jobs,
    waiting: 0,
    async update({ aircraft, state, now, readings, saved, withPlan }) {
      const estimate = estimateNow(state, aircraft, {
        now,
        readings,
        ...(saved === undefined ? {} : { saved }),
      });
      jobs.push({ aircraft, resumed: estimate.status === "completed" && estimate.result.resumed });
      if (!withPlan) return { estimate };
      const now_ = estimate.status === "completed" ? { estimate: estimate.result } : {};
      return { estimate, plan: planOf(state, aircraft, { now, members, ...now_ }) };
    },
    close: async () => undefined,
  };
}
