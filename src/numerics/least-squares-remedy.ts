import type { LeastSquaresStatus } from "./least-squares.js";

/** What happened and what the caller can do, in one sentence; empty when converged. */
export function remedyOfFit(status: LeastSquaresStatus, offset: number): string {
  const left = `with a relative offset of ${offset.toExponential(1)}`;
  switch (status) {
    case "converged":
      return "";
    case "rank-deficient":
      return "The sum of squares is least, but not at this x alone: hold fast the parameters that parameterCovariance names as undetermined, or add what is known of them as residuals; where they only mattered far more at the start, start again from x.";
    case "cancelled":
      return `Stopped by the caller ${left}; start from x to go on.`;
    case "stalled":
      return `No step, however short, makes the sum of squares smaller, ${left}: check the Jacobian against differences, or loosen the tolerance to the noise of the residuals.`;
    case "too-many-evaluations":
      return `Limit of evaluations reached ${left}: start from x to go on, or look for parameters that the residuals hardly determine.`;
    case "no-residuals-at-start":
      return "Residuals or Jacobian are not finite at the start: choose another start.";
  }
}
