import { plainSystem, type SolveStatus, solve } from "../solver/index.js";

/** A small initial-value problem in SI, one member at a time: members cross melting and drying at different moments. */
export interface SmallProblem {
  readonly initial: Float64Array;
  /** Size of each row that matters, SI: the step control keeps errors below a thousandth of it. */
  readonly scales: Float64Array;
  readonly derivative: (t: number, y: Float64Array, dydt: Float64Array) => void;
  /** Rows that only add up what has passed; nothing depends on them. */
  readonly sums: readonly number[];
  readonly start: number;
  /** Ascending, the last one is the end. */
  readonly sampleTimes: Float64Array;
  /** Times where the surroundings bend. */
  readonly bends?: readonly number[];
}

export interface SmallSolution {
  readonly status: SolveStatus;
  readonly remedy: string;
  /** Sample s, row i at `[s * size + i]`, SI. */
  readonly samples: Float64Array;
}

const TOLERANCE = { absolute: 1e-3, relative: 1e-6 };
/** Step of the differences, relative to the scaled state. */
const DIFFERENCE = 1e-7;
/** [s] step of the difference in time; surroundings change over minutes to hours. */
const TIME_DIFFERENCE = 1;
const MAXIMUM_STEPS = 20_000;
/** SI, above any temperature, mass or energy here. */
const BEYOND_SANITY = 1e15;

/**
 * Solves it with the project's stiff solver. The Jacobian is taken by differences: the systems have about twenty rows and
 * many switching laws, and the cost of a member stays below a tenth of a second.
 */
export function integrate(problem: SmallProblem): SmallSolution {
  const { initial, scales, derivative, sums, start, sampleTimes, bends = [] } = problem;
  const size = initial.length;
  const end = sampleTimes[sampleTimes.length - 1];
  const si = new Float64Array(size);
  const rate = new Float64Array(size);
  const slope = new Float64Array(size);
  const shifted = new Float64Array(size);
  const rows = Array.from({ length: size }, () => new Float64Array(size));
  const states = Array.from(initial.keys()).filter((i) => !sums.includes(i));
  let stretchEnd = end;

  function scaledRate(t: number, y: Float64Array, out: Float64Array): Float64Array {
    let sane = true;
    for (let i = 0; i < size; i++) {
      si[i] = y[i] * scales[i];
      sane &&= Math.abs(si[i]) < BEYOND_SANITY;
    }
    // A trial step that has run away is the solver's to reject, not a correlation's to refuse.
    if (!sane) return out.fill(Number.NaN);
    derivative(t, si, out);
    for (let i = 0; i < size; i++) out[i] /= scales[i];
    return out;
  }

  const system = plainSystem({
    size,
    derivative: (t, y) => scaledRate(t, y, rate),
    jacobian(t, y) {
      scaledRate(t, y, slope);
      const state = Float64Array.from(y);
      for (const j of states) {
        const step = DIFFERENCE * Math.max(1, Math.abs(y[j]));
        state[j] = y[j] + step;
        scaledRate(t, state, shifted);
        state[j] = y[j];
        for (let i = 0; i < size; i++) rows[i][j] = (shifted[i] - slope[i]) / step;
      }
      return rows;
    },
    timeDerivative(t, y) {
      const step = t + TIME_DIFFERENCE <= stretchEnd ? TIME_DIFFERENCE : -TIME_DIFFERENCE;
      scaledRate(t, y, slope);
      scaledRate(t + step, y, shifted);
      return shifted.map((value, i) => (value - slope[i]) / step);
    },
  });
  const result = solve({
    system,
    initial: initial.map((value, i) => value / scales[i]),
    start,
    end,
    tolerance: TOLERANCE,
    jumps: bends.filter((t) => t > start && t < end),
    onStretch: (_, to) => {
      stretchEnd = to;
    },
    sampleTimes,
    maximumSteps: MAXIMUM_STEPS,
  });
  const samples = result.samples.map((value, k) => value * scales[k % size]);
  return { status: result.status, remedy: result.remedy, samples };
}

/** Sample times from `start` to `start + duration` [s], about `spacing` [s] apart. */
export function evenTimes(start: number, duration: number, spacing: number): Float64Array {
  const count = Math.max(1, Math.ceil(duration / spacing));
  return Float64Array.from({ length: count + 1 }, (_, i) => start + (duration * i) / count);
}
