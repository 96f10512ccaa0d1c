import { describe, expect, test } from "vitest";
import { areaInSeries, finConductanceInfinite, stackFlow } from "../../src/properties/index.js";

describe("a long fin", () => {
  test("gives twice the heat at four times the coefficient, conductivity, perimeter or section, none in no air", () => {
    const base = finConductanceInfinite(10, 0.3, 150, 0.002);
    expect(finConductanceInfinite(40, 0.3, 150, 0.002) / base).toBeCloseTo(2, 12);
    expect(finConductanceInfinite(10, 1.2, 150, 0.002) / base).toBeCloseTo(2, 12);
    expect(finConductanceInfinite(10, 0.3, 600, 0.002) / base).toBeCloseTo(2, 12);
    expect(finConductanceInfinite(10, 0.3, 150, 0.008) / base).toBeCloseTo(2, 12);
    expect(finConductanceInfinite(0, 0.3, 150, 0.002)).toBe(0);
  });

  test("refuses what is no fin", () => {
    expect(() => finConductanceInfinite(-1, 0.3, 150, 0.002)).toThrow(/^invalid coefficient: -1/);
    expect(() => finConductanceInfinite(10, 0, 150, 0.002)).toThrow(/^invalid perimeter: 0/);
    expect(() => finConductanceInfinite(10, 0.3, Number.NaN, 0.002)).toThrow(/^invalid conductivity: NaN/);
    expect(() => finConductanceInfinite(10, 0.3, 150, -2)).toThrow(/^invalid section: -2/);
  });
});

describe("stack flow", () => {
  test("grows with the root of difference and height, is the same either way, and is nothing without a difference", () => {
    const base = stackFlow(0.05, 0.5, 10, 270);
    expect(stackFlow(0.05, 0.5, 40, 270) / base).toBeCloseTo(2, 12);
    expect(stackFlow(0.05, 2, 10, 270) / base).toBeCloseTo(2, 12);
    expect(stackFlow(0.1, 0.5, 10, 270) / base).toBeCloseTo(2, 12);
    expect(stackFlow(0.05, 0.5, -10, 270)).toBe(base);
    expect(stackFlow(0.05, 0.5, 0, 270)).toBe(0);
  });

  test("two openings pass less than the smaller of them, a shut one stops all", () => {
    expect(areaInSeries(0.03, 0.04)).toBeCloseTo(0.024, 12);
    expect(areaInSeries(0.05, 0.05)).toBeCloseTo(0.05 / Math.SQRT2, 12);
    expect(areaInSeries(0.05, 0)).toBe(0);
    expect(areaInSeries(0, 0)).toBe(0);
  });

  test("refuses what is no opening", () => {
    expect(() => stackFlow(-0.1, 0.5, 10, 270)).toThrow(/^invalid area: -0.1/);
    expect(() => stackFlow(0.1, 0, 10, 270)).toThrow(/^invalid height: 0/);
    expect(() => stackFlow(0.1, 0.5, 10, -3)).toThrow(/^invalid temp: -3/);
    expect(() => areaInSeries(0.1, Number.NaN)).toThrow(/^invalid second: NaN/);
  });
});
