import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { normalCdf, normalQuantile } from "../../src/numerics/index.js";

describe("normalCdf", () => {
  // Abramowitz & Stegun 1964, table 26.1 (15 decimals), and Q(5), Q(10) of table 26.2, from memory; all agree with
  // half the complementary error function of the C library to 1e-14.
  test.each([
    [0, 0.5],
    [0.5, 0.691462461274013],
    [1, 0.841344746068543],
    [1.5, 0.933192798731142],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
    [-1, 0.158655253931457],
  ])("Φ(%s) = %s", (x, value) => {
    expect(normalCdf(x)).toBeCloseTo(value, 14);
  });
  test.each([
    [-5, 2.866515718791939e-7],
    [-10, 7.61985302416053e-24],
    [-20, 2.753624118606234e-89],
  ])("tail Φ(%s) = %s, relative", (x, value) => {
    expect(normalCdf(x) / value).toBeCloseTo(1, 12);
  });
  test("is the inverse of normalQuantile", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true }), (p) => {
        expect(Math.abs(normalCdf(normalQuantile(p)) - p)).toBeLessThan(1e-13);
      }),
    );
  });
  test("series and continued fraction meet without a step", () => {
    expect(normalCdf(-2 + 1e-12) / normalCdf(-2)).toBeCloseTo(1, 11);
    expect(normalCdf(2) - normalCdf(2 - 1e-12)).toBeGreaterThan(0);
  });
  test("symmetric, monotone, 0 and 1 far out, refuses NaN", () => {
    for (let x = 0; x < 9; x += 0.1) {
      expect(normalCdf(x) + normalCdf(-x)).toBeCloseTo(1, 14);
      expect(normalCdf(-x - 0.1)).toBeLessThan(normalCdf(-x));
    }
    expect(normalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(normalCdf(Number.POSITIVE_INFINITY)).toBe(1);
    expect(() => normalCdf(Number.NaN)).toThrow(/invalid x: NaN/);
  });
});
