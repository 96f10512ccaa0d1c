export { type EliminationPlan, type EntryRows, eliminationPlan } from "./elimination.js";
export {
  type LeastSquaresOptions,
  type LeastSquaresProblem,
  type LeastSquaresProgress,
  type LeastSquaresResult,
  type LeastSquaresStatus,
  leastSquares,
} from "./least-squares.js";
export { interpolateLinear } from "./linear-interpolation.js";
export { normalQuantile } from "./normal.js";
export { type ParameterCovariance, parameterCovariance, residualVariance } from "./parameter-covariance.js";
export { type Band, bandOf, quantile, quantileOfSorted } from "./quantile.js";
export { createRandom, latinHypercubeNormals, type Random } from "./random.js";
export { findRoot } from "./root.js";
export {
  abs,
  add,
  div,
  floor,
  max,
  min,
  mul,
  neg,
  num,
  type RowKernel,
  rowKernel,
  type Statements,
  shared,
  sqrt,
  sub,
  type Term,
  WORD,
} from "./row-kernel.js";
export {
  createRowLayout,
  createRowMemory,
  type PassList,
  type RowLayout,
  type RowMemory,
  type RunKernel,
} from "./row-memory.js";
export { createSparseLu, planSparseLu, type SparseLu } from "./sparse-lu.js";
export { checkPattern, densePattern, type SparsityPattern } from "./sparsity.js";
export { lookUp, UniformTable } from "./uniform-table.js";
