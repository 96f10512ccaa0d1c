import { describe, expect, test } from "vitest";
import { plainSystem, type SolveRequest, solve } from "../../src/solver/index.js";

// Two nodes of a heat network that hardly touch: a fast one driven by an oscillation, and a slow one.
const system = plainSystem({
  size: 2,
  derivative: (t, [fast, slow]) => [5 * Math.sin(t) - fast, -1e-3 * (slow - 1e-3 * fast)],
  jacobian: () => [
    [-1, 0],
    [1e-6, -1e-3],
  ],
  timeDerivative: (t) => [5 * Math.cos(t), 0],
});

function solved(absolute: number | Float64Array) {
  const request: SolveRequest = {
    system,
    initial: Float64Array.of(0, 1),
    start: 0,
    end: 50,
    tolerance: { absolute, relative: 1e-12 },
  };
  return solve(request);
}

describe("absolute tolerance", () => {
  test("one number and the same number for each component give the same steps", () => {
    expect(solved(Float64Array.of(1e-5, 1e-5)).state).toEqual(solved(1e-5).state);
  });

  test("a component that may err more costs fewer steps and leaves the others as close", () => {
    const close = solved(1e-6);
    const loose = solved(Float64Array.of(0.1, 1e-6));
    expect(loose.statistics.steps).toBeLessThan(0.5 * close.statistics.steps);
    expect(Math.abs(loose.state[1] - close.state[1])).toBeLessThan(2e-6);
    expect(Math.abs(loose.state[0] - close.state[0])).toBeLessThan(0.5);
  });

  test.each([
    ["too few", Float64Array.of(1), "invalid tolerance.absolute: 1 values (expected 2)"],
    ["zero", Float64Array.of(1, 0), "invalid tolerance.absolute[1]: 0 (expected > 0)"],
    ["not a number", Number.NaN, "invalid tolerance.absolute: NaN (expected > 0)"],
  ])("refuses %s", (_, absolute, message) => {
    expect(() => solved(absolute)).toThrow(message);
  });
});
