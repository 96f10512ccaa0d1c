import { describe, expect, test } from "vitest";
import { type EnsembleSystem, plainSystem } from "../../src/solver/index.js";
import { type Problem, runFixed } from "./problems.js";

interface Exact {
  readonly problem: Problem;
  readonly exact: (t: number) => readonly number[];
}

/** y' = -2 t y², nonlinear and explicitly time-dependent. */
const bernoulli: Exact = {
  problem: {
    system: plainSystem({
      size: 1,
      derivative: (t, [y]) => [-2 * t * y * y],
      jacobian: (t, [y]) => [[-4 * t * y]],
      timeDerivative: (_, [y]) => [-2 * y * y],
    }),
    initial: [1],
    end: 2,
  },
  exact: (t) => [1 / (1 + t * t)],
};

/** Kaps' problem, stiff for small ε (Hairer & Wanner II, section VI.1). */
function kaps(epsilon: number): Exact {
  return {
    problem: {
      system: plainSystem({
        size: 2,
        derivative: (_, [a, b]) => [-(1 / epsilon + 2) * a + (b * b) / epsilon, a - b - b * b],
        jacobian: (_, [, b]) => [
          [-(1 / epsilon + 2), (2 * b) / epsilon],
          [1, -1 - 2 * b],
        ],
      }),
      initial: [1, 1],
      end: 1,
    },
    exact: (t) => [Math.exp(-2 * t), Math.exp(-t)],
  };
}

/** Prothero & Robinson's problem y' = -λ (y - cos t) - sin t. */
function protheroRobinson(lambda: number): Exact {
  return {
    problem: {
      system: plainSystem({
        size: 1,
        derivative: (t, [y]) => [-lambda * (y - Math.cos(t)) - Math.sin(t)],
        jacobian: () => [[-lambda]],
        timeDerivative: (t) => [-lambda * Math.sin(t) - Math.cos(t)],
      }),
      initial: [1],
      end: 2,
    },
    exact: (t) => [Math.cos(t)],
  };
}

describe("order of convergence by halving the step", () => {
  test.each([
    ["bernoulli", bernoulli],
    ["kaps, ε = 1", kaps(1)],
    ["prothero-robinson, λ = 1", protheroRobinson(1)],
  ])("%s: 4 at the end", (_, { problem, exact }) => {
    const errors = [20, 40, 80].map((n) => errorAtEnd(problem, exact, n));
    for (const order of orders(errors)) {
      expect(order).toBeGreaterThan(3.9);
      expect(order).toBeLessThan(4.5);
    }
  });
  test.each([
    ["bernoulli", bernoulli, 3.9],
    ["kaps, ε = 1", kaps(1), 3.9],
    ["prothero-robinson, λ = 1", protheroRobinson(1), 3.9],
    ["prothero-robinson, λ = 1e6", protheroRobinson(1e6), 3.9],
    ["kaps, ε = 1e-6", kaps(1e-6), 2.9],
  ])("%s: dense output at least 3 everywhere", (_, { problem, exact }, least) => {
    const errors = [20, 40, 80].map((n) => errorBetween(problem, exact, n));
    for (const order of orders(errors)) expect(order).toBeGreaterThan(least);
  });
  test("stiff forcing costs an order but the error falls with the stiffness", () => {
    const [mild, stiff] = [1e3, 1e6].map((lambda) => {
      const { problem, exact } = protheroRobinson(lambda);
      const errors = [20, 40, 80].map((n) => errorAtEnd(problem, exact, n));
      for (const order of orders(errors)) expect(order).toBeGreaterThan(2.7);
      return errors[0];
    });
    expect(mild).toBeLessThan(1e-8);
    expect(stiff).toBeLessThan(mild / 100);
  });
});

test("without ∂f/∂t the order is lost: the nonautonomous term matters", () => {
  const { problem, exact } = protheroRobinson(1);
  const { system } = problem;
  const linearise: EnsembleSystem["linearise"] = (t, y, into) => {
    system.linearise(t, y, into);
    into.slopeInTime.fill(0);
  };
  const blind = { ...problem, system: { ...system, linearise } };
  const errors = [20, 40, 80].map((n) => errorAtEnd(blind, exact, n));
  for (const order of orders(errors)) expect(order).toBeLessThan(2.5);
});

function errorAtEnd(problem: Problem, exact: Exact["exact"], steps: number): number {
  const { state, statistics } = runFixed(problem, problem.end / steps);
  expect(statistics.steps).toBe(steps);
  return Math.max(...exact(problem.end).map((value, i) => Math.abs(value - state[i])));
}

function errorBetween(problem: Problem, exact: Exact["exact"], steps: number): number {
  const sampleTimes = Array.from({ length: 7 * steps + 1 }, (_, s) => (problem.end * s) / (7 * steps));
  const { samples } = runFixed(problem, problem.end / steps, { sampleTimes });
  const size = problem.initial.length;
  return Math.max(
    ...sampleTimes.flatMap((t, s) => exact(t).map((value, i) => Math.abs(value - samples[s * size + i]))),
  );
}

function orders(errors: readonly number[]): number[] {
  return errors.slice(1).map((error, k) => Math.log2(errors[k] / error));
}
