import type { SolveRequest, SolveStatus } from "./system.js";

/** What happened at time `t` and what the caller can do, in one sentence; empty when completed. */
export function remedyOf(status: SolveStatus, t: number, request: SolveRequest): string {
  switch (status) {
    case "completed":
      return "";
    case "cancelled":
      return `Stopped by the caller at t = ${t}; call again from there to go on.`;
    case "too-many-steps":
      return `Step limit reached at t = ${t} of ${request.end}: raise maximumSteps, loosen the tolerance, or list the times where the derivative jumps.`;
    case "step-too-small":
      return `No step meets the tolerance at t = ${t}: the solution may grow without bound or jump there; list known jumps, check the Jacobian, or loosen the tolerance.`;
    case "not-finite":
      return `The derivative, its Jacobian or its time derivative is not finite at or just after t = ${t}: check parameters and the state there, and keep the derivative defined for nearby states.`;
    case "out-of-range":
      return `Every step from t = ${t} ends outside the range of ${request.system.range?.join(" … ")}: check the state and the parameters there.`;
    case "singular":
      return `The linear system could not be factorised at t = ${t} with any step: check the Jacobian there for wrong or huge entries.`;
  }
}
