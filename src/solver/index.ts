export { plainSystem } from "./plain-system.js";
export { solve } from "./solve.js";
export type {
  EnsembleSystem,
  SolveRequest,
  SolveResult,
  SolveStatus,
  SparsityPattern,
  Step,
} from "./system.js";
