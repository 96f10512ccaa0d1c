import { remedyOfFit } from "./least-squares-remedy.js";
import { type Linearisation, linearised, squared } from "./linearisation.js";

/** Residuals r(x) whose sum of squares is to be made least. */
export interface LeastSquaresProblem {
  /** m, at least the number n of parameters; prior knowledge comes in as residuals of its own. */
  readonly residualCount: number;
  readonly start: ArrayLike<number>;
  /**
   * Writes r(x), m values, and, where an array is given for it, dr_i/dx_j at [i * n + j]. False, or a value that is not
   * finite, says that there is no r at x: the step there is refused and a shorter one tried.
   */
  evaluate(x: Float64Array, residuals: Float64Array, jacobian: Float64Array | undefined): boolean;
}

export interface LeastSquaresOptions {
  /**
   * Relative offset at which x is good enough; 1e-3 means: within about a thousandth of its standard errors. Where r is
   * rough (as after an integration with a tolerance), not below the root of its roughness over its standard deviation.
   */
  readonly tolerance?: number;
  /** Calls of `evaluate` at most. */
  readonly maximumEvaluations?: number;
  /** Told after each step; false stops. */
  readonly onStep?: (progress: LeastSquaresProgress) => boolean;
}

export interface LeastSquaresProgress {
  readonly x: Float64Array;
  readonly sumOfSquares: number;
  /**
   * Relative offset: length of the part of r that a step can still take away, per parameter, over that of the part it
   * cannot, per degree of freedom; infinite where r has nothing but the former.
   */
  readonly offset: number;
  readonly steps: number;
  readonly evaluations: number;
}

export type LeastSquaresStatus =
  | "converged"
  | "rank-deficient"
  | "stalled"
  | "too-many-evaluations"
  | "no-residuals-at-start"
  | "cancelled";

export interface LeastSquaresResult extends LeastSquaresProgress {
  readonly status: LeastSquaresStatus;
  /** What happened and what to do, in one sentence; empty when converged. */
  readonly remedy: string;
  readonly residuals: Float64Array;
  /** At x, entry [i * n + j]. */
  readonly jacobian: Float64Array;
}

const DEFAULT_TOLERANCE = 1e-7;
const DEFAULT_MAXIMUM_EVALUATIONS = 1000;
/** Madsen, Nielsen & Tingleff (2004), section 3.2: 1e-6 for a start believed good, else 1e-3. */
const FIRST_DAMPING = 1e-3;
/** A step must bring this share of what it promises (Moré 1978, algorithm 7.1). */
const LEAST_GAIN = 1e-4;
/** Changes of the sum below this fraction of it may be rounding of r, and no longer decide (project judgement). */
const INDISTINCT = 1e-8;
/** Of the length of x: where r goes to zero no offset can be told, and steps as short as this end it (project judgement). */
const SHORTEST_STEP = 1e-11;
/** A step damped so much no longer moves x (project judgement). */
const GREATEST_DAMPING = 1e20;

/**
 * Least squares by the method of Levenberg and Marquardt. Damping steered by the gain ratio: Madsen, Nielsen & Tingleff,
 * Methods for Non-Linear Least Squares Problems, 2nd ed., Technical University of Denmark 2004, algorithm 3.16; scaling
 * and steps from a pivoted QR: Moré, Lecture Notes in Mathematics 630 (1978) 105-116; ended by the relative offset of
 * Bates & Watts, Technometrics 23 (1981) 179-183. A local minimum may be found: try other starts where one is to be feared.
 */
export function leastSquares(
  problem: LeastSquaresProblem,
  options: LeastSquaresOptions = {},
): LeastSquaresResult {
  checkArguments(problem, options);
  const { residualCount: m, start, evaluate } = problem;
  const { tolerance = DEFAULT_TOLERANCE, maximumEvaluations = DEFAULT_MAXIMUM_EVALUATIONS, onStep } = options;
  const n = start.length;
  const scale = new Float64Array(n);
  let here = emptyPoint(m, n);
  let there = emptyPoint(m, n);
  let damping = FIRST_DAMPING;
  let growth = 2;
  let steps = 0;
  let evaluations = 1;

  here.x.set(start);
  let local = evaluate(here.x, here.residuals, here.jacobian)
    ? linearised(here.residuals, here.jacobian, scale)
    : undefined;
  if (local === undefined) return result("no-residuals-at-start", Number.NaN);
  for (;;) {
    const offset = relativeOffset(local, m, n);
    if (steps > 0 && onStep?.(progress(offset)) === false) return result("cancelled", offset);
    if (offset <= tolerance || local.relativeStep(here.x) <= SHORTEST_STEP)
      return result(local.rank < n ? "rank-deficient" : "converged", offset);
    let next: Linearisation | undefined;
    while (next === undefined) {
      if (evaluations >= maximumEvaluations) return result("too-many-evaluations", offset);
      if (damping > GREATEST_DAMPING) return result("stalled", offset);
      next = attempt(local);
    }
    local = next;
    steps++;
  }

  /** Tries a step with the damping at hand and sets the next one; on success x is moved. */
  function attempt(local: Linearisation): Linearisation | undefined {
    const promised = local.step(damping, there.x);
    for (let j = 0; j < n; j++) there.x[j] += here.x[j];
    const sum = squared(here.residuals);
    const brought = sum - sumThere();
    const gain = brought / promised;
    const next = brought > LEAST_GAIN * promised ? linearisedThere() : undefined;
    const accepted =
      next ?? (Math.max(promised, Math.abs(brought)) < INDISTINCT * sum ? betterThere(local) : undefined);
    if (accepted === undefined) {
      damping *= growth;
      growth *= 2;
      return undefined;
    }
    damping *= next === undefined ? 1 / 3 : Math.max(1 / 3, 1 - (2 * gain - 1) ** 3);
    growth = 2;
    [here, there] = [there, here];
    return accepted;
  }

  /** Where the sum no longer tells good from bad: whether less is left there for a step to take away. */
  function betterThere({ within }: Linearisation): Linearisation | undefined {
    const next = linearisedThere();
    return next !== undefined && next.within < within ? next : undefined;
  }

  function sumThere(): number {
    evaluations++;
    return evaluate(there.x, there.residuals, undefined) ? squared(there.residuals) : Number.NaN;
  }

  function linearisedThere(): Linearisation | undefined {
    evaluations++;
    return evaluate(there.x, there.residuals, there.jacobian)
      ? linearised(there.residuals, there.jacobian, scale)
      : undefined;
  }

  function progress(offset: number): LeastSquaresProgress {
    return {
      x: Float64Array.from(here.x),
      sumOfSquares: squared(here.residuals),
      offset,
      steps,
      evaluations,
    };
  }

  function result(status: LeastSquaresStatus, offset: number): LeastSquaresResult {
    const { residuals, jacobian } = here;
    return { ...progress(offset), status, remedy: remedyOfFit(status, offset), residuals, jacobian };
  }
}

interface Point {
  readonly x: Float64Array;
  readonly residuals: Float64Array;
  readonly jacobian: Float64Array;
}

function emptyPoint(m: number, n: number): Point {
  return { x: new Float64Array(n), residuals: new Float64Array(m), jacobian: new Float64Array(m * n) };
}

/** Bates & Watts (1981), for n parameters and m - n degrees of freedom. */
function relativeOffset({ within, across }: Linearisation, m: number, n: number): number {
  if (within === 0) return 0;
  if (across === 0) return Number.POSITIVE_INFINITY;
  return within / Math.sqrt(n) / (across / Math.sqrt(m - n));
}

function checkArguments(problem: LeastSquaresProblem, options: LeastSquaresOptions): void {
  const { residualCount, start } = problem;
  const { tolerance = DEFAULT_TOLERANCE, maximumEvaluations = DEFAULT_MAXIMUM_EVALUATIONS } = options;
  if (!(start.length >= 1 && Array.from(start).every(Number.isFinite)))
    throw new RangeError(`invalid start: ${Array.from(start)} (expected at least one finite value)`);
  if (!(Number.isInteger(residualCount) && residualCount >= start.length))
    throw new RangeError(`invalid residualCount: ${residualCount} (expected at least ${start.length})`);
  if (!(tolerance > 0)) throw new RangeError(`invalid tolerance: ${tolerance} (expected > 0)`);
  if (!(maximumEvaluations >= 1))
    throw new RangeError(`invalid maximumEvaluations: ${maximumEvaluations} (expected >= 1)`);
}
