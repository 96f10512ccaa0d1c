export { type PlainProblem, plainSystem } from "./plain-system.js";
export { solve } from "./solve.js";
export type {
  CrossingEvent,
  EnsembleSystem,
  Linearisation,
  SolveRequest,
  SolveResult,
  SolveStatistics,
  SolveStatus,
  SparsityPattern,
  Step,
} from "./system.js";
