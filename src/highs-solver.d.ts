import type { Highs } from "highs";
import type { SolveMilp } from "./base-plan/index.js";
/**
 * HiGHS as the solver of a base plan's programs. The answer is proven: no gap is left between it and the bound.
 * @param load brings the WebAssembly in, at the first program
 */
export declare function highsSolver(load: () => Promise<Highs>): SolveMilp;
