export { inverseOf, lowerCholesky } from "./cholesky.js";
export { leastSquares } from "./least-squares.js";
export { interpolateLinear } from "./linear-interpolation.js";
export { normalProbability, normalQuantile } from "./normal.js";
export { parameterCovariance } from "./parameter-covariance.js";
export { type Band, bandOf, quantile, quantileOfSorted } from "./quantile.js";
export { createRandom, latinHypercubeNormals, type Random } from "./random.js";
export { findRoot } from "./root.js";
export {
  abs,
  add,
  div,
  max,
  mul,
  neg,
  num,
  type RowKernel,
  rowKernel,
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
export { createSparseLu, planSparseLu } from "./sparse-lu.js";
export { densePattern, type SparsityPattern } from "./sparsity.js";
export { lookUp, UniformTable } from "./uniform-table.js";
