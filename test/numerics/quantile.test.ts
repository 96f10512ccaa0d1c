import { describe, expect, test } from "vitest";
import { bandOf, quantile, quantileOfSorted } from "../../src/numerics/index.js";

describe("quantile", () => {
  test("refuses NaN among the values, which sorting would hide at the end", () => {
    expect(() => quantile([1, Number.NaN, 3], 0.1)).toThrow(/invalid values: NaN/);
    expect(() => quantileOfSorted(Float64Array.of(1, 2, Number.NaN), 0.1)).toThrow(/invalid values: NaN/);
  });
});

test("a band is the three quantiles, of values in any order that stay as they are", () => {
  const values = Float64Array.from({ length: 41 }, (_, i) => (i * 17) % 41);
  const before = Float64Array.from(values);
  expect(bandOf(values)).toEqual({
    low: quantile(values, 0.05),
    mid: quantile(values, 0.5),
    high: quantile(values, 0.95),
  });
  expect(values).toEqual(before);
});
