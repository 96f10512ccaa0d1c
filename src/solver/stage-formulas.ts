import { abs, add, div, max, mul, num, rowKernel, sub } from "../numerics/index.js";

// The method's formulas, for one member; their numbers are those of coefficients.ts.

/** Right-hand side of stage 1, complete. */
export const STAGE_1 = rowKernel(
  { u1: "row", slope: "row", slopeInTime: "row" },
  ["e"],
  ({ u1, slope, slopeInTime, e }, { set }) => set(u1, add(slope, mul(e, slopeInTime))),
);

/** Stage 2: the state for f, and in u2 the right-hand side but for f. Stages 3 to 6 alike. */
export const STAGE_2 = rowKernel(
  { y: "row", slopeInTime: "row", stage: "row", u1: "row", u2: "row" },
  ["a21", "C21", "e"],
  ({ y, slopeInTime, stage, u1, u2, a21, C21, e }, { keep, set }) => {
    const v1 = keep(u1);
    set(stage, add(y, mul(a21, v1)));
    set(u2, add(mul(C21, v1), mul(e, slopeInTime)));
  },
);

export const STAGE_3 = rowKernel(
  { y: "row", slopeInTime: "row", stage: "row", u1: "row", u2: "row", u3: "row" },
  ["a31", "a32", "C31", "C32", "e"],
  ({ y, slopeInTime, stage, u1, u2, u3, a31, a32, C31, C32, e }, { keep, set }) => {
    const [v1, v2] = [keep(u1), keep(u2)];
    set(stage, add(y, mul(a31, v1), mul(a32, v2)));
    set(u3, add(mul(C31, v1), mul(C32, v2), mul(e, slopeInTime)));
  },
);

export const STAGE_4 = rowKernel(
  { y: "row", slopeInTime: "row", stage: "row", u1: "row", u2: "row", u3: "row", u4: "row" },
  ["a41", "a42", "a43", "C41", "C42", "C43", "e"],
  ({ y, slopeInTime, stage, u1, u2, u3, u4, a41, a42, a43, C41, C42, C43, e }, { keep, set }) => {
    const [v1, v2, v3] = [keep(u1), keep(u2), keep(u3)];
    set(stage, add(y, mul(a41, v1), mul(a42, v2), mul(a43, v3)));
    set(u4, add(mul(C41, v1), mul(C42, v2), mul(C43, v3), mul(e, slopeInTime)));
  },
);

export const STAGE_5 = rowKernel(
  { y: "row", stage: "row", u1: "row", u2: "row", u3: "row", u4: "row", u5: "row" },
  ["a51", "a52", "a53", "a54", "C51", "C52", "C53", "C54"],
  ({ y, stage, u1, u2, u3, u4, u5, a51, a52, a53, a54, C51, C52, C53, C54 }, { keep, set }) => {
    const [v1, v2, v3, v4] = [keep(u1), keep(u2), keep(u3), keep(u4)];
    set(stage, add(y, mul(a51, v1), mul(a52, v2), mul(a53, v3), mul(a54, v4)));
    set(u5, add(mul(C51, v1), mul(C52, v2), mul(C53, v3), mul(C54, v4)));
  },
);

export const STAGE_6 = rowKernel(
  { stage: "row", u1: "row", u2: "row", u3: "row", u4: "row", u5: "row", u6: "row" },
  ["C61", "C62", "C63", "C64", "C65"],
  ({ stage, u1, u2, u3, u4, u5, u6, C61, C62, C63, C64, C65 }, { keep, set }) => {
    const v5 = keep(u5);
    set(stage, add(stage, v5));
    set(u6, add(mul(C61, u1), mul(C62, u2), mul(C63, u3), mul(C64, u4), mul(C65, v5)));
  },
);

/** Adds f of the stage to a right-hand side. */
export const ADD_RATE = rowKernel({ u: "row", rate: "row" }, [], ({ u, rate }, { set }) =>
  set(u, add(u, rate)),
);

/** Completes the state of one component, and adds the square of its scaled error to each member's sum. */
export const FINISH = rowKernel(
  { y: "row", next: "row", stage: "row", u6: "row", sum: "row", allowed: "shared" },
  ["relative"],
  ({ y, next, stage, u6, sum, allowed, relative }, { keep, set }) => {
    const error = keep(u6);
    const after = keep(add(stage, error));
    set(next, after);
    const scaled = keep(div(error, add(allowed, mul(relative, max(abs(y), abs(after))))));
    set(sum, add(sum, mul(scaled, scaled)));
  },
);

export const PREPARE_DENSE = rowKernel(
  { u1: "row", u2: "row", u3: "row", u4: "row", u5: "row", k1: "row", k2: "row" },
  ["h21", "h22", "h23", "h24", "h25", "h31", "h32", "h33", "h34", "h35"],
  (t, { keep, set }) => {
    const [v1, v2, v3, v4, v5] = [keep(t.u1), keep(t.u2), keep(t.u3), keep(t.u4), keep(t.u5)];
    set(t.k1, add(mul(t.h21, v1), mul(t.h22, v2), mul(t.h23, v3), mul(t.h24, v4), mul(t.h25, v5)));
    set(t.k2, add(mul(t.h31, v1), mul(t.h32, v2), mul(t.h33, v3), mul(t.h34, v4), mul(t.h35, v5)));
  },
);

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
