import { createSparseLu } from "../numerics/index.js";
import { c2, c3, c4, gamma } from "./coefficients.js";
import * as stages from "./stages.js";
import { ROWS, Row } from "./stages.js";
import type { EnsembleSystem, SolveRequest } from "./system.js";

export type Tolerance = SolveRequest["tolerance"];
export type AttemptOutcome = "done" | "singular" | "not-finite" | "out-of-range";

/** One step of the method at a time; everything it needs is allocated when it is made. */
export interface Stepper {
  /** State and dy/dt at the start of the step. */
  state(): Float64Array;
  slope(): Float64Array;
  /**
   * Evaluates f, ∂f/∂y and ∂f/∂t at `t` and the current state; false when f is not finite. Where the others are not, no step
   * from there is.
   */
  begin(t: number): boolean;
  /** Tries the step from `t` to `end`. */
  attempt(t: number, end: number): AttemptOutcome;
  /** Scaled error of the step last tried, ≤ 1 within tolerance. */
  errorNorm(): number;
  /** Dense output at fraction θ of the step last tried, written from out[offset] on. */
  interpolate(theta: number, out: Float64Array, offset: number): void;
  /** Makes the end of the step last tried the current state. */
  accept(): void;
  derivatives(): number;
  factorisations(): number;
}

export function createStepper(system: EnsembleSystem, initial: Float64Array, tolerance: Tolerance): Stepper {
  const { members, pattern, range } = system;
  const { relative } = tolerance;
  const absolute = absolutePerComponent(tolerance, system.size);
  const length = initial.length;
  const lu = createSparseLu(pattern, members, ROWS * length);
  const jacobian = new Float64Array(pattern.column.length * members);
  const sumOfSquares = new Float64Array(members);
  const w = lu.memory;
  const row = (index: number) => w.subarray(index * length, (index + 1) * length);
  const slopeInTime = row(Row.slopeInTime);
  const slope = row(Row.slope);
  const stage = row(Row.stage);
  const rate = row(Row.rate);
  let state = row(0);
  let stateNext = row(1);
  let y = 0;
  let yNext = length;
  let denseReady = false;
  let errorNorm = 0;
  let derivatives = 0;
  let factorisations = 0;
  state.set(initial);

  function finishStage(t: number, index: number): void {
    system.derivative(t, stage, rate);
    derivatives++;
    stages.addRate(w, length, index * length);
    lu.solve(index * length);
  }

  return {
    state: () => state,
    slope: () => slope,
    errorNorm: () => errorNorm,
    derivatives: () => derivatives,
    factorisations: () => factorisations,
    begin(t) {
      system.jacobian(t, state, jacobian, slope);
      system.timeDerivative(t, state, slopeInTime);
      derivatives++;
      return allFinite(slope);
    },
    attempt(t, end) {
      const h = end - t;
      denseReady = false;
      factorisations++;
      if (!lu.factorise(1 / (h * gamma), jacobian)) return allFinite(jacobian) ? "singular" : "not-finite";
      stages.stage1(w, length, h);
      lu.solve(Row.u1 * length);
      stages.stage2(w, length, y, h);
      finishStage(t + c2 * h, Row.u2);
      stages.stage3(w, length, y, h);
      finishStage(t + c3 * h, Row.u3);
      stages.stage4(w, length, y, h);
      finishStage(t + c4 * h, Row.u4);
      stages.stage5(w, length, y, h);
      finishStage(end, Row.u5);
      stages.stage6(w, length, h);
      finishStage(end, Row.u6);
      errorNorm = stages.finishStep(w, length, y, yNext, sumOfSquares, absolute, relative);
      if (!Number.isFinite(errorNorm)) return "not-finite";
      return range === undefined || stages.liesWithin(w, length, yNext, range) ? "done" : "out-of-range";
    },
    interpolate(theta, out, offset) {
      if (!denseReady) stages.prepareDense(w, length);
      denseReady = true;
      stages.denseOutput(w, length, y, yNext, theta, out, offset);
    },
    accept() {
      const formerState = state;
      state = stateNext;
      stateNext = formerState;
      yNext = y;
      y = length - y;
    },
  };
}

/** Absolute tolerance of every component. */
export function absolutePerComponent({ absolute }: Tolerance, size: number): Float64Array {
  return typeof absolute === "number" ? new Float64Array(size).fill(absolute) : absolute;
}

function allFinite(values: Float64Array): boolean {
  let sum = 0;
  for (let k = 0; k < values.length; k++) sum += values[k] - values[k];
  return sum === 0;
}
