import {
  createRowLayout,
  createRowMemory,
  createSparseLu,
  planSparseLu,
  type RowMemory,
  type SparsityPattern,
  WORD,
} from "../numerics/index.js";
import { createStages, planStages, Row } from "./stages.js";
import type { EnsembleSystem, SolveRequest } from "./system.js";
import { RODAS4P2 } from "./tableau.js";

export type Tolerance = SolveRequest["tolerance"];
export type AttemptOutcome = "done" | "singular" | "not-finite" | "out-of-range";

/** One step of the method at a time; everything it needs is there when it is made. */
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
  /** Gives the memory back; nothing of the stepper may be used after. */
  release(): void;
}

const { c, gamma } = RODAS4P2;

/** Memories that no stepper works on; a solve within another's callback takes a second one. */
const spare: RowMemory[] = [];

export function createStepper(system: EnsembleSystem, initial: Float64Array, tolerance: Tolerance): Stepper {
  const { members, pattern, range, size } = system;
  const { relative } = tolerance;
  const length = initial.length;
  const { layout, stagePlan, jacobianAt, luPlan } = planOf(pattern, size, members);
  const memory = spare.pop() ?? createRowMemory();
  memory.install(layout);
  const stages = createStages(stagePlan, memory);
  const lu = createSparseLu(luPlan, memory);
  const jacobian = memory.floats.subarray(jacobianAt, jacobianAt + pattern.column.length * members);
  const row = (index: number) => memory.floats.subarray(index * length, (index + 1) * length);
  const slopeInTime = row(Row.slopeInTime);
  const slope = row(Row.slope);
  const linearisation = { slope, jacobian, slopeInTime };
  const stage = row(Row.stage);
  const rate = row(Row.rate);
  const states = [row(0), row(1)];
  let from = 0;
  let denseReady = false;
  let errorNorm = 0;
  let derivatives = 0;
  let factorisations = 0;
  memory.floats.set(absolutePerComponent(tolerance, size), stagePlan.allowed / WORD);
  states[from].set(initial);

  return {
    state: () => states[from],
    slope: () => slope,
    errorNorm: () => errorNorm,
    derivatives: () => derivatives,
    factorisations: () => factorisations,
    begin(t) {
      system.linearise(t, states[from], linearisation);
      derivatives++;
      return allFinite(slope);
    },
    attempt(t, end) {
      const h = end - t;
      denseReady = false;
      factorisations++;
      if (!lu.factorise(1 / (h * gamma), jacobian)) return allFinite(jacobian) ? "singular" : "not-finite";
      for (let i = 0; i < c.length; i++) {
        stages.begin(from, i, h);
        if (i > 0) {
          // Not t + h, which may round past the end.
          system.derivative(c[i] === 1 ? end : t + c[i] * h, stage, rate);
          stages.addRate(i);
        }
        lu.solve(WORD * length * (Row.u + i));
      }
      derivatives += c.length - 1;
      errorNorm = stages.finish(from, relative);
      if (!Number.isFinite(errorNorm)) return "not-finite";
      return range === undefined || liesWithin(states[1 - from], range) ? "done" : "out-of-range";
    },
    interpolate(theta, out, offset) {
      if (!denseReady) stages.prepareDense();
      denseReady = true;
      stages.dense(from, theta);
      out.set(rate, offset);
    },
    accept() {
      from = 1 - from;
    },
    release() {
      spare.push(memory);
    },
  };
}

function planOf(pattern: SparsityPattern, size: number, members: number) {
  const known = plans.get(pattern) ?? new Map<number, StepperPlan>();
  plans.set(pattern, known);
  const plan = known.get(members) ?? madePlan(pattern, size, members);
  known.set(members, plan);
  return plan;
}

type StepperPlan = ReturnType<typeof madePlan>;

const plans = new WeakMap<SparsityPattern, Map<number, StepperPlan>>();

function madePlan(pattern: SparsityPattern, size: number, members: number) {
  const layout = createRowLayout();
  const stagePlan = planStages(size, members, layout);
  const jacobianAt = layout.take(pattern.column.length * members) / WORD;
  return { layout, stagePlan, jacobianAt, luPlan: planSparseLu(pattern, members, layout) };
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

function liesWithin(values: Float64Array, [lowest, highest]: readonly [number, number]): boolean {
  for (let k = 0; k < values.length; k++) if (values[k] < lowest || values[k] > highest) return false;
  return true;
}
