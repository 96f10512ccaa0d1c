import type { Highs } from "highs";
import type { MilpAnswer, SolveMilp } from "./base-plan/index.js";

/** [s] after which a program is given up: a plan has to come while somebody waits for it. */
const TIME_LIMIT = 20;

/**
 * The programs come reduced, and their relaxation is near: presolve and the search for a first solution by jumping cost
 * more than they save, at 12 aircraft and at 24 (benchmarks/base-plan.mjs).
 */
const OPTIONS = {
  ...{ mip_rel_gap: 0, mip_abs_gap: 0, time_limit: TIME_LIMIT, output_flag: false },
  ...{ presolve: "off" as const, mip_heuristic_run_feasibility_jump: false },
};

/**
 * HiGHS as the solver of a base plan's programs. The answer is proven: no gap is left between it and the bound.
 * @param load brings the WebAssembly in, at the first program
 */
export function highsSolver(load: () => Promise<Highs>): SolveMilp {
  let loading: Promise<Highs> | undefined;
  return async (lp) => {
    loading ??= load();
    const highs = await loading;
    const solution = highs.solve(lp, OPTIONS);
    const values = new Map<string, number>();
    if (solution.Status === "Optimal") {
      for (const [name, column] of Object.entries(solution.Columns)) {
        if ("Primal" in column && column.Primal !== 0) values.set(name, column.Primal);
      }
    }
    return { status: statusOf(solution.Status), values };
  };
}

function statusOf(status: string): MilpAnswer["status"] {
  if (status === "Optimal") return "optimal";
  return status === "Infeasible" ? "infeasible" : "stopped";
}
