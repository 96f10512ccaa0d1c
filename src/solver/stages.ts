import * as rodas from "./coefficients.js";

/**
 * All vectors of one step lie in one work array, row after row, each [component][member] and `length` long. One array
 * instead of fourteen because V8 checks every array anew at every access inside a loop; with one, the loops below take
 * about half the time. Sums of indices are cut to 32 bits (`| 0`), which spares their overflow check.
 * The state at the start and at the end of the step swap rows 0 and 1; `y` and `yNext` say where they are.
 */
export const Row = {
  slopeInTime: 2,
  stage: 3,
  u1: 4,
  u2: 5,
  u3: 6,
  u4: 7,
  u5: 8,
  u6: 9,
  k1: 10,
  k2: 11,
  slope: 12,
  rate: 13,
} as const;

export const ROWS = 14;

/** Right-hand side of stage 1, complete. */
export function stage1(w: Float64Array, length: number, h: number): void {
  const f = Row.slope * length;
  const ft = Row.slopeInTime * length;
  const u1 = Row.u1 * length;
  const e = h * rodas.d1;
  for (let k = 0; k < length; k++) w[(u1 + k) | 0] = w[(f + k) | 0] + e * w[(ft + k) | 0];
}

/** Stage 2: the state for f, and in u2 the right-hand side but for f. Stages 3 to 6 alike. */
export function stage2(w: Float64Array, length: number, y: number, h: number): void {
  const ft = Row.slopeInTime * length;
  const stage = Row.stage * length;
  const u1 = Row.u1 * length;
  const u2 = Row.u2 * length;
  const { a21 } = rodas;
  const C21 = rodas.C21 / h;
  const e = h * rodas.d2;
  for (let k = 0; k < length; k++) {
    const v1 = w[(u1 + k) | 0];
    w[(stage + k) | 0] = w[(y + k) | 0] + a21 * v1;
    w[(u2 + k) | 0] = C21 * v1 + e * w[(ft + k) | 0];
  }
}

export function stage3(w: Float64Array, length: number, y: number, h: number): void {
  const ft = Row.slopeInTime * length;
  const stage = Row.stage * length;
  const u1 = Row.u1 * length;
  const u2 = Row.u2 * length;
  const u3 = Row.u3 * length;
  const { a31, a32 } = rodas;
  const C31 = rodas.C31 / h;
  const C32 = rodas.C32 / h;
  const e = h * rodas.d3;
  for (let k = 0; k < length; k++) {
    const v1 = w[(u1 + k) | 0];
    const v2 = w[(u2 + k) | 0];
    w[(stage + k) | 0] = w[(y + k) | 0] + a31 * v1 + a32 * v2;
    w[(u3 + k) | 0] = C31 * v1 + C32 * v2 + e * w[(ft + k) | 0];
  }
}

export function stage4(w: Float64Array, length: number, y: number, h: number): void {
  const ft = Row.slopeInTime * length;
  const stage = Row.stage * length;
  const u1 = Row.u1 * length;
  const u2 = Row.u2 * length;
  const u3 = Row.u3 * length;
  const u4 = Row.u4 * length;
  const { a41, a42, a43 } = rodas;
  const C41 = rodas.C41 / h;
  const C42 = rodas.C42 / h;
  const C43 = rodas.C43 / h;
  const e = h * rodas.d4;
  for (let k = 0; k < length; k++) {
    const v1 = w[(u1 + k) | 0];
    const v2 = w[(u2 + k) | 0];
    const v3 = w[(u3 + k) | 0];
    w[(stage + k) | 0] = w[(y + k) | 0] + a41 * v1 + a42 * v2 + a43 * v3;
    w[(u4 + k) | 0] = C41 * v1 + C42 * v2 + C43 * v3 + e * w[(ft + k) | 0];
  }
}

export function stage5(w: Float64Array, length: number, y: number, h: number): void {
  const stage = Row.stage * length;
  const u1 = Row.u1 * length;
  const u2 = Row.u2 * length;
  const u3 = Row.u3 * length;
  const u4 = Row.u4 * length;
  const u5 = Row.u5 * length;
  const { a51, a52, a53, a54 } = rodas;
  const C51 = rodas.C51 / h;
  const C52 = rodas.C52 / h;
  const C53 = rodas.C53 / h;
  const C54 = rodas.C54 / h;
  for (let k = 0; k < length; k++) {
    const v1 = w[(u1 + k) | 0];
    const v2 = w[(u2 + k) | 0];
    const v3 = w[(u3 + k) | 0];
    const v4 = w[(u4 + k) | 0];
    w[(stage + k) | 0] = w[(y + k) | 0] + a51 * v1 + a52 * v2 + a53 * v3 + a54 * v4;
    w[(u5 + k) | 0] = C51 * v1 + C52 * v2 + C53 * v3 + C54 * v4;
  }
}

export function stage6(w: Float64Array, length: number, h: number): void {
  const stage = Row.stage * length;
  const u1 = Row.u1 * length;
  const u2 = Row.u2 * length;
  const u3 = Row.u3 * length;
  const u4 = Row.u4 * length;
  const u5 = Row.u5 * length;
  const u6 = Row.u6 * length;
  const C61 = rodas.C61 / h;
  const C62 = rodas.C62 / h;
  const C63 = rodas.C63 / h;
  const C64 = rodas.C64 / h;
  const C65 = rodas.C65 / h;
  for (let k = 0; k < length; k++) {
    const v5 = w[(u5 + k) | 0];
    w[(stage + k) | 0] += v5;
    w[(u6 + k) | 0] =
      C61 * w[(u1 + k) | 0] +
      C62 * w[(u2 + k) | 0] +
      C63 * w[(u3 + k) | 0] +
      C64 * w[(u4 + k) | 0] +
      C65 * v5;
  }
}

/** Adds f of the stage to the right-hand side at `u`. */
export function addRate(w: Float64Array, length: number, u: number): void {
  const rate = Row.rate * length;
  for (let k = 0; k < length; k++) w[(u + k) | 0] += w[(rate + k) | 0];
}

/** Completes the state at `yNext` and returns the scaled error of the worst member. */
export function finishStep(
  w: Float64Array,
  length: number,
  y: number,
  yNext: number,
  sumOfSquares: Float64Array,
  absolute: Float64Array,
  relative: number,
): number {
  const members = sumOfSquares.length;
  const stage = Row.stage * length;
  const u6 = Row.u6 * length;
  sumOfSquares.fill(0);
  for (let from = 0, i = 0; from < length; from += members, i++) {
    const allowed = absolute[i];
    for (let m = 0; m < members; m++) {
      const k = (from + m) | 0;
      const error = w[(u6 + k) | 0];
      const after = w[(stage + k) | 0] + error;
      w[(yNext + k) | 0] = after;
      const larger = Math.max(Math.abs(w[(y + k) | 0]), Math.abs(after));
      const scaled = error / (allowed + relative * larger);
      sumOfSquares[m] += scaled * scaled;
    }
  }
  let worst = 0;
  for (let m = 0; m < members; m++) {
    // Written so that NaN becomes the worst.
    if (!(sumOfSquares[m] <= worst)) worst = sumOfSquares[m];
    if (Number.isNaN(worst)) break;
  }
  return Math.sqrt((worst * members) / length);
}

/** Whether the whole state at the end of the step lies in the range. */
export function liesWithin(
  w: Float64Array,
  length: number,
  yNext: number,
  [lowest, highest]: readonly [number, number],
): boolean {
  for (let k = 0; k < length; k++) {
    const value = w[(yNext + k) | 0];
    if (value < lowest || value > highest) return false;
  }
  return true;
}

export function prepareDense(w: Float64Array, length: number): void {
  const { h21, h22, h23, h24, h25, h31, h32, h33, h34, h35 } = rodas;
  const u1 = Row.u1 * length;
  const u2 = Row.u2 * length;
  const u3 = Row.u3 * length;
  const u4 = Row.u4 * length;
  const u5 = Row.u5 * length;
  const k1 = Row.k1 * length;
  const k2 = Row.k2 * length;
  for (let k = 0; k < length; k++) {
    const v1 = w[(u1 + k) | 0];
    const v2 = w[(u2 + k) | 0];
    const v3 = w[(u3 + k) | 0];
    const v4 = w[(u4 + k) | 0];
    const v5 = w[(u5 + k) | 0];
    w[(k1 + k) | 0] = h21 * v1 + h22 * v2 + h23 * v3 + h24 * v4 + h25 * v5;
    w[(k2 + k) | 0] = h31 * v1 + h32 * v2 + h33 * v3 + h34 * v4 + h35 * v5;
  }
}

/** State at fraction θ of the step, written from out[offset] on. */
export function denseOutput(
  w: Float64Array,
  length: number,
  y: number,
  yNext: number,
  theta: number,
  out: Float64Array,
  offset: number,
): void {
  const k1 = Row.k1 * length;
  const k2 = Row.k2 * length;
  const rest = 1 - theta;
  for (let k = 0; k < length; k++) {
    const bend = w[(k1 + k) | 0] + theta * w[(k2 + k) | 0];
    out[(offset + k) | 0] = rest * w[(y + k) | 0] + theta * (w[(yNext + k) | 0] + rest * bend);
  }
}
