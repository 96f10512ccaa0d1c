import { abs, add, div, max, mul, num, type RowKernel, rowKernel, sub } from "../numerics/index.js";
import type { Tableau } from "./tableau.js";

// The method's formulas, for one member.

/** Right-hand side of the first stage, complete: f is known there. */
const FIRST_STAGE = rowKernel(
  { u0: "row", slope: "row", slopeInTime: "row" },
  ["e"],
  ({ u0, slope, slopeInTime, e }, { set }) => set(u0, add(slope, mul(e, slopeInTime))),
);

/**
 * One kernel a stage. From the second on it takes the rows y, slopeInTime, stage, u_0 … u_i and the numbers a_ij, C_ij / h,
 * h d_i: the state for f goes to `stage`, and to u_i the right-hand side but for f.
 */
export function stageKernels({ d }: Tableau): RowKernel[] {
  return d.map((weight, i) => (i === 0 ? FIRST_STAGE : stageKernel(i, weight !== 0)));
}

function stageKernel(i: number, usesSlopeInTime: boolean): RowKernel {
  const stages = Array.from({ length: i }, (_, j) => j);
  const rows = ["y", "slopeInTime", "stage", ...stages.map((j) => `u${j}`), `u${i}`];
  return rowKernel(
    Object.fromEntries(rows.map((name) => [name, "row" as const])),
    [...stages.map((j) => `a${j}`), ...stages.map((j) => `C${j}`), "e"],
    (t, { keep, set }) => {
      const u = stages.map((j) => keep(t[`u${j}`]!));
      set(t.stage!, add(t.y!, ...u.map((one, j) => mul(t[`a${j}`]!, one))));
      const [first, ...others] = u.map((one, j) => mul(t[`C${j}`]!, one));
      set(t[`u${i}`]!, add(first!, ...others, ...(usesSlopeInTime ? [mul(t.e!, t.slopeInTime!)] : [])));
    },
  );
}

/** Adds f of the stage to a right-hand side. */
export const ADD_RATE = rowKernel({ u: "row", rate: "row" }, [], ({ u, rate }, { set }) =>
  set(u, add(u, rate)),
);

/** Completes the state of one component, and adds the square of its scaled error to each member's sum. */
export const FINISH = rowKernel(
  { y: "row", next: "row", stage: "row", last: "row", sum: "row", allowed: "shared" },
  ["relative"],
  ({ y, next, stage, last, sum, allowed, relative }, { keep, set }) => {
    const error = keep(last);
    const after = keep(add(stage, error));
    set(next, after);
    const scaled = keep(div(error, add(allowed, mul(relative, max(abs(y), abs(after))))));
    set(sum, add(sum, mul(scaled, scaled)));
  },
);

/** k_1 and k_2 of the dense output, from the rows u_0 …, k_1, k_2. */
export function denseKernel({ h }: Tableau): RowKernel {
  const stages = h[0].map((_, j) => j);
  const rows = [...stages.map((j) => `u${j}`), "k1", "k2"];
  return rowKernel(Object.fromEntries(rows.map((name) => [name, "row" as const])), [], (t, { keep, set }) => {
    const u = stages.map((j) => keep(t[`u${j}`]!));
    for (const [k, weights] of [t.k1!, t.k2!].map((row, k) => [row, h[k]!] as const)) {
      const [first, ...others] = u.map((one, j) => mul(num(weights[j]!), one));
      set(k, add(first!, ...others));
    }
  });
}

/** State at fraction θ of the step. */
export const DENSE = rowKernel(
  { y: "row", next: "row", k1: "row", k2: "row", out: "row" },
  ["theta"],
  ({ y, next, k1, k2, out, theta }, { keep, set }) => {
    const rest = keep(sub(num(1), theta));
    const bend = add(k1, mul(theta, k2));
    set(out, add(mul(rest, y), mul(theta, add(next, mul(rest, bend)))));
  },
);
