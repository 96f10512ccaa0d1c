import { describe, expect, test } from "vitest";
import { plainSystem } from "../../src/solver/index.js";
import { run, threeStores, twoStores } from "./problems.js";

// A Rosenbrock method with exact derivatives keeps every linear invariant of the equations, at any tolerance.
describe("energy balance", () => {
  test.each([1e-2, 1e-6])("heat put in = heat stored + heat lost, tolerance %s K", (tolerance) => {
    const [c1, c2] = [60e3, 15e3];
    const end = 40_000;
    // The third component is the heat lost to the outside at -25 °C so far, in kJ.
    const system = plainSystem({
      size: 3,
      derivative: (_, [t1, t2]) => [
        (8 * (t2 - t1) + 6 * (-25 - t1)) / c1,
        (8 * (t1 - t2) + (-25 - t2) + 100) / c2,
        (6 * (t1 + 25) + (t2 + 25)) / 1000,
      ],
      jacobian: () => [
        [-14 / c1, 8 / c1, 0],
        [8 / c2, -9 / c2, 0],
        [0.006, 0.001, 0],
      ],
    });
    const { state } = run({ system, initial: [-25, -25, 0], end }, tolerance, tolerance);
    const stored = c1 * (state[0] + 25) + c2 * (state[1] + 25);
    const put = 100 * end;
    expect(Math.abs(stored + 1000 * state[2] - put)).toBeLessThan(1e-9 * put);
  });
});

describe("steady state of constant input", () => {
  test.each([
    ["two stores", twoStores(3e6), [-12.0967741935484, -2.41935483870968]],
    ["three stores", threeStores(3e6), [-14.7911832946636, -4.81438515081206, -15.7192575406032]],
  ] as const)("%s", (_, problem, steady) => {
    const { state } = run(problem, 1e-6, 1e-6);
    steady.forEach((value, i) => {
      expect(Math.abs(state[i] - value)).toBeLessThan(1e-5);
    });
  });
  test("a steady state stays put, in few steps", () => {
    const problem = twoStores(1e6);
    const { state, statistics } = run(
      { ...problem, initial: [-12.096774193548387, -2.4193548387096775] },
      1e-6,
      1e-6,
    );
    expect(state[0]).toBeCloseTo(-12.096774193548387, 10);
    expect(statistics.steps).toBeLessThan(25);
  });
});
