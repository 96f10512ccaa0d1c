import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { interpolateLinear, UniformTable } from "../../src/numerics/index.js";

describe("UniformTable", () => {
  const table = new UniformTable(Math.exp, -1, 2, 30);

  test("takes the function's values at the nodes", () => {
    for (let i = 0; i <= 30; i++) expect(table.value(-1 + i / 10)).toBeCloseTo(Math.exp(-1 + i / 10), 12);
  });
  test("is exact for polynomials up to the third degree", () => {
    const cubic = new UniformTable((x) => 2 - x + 3 * x ** 2 - 0.5 * x ** 3, -3, 5, 4);
    for (let x = -3; x <= 5; x += 0.17) {
      expect(cubic.value(x)).toBeCloseTo(2 - x + 3 * x ** 2 - 0.5 * x ** 3, 10);
      expect(cubic.slope(x)).toBeCloseTo(-1 + 6 * x - 1.5 * x ** 2, 10);
    }
  });
  test("error falls as the fourth power of the spacing, that of the slope as the third", () => {
    const errors = [20, 40, 80].map((intervals) => worst(new UniformTable(Math.exp, -1, 2, intervals)));
    for (let k = 1; k < 3; k++) {
      expect(Math.log2(errors[k - 1].value / errors[k].value)).toBeGreaterThan(3.7);
      expect(Math.log2(errors[k - 1].slope / errors[k].slope)).toBeGreaterThan(2.8);
    }
  });
  test("the slope is that of the value, also where pieces meet and outside", () => {
    fc.assert(
      fc.property(fc.double({ min: -2, max: 3, noNaN: true }), (x) => {
        const step = 1e-6;
        const difference = (table.value(x + step) - table.value(x - step)) / (2 * step);
        expect(Math.abs(difference - table.slope(x))).toBeLessThan(1e-4);
      }),
    );
  });
  test("goes on in a straight line outside", () => {
    expect(table.value(3)).toBeCloseTo(table.value(2) + table.slope(2), 12);
    expect(table.value(-2)).toBeCloseTo(table.value(-1) - table.slope(-1), 12);
    expect(table.slope(100)).toBe(table.slope(2));
    expect(table.slope(-100)).toBe(table.slope(-1));
  });
  test("NaN gives NaN", () => {
    expect(table.value(Number.NaN)).toBeNaN();
    expect(table.slope(Number.NaN)).toBeNaN();
  });
  test("never asks the function for anything outside", () => {
    const inside = (x: number) => {
      if (!(x >= 0 && x <= 1)) throw new RangeError(`asked for ${x}`);
      return x ** 4;
    };
    expect(() => new UniformTable(inside, 0, 1, 7)).not.toThrow();
  });
  test("refuses a wrong span, too few intervals, a function that is not finite", () => {
    expect(() => new UniformTable(Math.exp, 1, 1, 10)).toThrow(/invalid to/);
    expect(() => new UniformTable(Math.exp, Number.NaN, 1, 10)).toThrow(/invalid to/);
    expect(() => new UniformTable(Math.exp, 0, 1, 3)).toThrow(/invalid intervals: 3/);
    expect(() => new UniformTable(Math.exp, 0, 1, 4.5)).toThrow(/invalid intervals/);
    expect(() => new UniformTable(Math.log, 0, 1, 10)).toThrow(/invalid f\(0\)/);
  });
});

describe("interpolateLinear", () => {
  const x = [0, 10, 20, 50];
  const y = [1, 3, -1, 5];
  test.each([
    [0, 1],
    [5, 2],
    [10, 3],
    [15, 1],
    [20, -1],
    [35, 2],
    [50, 5],
  ])("at %s: %s", (at, value) => {
    expect(interpolateLinear(x, y, at)).toBe(value);
  });
  test("one point is a table of that point alone", () => {
    expect(interpolateLinear([2], [7], 2)).toBe(7);
    expect(() => interpolateLinear([2], [7], 2.1)).toThrow(RangeError);
  });
  test.each([-0.1, 50.1, Number.NaN])("refuses to extrapolate to %s", (at) => {
    expect(() => interpolateLinear(x, y, at)).toThrow(`invalid at: ${at} (expected 0 to 50)`);
  });
  test("refuses lists of different length", () => {
    expect(() => interpolateLinear([0, 1], [0], 0.5)).toThrow(/invalid y: 1 values/);
    expect(() => interpolateLinear([], [], 0)).toThrow(/invalid y/);
  });
  test("stays between its neighbours and takes the values of the points", () => {
    const points = fc.uniqueArray(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 20 });
    fc.assert(
      fc.property(points, fc.double({ min: 0, max: 1, noNaN: true }), (unsorted, share) => {
        const xs = unsorted.sort((a, b) => a - b);
        const ys = xs.map((v) => Math.sin(v) * 10);
        const at = xs[0] + share * (xs[xs.length - 1] - xs[0]);
        const value = interpolateLinear(xs, ys, at);
        const k = Math.max(
          1,
          xs.findIndex((v) => v >= at),
        );
        expect(value).toBeGreaterThanOrEqual(Math.min(ys[k - 1], ys[k]) - 1e-9);
        expect(value).toBeLessThanOrEqual(Math.max(ys[k - 1], ys[k]) + 1e-9);
        xs.forEach((v, i) => {
          expect(interpolateLinear(xs, ys, v)).toBe(ys[i]);
        });
      }),
    );
  });
});

function worst(table: UniformTable): { value: number; slope: number } {
  let value = 0;
  let slope = 0;
  for (let x = -1; x <= 2; x += 1e-3) {
    value = Math.max(value, Math.abs(table.value(x) - Math.exp(x)));
    slope = Math.max(slope, Math.abs(table.slope(x) - Math.exp(x)));
  }
  return { value, slope };
}
