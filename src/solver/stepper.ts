import { createSparseLu } from "../numerics/index.js";
import * as rodas from "./coefficients.js";
import type { EnsembleSystem, SolveRequest } from "./system.js";

export type AttemptOutcome = "done" | "singular" | "not-finite";

/** One-step method with its storage: everything is allocated here, once. */
export interface Stepper {
  /** State at the start of the step. */
  state(): Float64Array;
  /** State at the end of the step last tried. */
  next(): Float64Array;
  /** Evaluates f, ∂f/∂y and ∂f/∂t at `t` and the current state; false when one of them is not finite. */
  begin(t: number): boolean;
  /** Tries the step to `end`; `errorNorm` is then its scaled error, ≤ 1 within tolerance. */
  attempt(t: number, end: number): AttemptOutcome;
  errorNorm(): number;
  /** Dense output of the step last tried at fraction θ of it, written from out[offset] on. */
  interpolate(theta: number, out: Float64Array, offset: number): void;
  /** Makes the end of the step tried the current state. */
  accept(): void;
  /** dy/dt at the start of the step. */
  slope(): Float64Array;
  derivatives(): number;
  factorisations(): number;
}

export type Tolerance = SolveRequest["tolerance"];

export function createStepper(system: EnsembleSystem, initial: Float64Array, tolerance: Tolerance): Stepper {
  const { size, members, pattern } = system;
  const total = size * members;
  const { absolute, relative } = tolerance;
  const lu = createSparseLu(pattern, members);
  const jacobian = new Float64Array(pattern.column.length * members);
  const slope = new Float64Array(total);
  const slopeInTime = new Float64Array(total);
  const stage = new Float64Array(total);
  const rate = new Float64Array(total);
  const u1 = new Float64Array(total);
  const u2 = new Float64Array(total);
  const u3 = new Float64Array(total);
  const u4 = new Float64Array(total);
  const u5 = new Float64Array(total);
  const u6 = new Float64Array(total);
  const k1 = new Float64Array(total);
  const k2 = new Float64Array(total);
  const sumOfSquares = new Float64Array(members);
  let y = Float64Array.from(initial);
  let yNext = Float64Array.from(initial);
  let denseReady = false;
  let errorNorm = 0;
  let derivatives = 0;
  let factorisations = 0;

  function finishStage(t: number, u: Float64Array): void {
    system.derivative(t, stage, rate);
    derivatives++;
    for (let k = 0; k < total; k++) u[k] += rate[k];
    lu.solve(u);
  }

  function finishStep(): void {
    sumOfSquares.fill(0);
    for (let i = 0; i < size; i++) {
      const from = i * members;
      for (let m = 0; m < members; m++) {
        const k = from + m;
        const error = u6[k];
        const after = stage[k] + error;
        yNext[k] = after;
        const scaled = error / (absolute + relative * Math.max(Math.abs(y[k]), Math.abs(after)));
        sumOfSquares[m] += scaled * scaled;
      }
    }
    let worst = 0;
    for (let m = 0; m < members; m++) {
      // Written so that NaN becomes the worst.
      if (!(sumOfSquares[m] <= worst)) worst = sumOfSquares[m];
    }
    errorNorm = Math.sqrt(worst / size);
  }

  function prepareDense(): void {
    const { h21, h22, h23, h24, h25, h31, h32, h33, h34, h35 } = rodas;
    for (let k = 0; k < total; k++) {
      const v1 = u1[k];
      const v2 = u2[k];
      const v3 = u3[k];
      const v4 = u4[k];
      const v5 = u5[k];
      k1[k] = h21 * v1 + h22 * v2 + h23 * v3 + h24 * v4 + h25 * v5;
      k2[k] = h31 * v1 + h32 * v2 + h33 * v3 + h34 * v4 + h35 * v5;
    }
    denseReady = true;
  }

  return {
    state: () => y,
    next: () => yNext,
    slope: () => slope,
    errorNorm: () => errorNorm,
    derivatives: () => derivatives,
    factorisations: () => factorisations,
    begin(t) {
      system.derivative(t, y, slope);
      system.jacobian(t, y, jacobian);
      system.timeDerivative(t, y, slopeInTime);
      derivatives++;
      return allFinite(slope) && allFinite(jacobian) && allFinite(slopeInTime);
    },
    attempt(t, end) {
      const h = end - t;
      denseReady = false;
      factorisations++;
      if (!lu.factorise(1 / (h * rodas.gamma), jacobian)) return "singular";

      const e1 = h * rodas.d1;
      for (let k = 0; k < total; k++) u1[k] = slope[k] + e1 * slopeInTime[k];
      lu.solve(u1);

      const { a21 } = rodas;
      const C21 = rodas.C21 / h;
      const e2 = h * rodas.d2;
      for (let k = 0; k < total; k++) {
        const v1 = u1[k];
        stage[k] = y[k] + a21 * v1;
        u2[k] = C21 * v1 + e2 * slopeInTime[k];
      }
      finishStage(t + rodas.c2 * h, u2);

      const { a31, a32 } = rodas;
      const C31 = rodas.C31 / h;
      const C32 = rodas.C32 / h;
      const e3 = h * rodas.d3;
      for (let k = 0; k < total; k++) {
        const v1 = u1[k];
        const v2 = u2[k];
        stage[k] = y[k] + a31 * v1 + a32 * v2;
        u3[k] = C31 * v1 + C32 * v2 + e3 * slopeInTime[k];
      }
      finishStage(t + rodas.c3 * h, u3);

      const { a41, a42, a43 } = rodas;
      const C41 = rodas.C41 / h;
      const C42 = rodas.C42 / h;
      const C43 = rodas.C43 / h;
      const e4 = h * rodas.d4;
      for (let k = 0; k < total; k++) {
        const v1 = u1[k];
        const v2 = u2[k];
        const v3 = u3[k];
        stage[k] = y[k] + a41 * v1 + a42 * v2 + a43 * v3;
        u4[k] = C41 * v1 + C42 * v2 + C43 * v3 + e4 * slopeInTime[k];
      }
      finishStage(t + rodas.c4 * h, u4);

      const { a51, a52, a53, a54 } = rodas;
      const C51 = rodas.C51 / h;
      const C52 = rodas.C52 / h;
      const C53 = rodas.C53 / h;
      const C54 = rodas.C54 / h;
      for (let k = 0; k < total; k++) {
        const v1 = u1[k];
        const v2 = u2[k];
        const v3 = u3[k];
        const v4 = u4[k];
        stage[k] = y[k] + a51 * v1 + a52 * v2 + a53 * v3 + a54 * v4;
        u5[k] = C51 * v1 + C52 * v2 + C53 * v3 + C54 * v4;
      }
      finishStage(end, u5);

      const C61 = rodas.C61 / h;
      const C62 = rodas.C62 / h;
      const C63 = rodas.C63 / h;
      const C64 = rodas.C64 / h;
      const C65 = rodas.C65 / h;
      for (let k = 0; k < total; k++) {
        const v5 = u5[k];
        stage[k] += v5;
        u6[k] = C61 * u1[k] + C62 * u2[k] + C63 * u3[k] + C64 * u4[k] + C65 * v5;
      }
      finishStage(end, u6);
      finishStep();
      return Number.isFinite(errorNorm) ? "done" : "not-finite";
    },
    interpolate(theta, out, offset) {
      if (!denseReady) prepareDense();
      const rest = 1 - theta;
      for (let k = 0; k < total; k++) {
        out[offset + k] = rest * y[k] + theta * (yNext[k] + rest * (k1[k] + theta * k2[k]));
      }
    },
    accept() {
      const former = y;
      y = yNext;
      yNext = former;
    },
  };
}

function allFinite(values: Float64Array): boolean {
  let sum = 0;
  for (let k = 0; k < values.length; k++) sum += values[k] - values[k];
  return sum === 0;
}
