import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  HEIGHT_OF_REPORTED_WIND,
  ROUGHNESS_LENGTH,
  windSpeedLogarithmic,
} from "../../src/properties/index.js";

const wind = fc.double({ min: 0.1, max: 30, noNaN: true });
const roughness = fc.constantFrom(...Object.values(ROUGHNESS_LENGTH));
const height = fc.double({ min: 0.3, max: 9.9, noNaN: true });

describe("wind near the ground", () => {
  test("is the reported wind at 10 m", () => {
    fc.assert(
      fc.property(wind, roughness, (v, z0) => {
        expect(windSpeedLogarithmic(v, HEIGHT_OF_REPORTED_WIND, z0)).toBeCloseTo(v, 12);
      }),
    );
  });

  test("is less lower down and over rougher ground, and in proportion to the reported wind", () => {
    fc.assert(
      fc.property(wind, height, fc.constantFrom(0.0002, 0.005, 0.03, 0.1), (v, z, z0) => {
        const here = windSpeedLogarithmic(v, z, z0);
        expect(here).toBeLessThan(v);
        expect(windSpeedLogarithmic(v, z / 1.2, z0)).toBeLessThan(here);
        expect(windSpeedLogarithmic(v, z, z0 * 2)).toBeLessThan(here);
        expect(windSpeedLogarithmic(2 * v, z, z0)).toBeCloseTo(2 * here, 9);
      }),
    );
  });

  test("is nothing at and below the roughness length", () => {
    expect(windSpeedLogarithmic(10, 0.03, 0.03)).toBe(0);
    expect(windSpeedLogarithmic(10, 0.3, 0.5)).toBe(0);
  });

  test("refuses negative wind, no height and absurd ground", () => {
    expect(() => windSpeedLogarithmic(-1, 2, 0.03)).toThrow("invalid windSpeed: -1");
    expect(() => windSpeedLogarithmic(5, 0, 0.03)).toThrow("invalid height: 0");
    expect(() => windSpeedLogarithmic(5, 2, 3)).toThrow("invalid roughness: 3");
  });
});
