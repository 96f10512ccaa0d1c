import { describe, expect, test } from "vitest";
import {
  hires,
  oneStore,
  orego,
  radiator,
  rober,
  run,
  threeStores,
  twoStores,
  vanDerPol,
  vanDerPolScaled,
} from "./problems.js";

// Ceilings: the counts measured when this was written, plus a fifth. Work per problem may fall, not creep up.
describe("steps and rejections at relative tolerance 1e-6", () => {
  test.each([
    ["ROBER to 1e11", rober(1e11), 1e-16, 564, 0],
    ["HIRES", hires(321.8122), 1e-10, 300, 1],
    ["VDPOL, ε = 1e-6", vanDerPolScaled(1e-6, 2), 1e-6, 1021, 8],
    ["VDPOL, μ = 1000", vanDerPol(1000, 2000), 1e-9, 1028, 8],
    ["OREGO", orego(360), 1e-6, 1227, 9],
    ["one store", oneStore(28800), 1e-3, 18, 0],
    ["two stores", twoStores(43200), 1e-3, 27, 0],
    ["three stores", threeStores(36000), 1e-3, 45, 0],
    ["radiator", radiator(36000), 1e-3, 44, 0],
  ])("%s", (_, problem, absolute, steps, rejected) => {
    const { status, statistics } = run(problem, absolute, 1e-6);
    expect(status).toBe("completed");
    expect(statistics.steps).toBeLessThanOrEqual(Math.ceil(1.2 * steps));
    expect(statistics.rejected).toBeLessThanOrEqual(Math.ceil(1.2 * rejected));
  });
});

test("each tried step costs one factorisation and five evaluations, each accepted one a sixth", () => {
  const { statistics } = run(vanDerPol(1000, 2000), 1e-6, 1e-4);
  const { steps, rejected, derivatives, factorisations } = statistics;
  expect(rejected).toBeGreaterThan(0);
  expect(factorisations).toBe(steps + rejected);
  // One more for the size of the first step.
  expect(derivatives).toBe(5 * (steps + rejected) + steps + 1);
});

test("a tighter tolerance gives a smaller error, about in proportion", () => {
  const exact = 116.772592395069;
  const errors = [1e-4, 1e-6, 1e-8].map((relative) =>
    Math.abs(run(radiator(36000), 100 * relative, relative).state[0] - exact),
  );
  expect(errors[0]).toBeLessThan(0.05);
  expect(errors[1]).toBeLessThan(errors[0] / 20);
  expect(errors[2]).toBeLessThan(errors[1] / 20);
});

test("firstStep and maximumStep are obeyed", () => {
  const lengths: number[] = [];
  run(oneStore(28800), 1e-3, 1e-6, {
    firstStep: 10,
    maximumStep: 700,
    onStep: ({ start, end }) => lengths.push(end - start) > 0,
  });
  expect(lengths[0]).toBe(10);
  expect(Math.max(...lengths)).toBeLessThanOrEqual(700 * (1 + 1e-9));
  expect(lengths.reduce((sum, length) => sum + length)).toBeCloseTo(28800, 6);
});
