import { describe, expect, test } from "vitest";
import { quantile, quantileOfSorted } from "../../src/numerics/index.js";

describe("quantile", () => {
  test("refuses NaN among the values, which sorting would hide at the end", () => {
    expect(() => quantile([1, Number.NaN, 3], 0.1)).toThrow(/invalid values: NaN/);
    expect(() => quantileOfSorted(Float64Array.of(1, 2, Number.NaN), 0.1)).toThrow(/invalid values: NaN/);
  });
});
