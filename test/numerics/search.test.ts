import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findRoot } from "../../src/numerics/index.js";

function counted(f: (x: number) => number): { f: (x: number) => number; count: () => number } {
  let calls = 0;
  return {
    f: (x) => {
      calls++;
      return f(x);
    },
    count: () => calls,
  };
}

describe("findRoot", () => {
  // Functions of Oliveira & Takahashi's comparison and of common test sets.
  test.each([
    ["x³ - x - 2", (x: number) => x ** 3 - x - 2, 1, 2, 1.5213797068045676],
    ["cos x - x", (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ["x e^x - 1", (x: number) => x * Math.exp(x) - 1, -1, 1, 0.5671432904097838],
    ["ln x, falling bracket", (x: number) => Math.log(x), 3, 0.2, 1],
    ["atan(x - 0.3)", (x: number) => Math.atan(x - 0.3), -50, 70, 0.3],
  ])("%s", (_, f, from, to, root) => {
    const { f: g, count } = counted(f);
    expect(Math.abs((findRoot(g, from, to, 1e-12) ?? Number.NaN) - root)).toBeLessThanOrEqual(1.001e-12);
    expect(count()).toBeLessThan(20);
  });
  test.each([
    ["a step", (x: number) => (x < 0.123456 ? -1 : 1)],
    ["a ninth power", (x: number) => (x - 0.123456) ** 9],
  ])("%s needs no more evaluations than bisection and one (and the two ends)", (_, f) => {
    const { f: g, count } = counted(f);
    expect(findRoot(g, -1, 1, 1e-9)).toBeCloseTo(0.123456, 8);
    expect(count()).toBeLessThanOrEqual(2 + Math.ceil(Math.log2(2 / 2e-9)) + 1);
  });
  test("finds the root of any rising cubic inside the tolerance", () => {
    const unit = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(
        unit,
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.boolean(),
        (root, steepness, falls) => {
          const f = (x: number) => (falls ? -1 : 1) * (x - root) * (1 + steepness * (x - root) ** 2);
          const found = findRoot(f, 0, 1, 1e-10);
          expect(Math.abs((found ?? Number.NaN) - root)).toBeLessThanOrEqual(1.01e-10);
        },
      ),
    );
  });
  test("a root at an end is returned; no change of sign is undefined", () => {
    expect(findRoot((x) => x, 0, 1, 1e-9)).toBe(0);
    expect(findRoot((x) => x - 1, 0, 1, 1e-9)).toBe(1);
    expect(findRoot((x) => x * x + 1, -1, 1, 1e-9)).toBeUndefined();
    expect(findRoot(() => Number.NaN, 0, 1, 1e-9)).toBeUndefined();
  });
  test.each([0, -1, Number.NaN])("refuses tolerance %s", (tolerance) => {
    expect(() => findRoot((x) => x, -1, 1, tolerance)).toThrow(/invalid tolerance/);
  });
});
