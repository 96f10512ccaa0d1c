import type { Highs, ModelData } from "highs";
import type { BinaryProgram, MilpAnswer, SolveMilp } from "../base-plan/index.js";

/** [s] after which a program is given up: a plan has to come while somebody waits for it. */
const TIME_LIMIT = 20;

/**
 * The programs come reduced, and their relaxation is near: presolve and the search for a first solution by jumping cost
 * more than they save, at 12 aircraft and at 24 (benchmarks/base-plan.mjs).
 */
const OPTIONS = {
  ...{ mip_rel_gap: 0, mip_abs_gap: 0, time_limit: TIME_LIMIT, output_flag: false },
  ...{ presolve: "off", mip_heuristic_run_feasibility_jump: false },
};

/**
 * HiGHS as the solver of a base plan's programs. The answer is proven: no gap is left between it and the bound.
 * @param load brings the WebAssembly in, at the first program
 */
export function highsSolver(load: () => Promise<Highs>): SolveMilp {
  let loading: Promise<Highs> | undefined;
  return async (program) => {
    loading ??= load();
    const highs = await loading;
    const { optimal, infeasible } = highs.constants.modelStatus;
    return highs.withModel(modelOf(program, highs), (model): MilpAnswer => {
      model.options.set(OPTIONS);
      const { modelStatus } = model.run();
      if (modelStatus === optimal) return { status: "optimal", values: model.getSolution().colValue };
      return {
        status: modelStatus === infeasible ? "infeasible" : "stopped",
        values: new Float64Array(0),
      };
    });
  };
}

function modelOf({ costs, rows }: BinaryProgram, highs: Highs): ModelData {
  const [numCols, numRows] = [costs.length, rows.length];
  const starts = new Int32Array(numRows + 1);
  rows.forEach(({ columns }, r) => {
    starts[r + 1] = starts[r] + columns.length;
  });
  return {
    ...{ numCols, numRows },
    colCost: Float64Array.from(costs),
    colLower: new Float64Array(numCols),
    colUpper: new Float64Array(numCols).fill(1),
    integrality: new Int32Array(numCols).fill(highs.constants.variableType.integer),
    rowLower: Float64Array.from(rows, ({ least }) => Math.max(least, -highs.infinity)),
    rowUpper: Float64Array.from(rows, ({ most }) => Math.min(most, highs.infinity)),
    matrix: {
      ...{ format: "csr", numRows, numCols, starts },
      indices: Int32Array.from(rows.flatMap(({ columns }) => columns)),
      values: Float64Array.from(rows.flatMap(({ coefficients }) => coefficients)),
    },
  };
}
