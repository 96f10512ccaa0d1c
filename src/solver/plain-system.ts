import { densePattern } from "../numerics/index.js";
import type { EnsembleSystem } from "./system.js";

/** One initial-value problem in plain functions, with a full Jacobian; for tests and small uses. */
export interface PlainProblem {
  readonly size: number;
  readonly derivative: (t: number, y: Float64Array) => ArrayLike<number>;
  /** Rows of ∂f_i/∂y_j. */
  readonly jacobian: (t: number, y: Float64Array) => ArrayLike<ArrayLike<number>>;
  /** ∂f/∂t; leave out when f does not depend on t. */
  readonly timeDerivative?: (t: number, y: Float64Array) => ArrayLike<number>;
}

/** An EnsembleSystem of one member from plain functions. */
export function plainSystem(problem: PlainProblem): EnsembleSystem {
  const { size, derivative, jacobian, timeDerivative } = problem;
  return {
    size,
    members: 1,
    pattern: densePattern(size),
    derivative: (t, y, dydt) => dydt.set(derivative(t, y)),
    linearise(t, y, into) {
      into.slope.set(derivative(t, y));
      const rows = jacobian(t, y);
      for (let i = 0; i < size; i++) into.jacobian.set(rows[i], i * size);
      if (timeDerivative === undefined) into.slopeInTime.fill(0);
      else into.slopeInTime.set(timeDerivative(t, y));
    },
  };
}
