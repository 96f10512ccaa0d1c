export { type EliminationPlan, eliminationPlan } from "./elimination.js";
export { normalQuantile } from "./normal.js";
export { quantile, quantileOfSorted } from "./quantile.js";
export { createRandom, latinHypercubeNormals, type Random } from "./random.js";
export { findRoot } from "./root.js";
export { createSparseLu, type SparseLu } from "./sparse-lu.js";
export { checkPattern, densePattern, type SparsityPattern } from "./sparsity.js";
export { UniformTable } from "./uniform-table.js";
