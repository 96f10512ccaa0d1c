import { type PassList, type RowKernel, type RowLayout, type RowMemory, WORD } from "../numerics/index.js";
import * as rodas from "./coefficients.js";
import {
  ADD_RATE,
  DENSE,
  FINISH,
  PREPARE_DENSE,
  STAGE_1,
  STAGE_2,
  STAGE_3,
  STAGE_4,
  STAGE_5,
  STAGE_6,
} from "./stage-formulas.js";

/**
 * The vectors of one step, each [component][member], one after another in the memory. The state at the start and at the end
 * of the step swap places 0 and 1.
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

/** Lists of a step that begins at place 0, and of one that begins at place 1. */
export interface StagePlan {
  readonly members: number;
  readonly length: number;
  /** Bytes of each member's sum of squares and of the errors allowed. */
  readonly sums: number;
  readonly allowed: number;
  readonly lists: readonly [StageLists, StageLists];
}

type StageLists = ReturnType<typeof listsOf>;

/** Takes the rows from byte 0 of the layout on. */
export function planStages(size: number, members: number, layout: RowLayout): StagePlan {
  const length = size * members;
  const first = layout.take(ROWS * length);
  if (first !== 0) throw new RangeError(`invalid layout: ${first} bytes taken (expected none)`);
  const sums = layout.take(members);
  const allowed = layout.take(size);
  const lists = (y: number, next: number) => listsOf(y, next, { size, members, sums, allowed, layout });
  return { members, length, sums, allowed, lists: [lists(0, 1), lists(1, 0)] };
}

interface Places {
  readonly size: number;
  readonly members: number;
  readonly sums: number;
  readonly allowed: number;
  readonly layout: RowLayout;
}

function listsOf(y: number, next: number, { size, members, sums, allowed, layout }: Places) {
  const place = (row: number, component = 0) => WORD * members * (row * size + component);
  const whole = (kernel: RowKernel, ...rows: readonly number[]) =>
    layout.list(kernel, [rows.map((row) => place(row))]);
  const { slopeInTime, stage, u1, u2, u3, u4, u5, u6, k1, k2, slope, rate } = Row;
  const components = Array.from({ length: size }, (_, i) => i);
  return {
    stage1: whole(STAGE_1, u1, slope, slopeInTime),
    stage2: whole(STAGE_2, y, slopeInTime, stage, u1, u2),
    stage3: whole(STAGE_3, y, slopeInTime, stage, u1, u2, u3),
    stage4: whole(STAGE_4, y, slopeInTime, stage, u1, u2, u3, u4),
    stage5: whole(STAGE_5, y, stage, u1, u2, u3, u4, u5),
    stage6: whole(STAGE_6, stage, u1, u2, u3, u4, u5, u6),
    addRate: new Map<number, PassList>([u2, u3, u4, u5, u6].map((u) => [u, whole(ADD_RATE, u, rate)])),
    finish: layout.list(
      FINISH,
      components.map((i) => [
        ...[y, next, stage, u6].map((row) => place(row, i)),
        ...[sums, allowed + WORD * i],
      ]),
    ),
    prepareDense: whole(PREPARE_DENSE, u1, u2, u3, u4, u5, k1, k2),
    dense: whole(DENSE, y, next, k1, k2, rate),
  };
}

/** The loops of a step on a memory; `from` [0 or 1] is where it begins. */
export interface Stages {
  begin(from: number, stage: 1 | 2 | 3 | 4 | 5 | 6, h: number): void;
  addRate(u: number): void;
  /** Scaled error of the worst member; the state is complete. */
  finish(from: number, relative: number): number;
  prepareDense(): void;
  /** Into the row of rates. */
  dense(from: number, theta: number): void;
}

export function createStages({ lists, members, length, sums }: StagePlan, memory: RowMemory): Stages {
  const bytes = WORD * length;
  const kernels = [STAGE_1, STAGE_2, STAGE_3, STAGE_4, STAGE_5, STAGE_6].map((kernel) => memory.bind(kernel));
  const adds = memory.bind(ADD_RATE);
  const finishes = memory.bind(FINISH);
  const prepares = memory.bind(PREPARE_DENSE);
  const interpolates = memory.bind(DENSE);
  const run = (index: number, list: PassList, ...scalars: readonly number[]) =>
    kernels[index](list.at, 1, 0, bytes, ...scalars);
  const { a21, a31, a32, a41, a42, a43, a51, a52, a53, a54, d1, d2, d3, d4 } = rodas;
  return {
    begin(from, stage, h) {
      const own = lists[from];
      const per = 1 / h;
      switch (stage) {
        case 1:
          return run(0, own.stage1, h * d1);
        case 2:
          return run(1, own.stage2, a21, rodas.C21 * per, h * d2);
        case 3:
          return run(2, own.stage3, a31, a32, rodas.C31 * per, rodas.C32 * per, h * d3);
        case 4: {
          const { C41, C42, C43 } = rodas;
          return run(3, own.stage4, a41, a42, a43, C41 * per, C42 * per, C43 * per, h * d4);
        }
        case 5: {
          const { C51, C52, C53, C54 } = rodas;
          return run(4, own.stage5, a51, a52, a53, a54, C51 * per, C52 * per, C53 * per, C54 * per);
        }
        case 6: {
          const { C61, C62, C63, C64, C65 } = rodas;
          return run(5, own.stage6, C61 * per, C62 * per, C63 * per, C64 * per, C65 * per);
        }
      }
    },
    addRate(u) {
      adds(lists[0].addRate.get(u)!.at, 1, 0, bytes);
    },
    finish(from, relative) {
      const { floats } = memory;
      const first = sums / WORD;
      floats.fill(0, first, first + members);
      const { at, count } = lists[from].finish;
      finishes(at, count, 0, WORD * members, relative);
      let worst = 0;
      for (let k = first; k < first + members; k++) {
        // Written so that NaN becomes the worst.
        if (!(floats[k] <= worst)) worst = floats[k];
        if (Number.isNaN(worst)) break;
      }
      return Math.sqrt((worst * members) / length);
    },
    prepareDense() {
      const { h21, h22, h23, h24, h25, h31, h32, h33, h34, h35 } = rodas;
      prepares(lists[0].prepareDense.at, 1, 0, bytes, h21, h22, h23, h24, h25, h31, h32, h33, h34, h35);
    },
    dense(from, theta) {
      interpolates(lists[from].dense.at, 1, 0, bytes, theta);
    },
  };
}
