import { type RowKernel, type RowLayout, type RowMemory, WORD } from "../numerics/index.js";
import { ADD_RATE, DENSE, denseKernel, FINISH, stageKernels } from "./stage-formulas.js";
import { RODAS4P2 } from "./tableau.js";

const { a, C, d } = RODAS4P2;
const STAGES = d.length;
const STAGE_KERNELS = stageKernels(RODAS4P2);
const PREPARE_DENSE = denseKernel(RODAS4P2);

/**
 * The vectors of one step, each [component][member], one after another in the memory. The state at the start and at the end
 * of the step swap places 0 and 1. `u` is that of the first stage, the others follow.
 */
export const Row = {
  slopeInTime: 2,
  stage: 3,
  slope: 4,
  rate: 5,
  k1: 6,
  k2: 7,
  u: 8,
} as const;

const ROWS = Row.u + STAGES;

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
  const { slopeInTime, stage, k1, k2, slope, rate } = Row;
  const us = d.map((_, i) => Row.u + i);
  const components = Array.from({ length: size }, (_, i) => i);
  return {
    stages: STAGE_KERNELS.map((kernel, i) =>
      i === 0
        ? whole(kernel, Row.u, slope, slopeInTime)
        : whole(kernel, y, slopeInTime, stage, ...us.slice(0, i + 1)),
    ),
    addRate: us.map((u) => whole(ADD_RATE, u, rate)),
    finish: layout.list(
      FINISH,
      components.map((i) => [
        ...[y, next, stage, us.at(-1)!].map((row) => place(row, i)),
        ...[sums, allowed + WORD * i],
      ]),
    ),
    prepareDense: whole(PREPARE_DENSE, ...us.slice(0, -1), k1, k2),
    dense: whole(DENSE, y, next, k1, k2, rate),
  };
}

/** The loops of a step on a memory; `from` [0 or 1] is where it begins. */
export interface Stages {
  /** State for f and right-hand side, but for f, of the stage. */
  begin(from: number, stage: number, h: number): void;
  addRate(stage: number): void;
  /** Scaled error of the worst member; the state is complete. */
  finish(from: number, relative: number): number;
  prepareDense(): void;
  /** Into the row of rates. */
  dense(from: number, theta: number): void;
}

export function createStages({ lists, members, length, sums }: StagePlan, memory: RowMemory): Stages {
  const bytes = WORD * length;
  const begins = STAGE_KERNELS.map((kernel) => memory.bind(kernel));
  const adds = memory.bind(ADD_RATE);
  const finishes = memory.bind(FINISH);
  const prepares = memory.bind(PREPARE_DENSE);
  const interpolates = memory.bind(DENSE);
  const scalars = a.map((row) => [...row, ...row, 0]);
  return {
    begin(from, stage, h) {
      const own = scalars[stage];
      const per = 1 / h;
      for (let j = 0; j < stage; j++) own[stage + j] = C[stage][j] * per;
      own[2 * stage] = h * d[stage];
      begins[stage](lists[from].stages[stage].at, 1, 0, bytes, ...own);
    },
    addRate(stage) {
      adds(lists[0].addRate[stage].at, 1, 0, bytes);
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
      prepares(lists[0].prepareDense.at, 1, 0, bytes);
    },
    dense(from, theta) {
      interpolates(lists[from].dense.at, 1, 0, bytes, theta);
    },
  };
}
