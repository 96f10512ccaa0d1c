/** [s] after which a program is given up: a plan has to come while somebody waits for it. */
const TIME_LIMIT = 20;
/**
 * HiGHS as the solver of a base plan's programs. The answer is proven: no gap is left between it and the bound.
 * @param load brings the WebAssembly in, at the first program
 */
export function highsSolver(load) {
  let loading;
  return async (lp) => {
    loading ??= load();
    const highs = await loading;
    const solution = highs.solve(lp, {
      mip_rel_gap: 0,
      mip_abs_gap: 0,
      time_limit: TIME_LIMIT,
      output_flag: false,
    });
    const values = new Map();
    if (solution.Status === "Optimal") {
      for (const [name, column] of Object.entries(solution.Columns)) {
        if ("Primal" in column && column.Primal !== 0) values.set(name, column.Primal);
      }
    }
    return { status: statusOf(solution.Status), values };
  };
}
function statusOf(status) {
  if (status === "Optimal") return "optimal";
  return status === "Infeasible" ? "infeasible" : "stopped";
}
//# sourceMappingURL=highs-solver.js.map
