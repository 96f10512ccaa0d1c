import type { SparsityPattern } from "../numerics/index.js";

export type { SparsityPattern };

/**
 * What the solver integrates: an ensemble of M initial-value problems dy/dt = f(t, y) of equal size n and equal
 * Jacobian pattern, advanced together with one step size.
 *
 * Layout everywhere: component `i` of member `m` stands at `[i * members + m]`, so members are the inner loop.
 * Units are the caller's; the solver knows none.
 */
export interface EnsembleSystem {
  /** Number of components n of one member. */
  readonly size: number;
  /** Number of members M. */
  readonly members: number;
  /** Positions of the Jacobian's structural nonzeros. The diagonal is always stored. */
  readonly pattern: SparsityPattern;
  /**
   * Least and greatest value that any component of a solution can have: a step that ends beyond is taken again with a smaller
   * one, whatever its error estimate says. Everything is possible unless given.
   */
  readonly range?: readonly [number, number];
  /** Writes f(t, y) into `dydt` (length n*M). */
  derivative(t: number, y: Float64Array, dydt: Float64Array): void;
  /** Writes f and its slopes at (t, y). */
  linearise(t: number, y: Float64Array, into: Linearisation): void;
}

export interface Linearisation {
  /** f(t, y) (length n*M). */
  readonly slope: Float64Array;
  /** ∂f_i/∂y_j of nonzero k at `[k * members + m]`. */
  readonly jacobian: Float64Array;
  /** ∂f/∂t, explicit time dependence only (length n*M). */
  readonly slopeInTime: Float64Array;
}

/** One accepted step, readable at any time inside it (dense output). Valid only during the callback that gets it. */
export interface Step {
  readonly start: number;
  readonly end: number;
  /** Writes the state at time `t`, start ≤ t ≤ end, into `out` (length n*M). */
  interpolate(t: number, out: Float64Array): void;
}

export interface SolveRequest {
  readonly system: EnsembleSystem;
  /** Initial state (length n*M); not modified. */
  readonly initial: Float64Array;
  readonly start: number;
  readonly end: number;
  /**
   * Error allowed in a step, in the state's units; `absolute` may be given per component (length n) where some are
   * wanted less closely than others.
   */
  readonly tolerance: { readonly absolute: number | Float64Array; readonly relative: number };
  /**
   * Known times, ascending, strictly inside (start, end), where f or its slope jumps. A step ends at each of them and
   * the next one starts afresh, so no step is ever tried across a jump.
   */
  readonly jumps?: ArrayLike<number>;
  /** Whether f itself runs on through a listed time and only its slope jumps there: the step size then stays, unasked. */
  readonly isKink?: (t: number) => boolean;
  /** Called before each smooth stretch [from, to] between jumps, so that the caller can switch what f means there. */
  readonly onStretch?: (from: number, to: number) => void;
  /** Ascending times, equal ones allowed, in [start, end] at which the state is sampled through dense output. */
  readonly sampleTimes?: ArrayLike<number>;
  /** Called after each accepted step; returning false stops with status "cancelled". */
  readonly onStep?: (step: Step) => boolean;
  /** Steps that may be tried, accepted and rejected ones together; 100 000 unless given. */
  readonly maximumSteps?: number;
  /** Chosen from f unless given. */
  readonly firstStep?: number;
  readonly maximumStep?: number;
}

export type SolveStatus =
  | "completed"
  | "cancelled"
  | "too-many-steps"
  | "step-too-small"
  | "not-finite"
  | "out-of-range"
  | "singular";

export interface SolveResult {
  readonly status: SolveStatus;
  /** What happened and what the caller can do about it, in one sentence; empty when completed. */
  readonly remedy: string;
  /** Time reached: `end` when completed. */
  readonly time: number;
  readonly state: Float64Array;
  /** Sampled states, sample s at `[s * n * M + i * M + m]`; samples beyond the time reached are NaN. */
  readonly samples: Float64Array;
  readonly statistics: SolveStatistics;
}

export interface SolveStatistics {
  readonly steps: number;
  readonly rejected: number;
  readonly derivatives: number;
  readonly factorisations: number;
}
