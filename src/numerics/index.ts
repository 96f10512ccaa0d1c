export { type EliminationPlan, eliminationPlan } from "./elimination.js";
export { findRoot } from "./root.js";
export { createSparseLu, type SparseLu } from "./sparse-lu.js";
export { checkPattern, densePattern, type SparsityPattern } from "./sparsity.js";
export { UniformTable } from "./uniform-table.js";
