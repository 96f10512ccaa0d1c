import {
  type EnsembleSystem,
  plainSystem,
  type SolveRequest,
  type SolveResult,
  solve,
} from "../../src/solver/index.js";

/** A problem with its initial state and span. */
export interface Problem {
  readonly system: EnsembleSystem;
  readonly initial: readonly number[];
  readonly end: number;
}

/** Solves a problem of one member from 0 to its end with one tolerance setting. */
export function run(
  { system, initial, end }: Problem,
  absolute: number,
  relative: number,
  more: Partial<SolveRequest> = {},
): SolveResult {
  const result = solve({
    system,
    initial: Float64Array.from(initial),
    start: 0,
    end,
    tolerance: { absolute, relative },
    ...more,
  });
  return result;
}

/** Solves with a fixed step: tolerance out of the way, first and longest step given. */
export function runFixed(problem: Problem, step: number, more: Partial<SolveRequest> = {}): SolveResult {
  return run(problem, 1e9, 1e9, { firstStep: step, maximumStep: step, ...more });
}

/** Robertson's chemical kinetics. */
export function rober(end: number): Problem {
  const system = plainSystem({
    size: 3,
    derivative: (_, [a, b, c]) => {
      const r1 = 0.04 * a;
      const r2 = 3e7 * b * b;
      const r3 = 1e4 * b * c;
      return [-r1 + r3, r1 - r3 - r2, r2];
    },
    jacobian: (_, [, b, c]) => [
      [-0.04, 1e4 * c, 1e4 * b],
      [0.04, -1e4 * c - 6e7 * b, -1e4 * b],
      [0, 6e7 * b, 0],
    ],
  });
  return { system, initial: [1, 0, 0], end };
}

/** High irradiance response of plants, 8 reactants. */
export function hires(end: number): Problem {
  const system = plainSystem({
    size: 8,
    derivative: (_, [a, b, c, d, e, f, g, h]) => [
      -1.71 * a + 0.43 * b + 8.32 * c + 0.0007,
      1.71 * a - 8.75 * b,
      -10.03 * c + 0.43 * d + 0.035 * e,
      8.32 * b + 1.71 * c - 1.12 * d,
      -1.745 * e + 0.43 * f + 0.43 * g,
      -280 * f * h + 0.69 * d + 1.71 * e - 0.43 * f + 0.69 * g,
      280 * f * h - 1.81 * g,
      -280 * f * h + 1.81 * g,
    ],
    jacobian: (_, [, , , , , f, , h]) => [
      [-1.71, 0.43, 8.32, 0, 0, 0, 0, 0],
      [1.71, -8.75, 0, 0, 0, 0, 0, 0],
      [0, 0, -10.03, 0.43, 0.035, 0, 0, 0],
      [0, 8.32, 1.71, -1.12, 0, 0, 0, 0],
      [0, 0, 0, 0, -1.745, 0.43, 0.43, 0],
      [0, 0, 0, 0.69, 1.71, -280 * h - 0.43, 0.69, -280 * f],
      [0, 0, 0, 0, 0, 280 * h, -1.81, 280 * f],
      [0, 0, 0, 0, 0, -280 * h, 1.81, -280 * f],
    ],
  });
  return { system, initial: [1, 0, 0, 0, 0, 0, 0, 0.0057], end };
}

/** Van der Pol's oscillator, time scaled by μ: ε = 1/μ². */
export function vanDerPolScaled(epsilon: number, end: number): Problem {
  const system = plainSystem({
    size: 2,
    derivative: (_, [x, v]) => [v, ((1 - x * x) * v - x) / epsilon],
    jacobian: (_, [x, v]) => [
      [0, 1],
      [(-2 * x * v - 1) / epsilon, (1 - x * x) / epsilon],
    ],
  });
  return { system, initial: [2, 0], end };
}

/** Van der Pol's oscillator as van der Pol wrote it. */
export function vanDerPol(mu: number, end: number): Problem {
  const system = plainSystem({
    size: 2,
    derivative: (_, [x, v]) => [v, mu * (1 - x * x) * v - x],
    jacobian: (_, [x, v]) => [
      [0, 1],
      [-2 * mu * x * v - 1, mu * (1 - x * x)],
    ],
  });
  return { system, initial: [2, 0], end };
}

/** Oregonator of the Belousov-Zhabotinskii reaction. */
export function orego(end: number): Problem {
  const [s, w, q] = [77.27, 0.161, 8.375e-6];
  const system = plainSystem({
    size: 3,
    derivative: (_, [a, b, c]) => [s * (b + a * (1 - q * a - b)), (c - (1 + a) * b) / s, w * (a - c)],
    jacobian: (_, [a, b]) => [
      [s * (1 - 2 * q * a - b), s * (1 - a), 0],
      [-b / s, -(1 + a) / s, 1 / s],
      [w, 0, -w],
    ],
  });
  return { system, initial: [1, 2, 3], end };
}

/** dy/dt = A y + b. */
function linear(
  matrix: readonly (readonly number[])[],
  offset: readonly number[],
  initial: readonly number[],
  end: number,
): Problem {
  const size = matrix.length;
  const product = (y: ArrayLike<number>, i: number) =>
    matrix[i].reduce((sum, a, j) => sum + a * y[j], offset[i]);
  const system = plainSystem({
    size,
    derivative: (_, y) => matrix.map((_row, i) => product(y, i)),
    jacobian: () => matrix,
  });
  return { system, initial, end };
}

/** One heat store of 50 kJ/K losing 5 W/K to -30 °C, heated with 200 W; temperatures in °C. */
export function oneStore(end: number): Problem {
  return linear([[-1e-4]], [(200 + 5 * -30) / 50e3], [-30], end);
}

/** Two heat stores: 60 and 15 kJ/K, 8 W/K between, 6 and 1 W/K to -25 °C, 100 W into the second. */
export function twoStores(end: number): Problem {
  const [c1, c2] = [60e3, 15e3];
  return linear(
    [
      [-14 / c1, 8 / c1],
      [8 / c2, -9 / c2],
    ],
    [(6 * -25) / c1, (100 - 25) / c2],
    [-25, -25],
    end,
  );
}

/** The two stores with a third of 50 J/K, 20 W/K to the first and 2 W/K to the outside: rates 3780 apart. */
export function threeStores(end: number): Problem {
  const [c1, c2, c3] = [60e3, 15e3, 50];
  return linear(
    [
      [-34 / c1, 8 / c1, 20 / c1],
      [8 / c2, -9 / c2, 0],
      [20 / c3, 0, -22 / c3],
    ],
    [(6 * -25) / c1, (100 - 25) / c2, (2 * -25) / c3],
    [-10, 20, -25],
    end,
  );
}

/** A store of time constant `tau` under outside air `air(t)` of slope `airSlope(t)`. */
export function storeInAir(
  tau: number,
  air: (t: number) => number,
  airSlope: (t: number) => number,
  initial: number,
  end: number,
): Problem {
  const system = plainSystem({
    size: 1,
    derivative: (t, [temp]) => [(air(t) - temp) / tau],
    jacobian: () => [[-1 / tau]],
    timeDerivative: (t) => [airSlope(t) / tau],
  });
  return { system, initial: [initial], end };
}

/** A body of 1000 J/K radiating to 0 K with ε A = 0.1 m², from 400 K. */
export function radiator(end: number): Problem {
  const k = (5.670374419e-8 * 0.1) / 1000;
  const system = plainSystem({
    size: 1,
    derivative: (_, [temp]) => [-k * temp ** 4],
    jacobian: (_, [temp]) => [[-4 * k * temp ** 3]],
  });
  return { system, initial: [400], end };
}
