import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createRandom, latinHypercubeNormals, normalQuantile, quantile } from "../../src/numerics/index.js";

describe("createRandom", () => {
  const many = (seed: number, n = 20_000) => {
    const random = createRandom(seed);
    return Float64Array.from({ length: n }, () => random.uniform());
  };

  test("the same seed gives the same numbers, another seed others", () => {
    expect(many(5, 50)).toEqual(many(5, 50));
    expect(many(5, 50)).not.toEqual(many(6, 50));
  });
  test.each([0, 1, 2, -7, 123456])("seed %s: uniform over (0, 1), neighbours uncorrelated", (seed) => {
    const u = many(seed);
    const n = u.length;
    const mean = u.reduce((a, b) => a + b) / n;
    const variance = u.reduce((a, b) => a + (b - mean) ** 2, 0) / n;
    const lag = u.subarray(1).reduce((a, b, i) => a + (b - mean) * (u[i] - mean), 0) / n / variance;
    // Four standard errors of each statistic.
    expect(Math.abs(mean - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / n));
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / n));
    expect(Math.abs(lag)).toBeLessThan(4 / Math.sqrt(n));
  });
  test("named streams are reproducible and independent of each other", () => {
    const a = Float64Array.from(
      { length: 5000 },
      (
        (r) => () =>
          r.normal()
      )(createRandom(1).stream("a")),
    );
    const b = Float64Array.from(
      { length: 5000 },
      (
        (r) => () =>
          r.normal()
      )(createRandom(1).stream("b")),
    );
    expect(a[0]).toBe(createRandom(1).stream("a").normal());
    const correlation = a.reduce((s, v, i) => s + v * b[i], 0) / a.length;
    expect(Math.abs(correlation)).toBeLessThan(4 / Math.sqrt(a.length));
  });
  test.each([0.5, Number.NaN, Number.POSITIVE_INFINITY])("refuses seed %s", (seed) => {
    expect(() => createRandom(seed)).toThrow("invalid seed");
  });
});

describe("latinHypercubeNormals", () => {
  test("every dimension has one value in each of the equally likely slices", () => {
    const members = 50;
    const sample = latinHypercubeNormals(3, members, createRandom(9));
    for (let d = 0; d < 3; d++) {
      const sorted = sample.slice(d * members, (d + 1) * members).sort();
      for (let k = 0; k < members - 1; k++) {
        const edge = normalQuantile((k + 1) / members);
        expect(sorted[k]).toBeLessThanOrEqual(edge);
        expect(sorted[k + 1]).toBeGreaterThanOrEqual(edge);
      }
    }
  });
  test("dimensions are uncorrelated", () => {
    const members = 2000;
    const s = latinHypercubeNormals(2, members, createRandom(3));
    let sum = 0;
    for (let m = 0; m < members; m++) sum += s[m] * s[members + m];
    expect(Math.abs(sum / members)).toBeLessThan(4 / Math.sqrt(members));
  });
});

describe("quantile", () => {
  test("type 7 of Hyndman & Fan", () => {
    expect(quantile([4, 1, 3, 2], 0.25)).toBeCloseTo(1.75, 12);
    expect(quantile([4, 1, 3, 2], 0.5)).toBe(2.5);
  });
  test("lies within the values, grows with p and ignores their order", () => {
    const values = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(
        values,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (v, p, q) => {
          const low = quantile(v, Math.min(p, q));
          expect(low).toBeGreaterThanOrEqual(Math.min(...v));
          expect(quantile(v, Math.max(p, q))).toBeGreaterThanOrEqual(low);
          expect(quantile([...v].reverse(), p)).toBe(quantile(v, p));
        },
      ),
      { seed: 4 },
    );
  });
  test("refuses nothing and p outside 0 to 1", () => {
    expect(() => quantile([], 0.5)).toThrow("missing values");
    expect(() => quantile([1], 1.1)).toThrow("invalid p: 1.1");
    expect(() => quantile([1], Number.NaN)).toThrow("invalid p: NaN");
  });
});
