import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  HEIGHT_OF_REPORTED_WIND,
  ROUGHNESS_LENGTH,
  windChill,
  windSpeedLogarithmic,
  windSpeedPowerLaw,
} from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";

const wind = fc.double({ min: 0.1, max: 30, noNaN: true });
const roughness = fc.constantFrom(...Object.values(ROUGHNESS_LENGTH));
const height = fc.double({ min: 0.3, max: 9.9, noNaN: true });

describe("wind near the ground", () => {
  test("is the reported wind at 10 m, by either law", () => {
    fc.assert(
      fc.property(wind, roughness, (v, z0) => {
        expect(windSpeedLogarithmic(v, HEIGHT_OF_REPORTED_WIND, z0)).toBeCloseTo(v, 12);
        expect(windSpeedPowerLaw(v, HEIGHT_OF_REPORTED_WIND)).toBeCloseTo(v, 12);
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
        expect(windSpeedPowerLaw(v, z / 1.2)).toBeLessThan(windSpeedPowerLaw(v, z));
      }),
    );
  });

  test("is nothing at and below the roughness length", () => {
    expect(windSpeedLogarithmic(10, 0.03, 0.03)).toBe(0);
    expect(windSpeedLogarithmic(10, 0.3, 0.5)).toBe(0);
  });

  test("by the power law 1/7 lies within 20 % of the logarithmic law over grass at engine height", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 3, noNaN: true }), (z) => {
        const ratio = windSpeedPowerLaw(5, z) / windSpeedLogarithmic(5, z, ROUGHNESS_LENGTH.openGrass);
        expect(Math.abs(ratio - 1)).toBeLessThan(0.2);
      }),
    );
  });

  test("refuses negative wind, no height and absurd ground", () => {
    expect(() => windSpeedLogarithmic(-1, 2, 0.03)).toThrow("invalid windSpeed: -1");
    expect(() => windSpeedLogarithmic(5, 0, 0.03)).toThrow("invalid height: 0");
    expect(() => windSpeedLogarithmic(5, 2, 3)).toThrow("invalid roughness: 3");
    expect(() => windSpeedPowerLaw(5, 2, Number.NaN)).toThrow("invalid exponent: NaN");
  });
});

describe("wind chill", () => {
  const temp = fc.double({ min: 223.15, max: 268.15, noNaN: true });
  const speed = fc.double({ min: 0, max: 25, noNaN: true });

  test("is at most the air temperature in calm, falls with wind and rises with temperature", () => {
    fc.assert(
      fc.property(temp, speed, (t, v) => {
        expect(windChill(t, v)).toBeLessThanOrEqual(t + 1e-9);
        expect(windChill(t, v + 0.5)).toBeLessThan(windChill(t, v));
        expect(windChill(t + 1, v)).toBeGreaterThan(windChill(t, v));
      }),
    );
  });

  test("joins its two branches at 5 km/h within 0.02 K at -20 °C", () => {
    const t = kelvinFromCelsius(-20);
    expect(Math.abs(windChill(t, 4.999999 / 3.6) - windChill(t, 5 / 3.6))).toBeLessThan(0.02);
  });

  test("is refused in air above 10 °C, where it means nothing", () => {
    expect(() => windChill(kelvinFromCelsius(11), 5)).toThrow(/invalid tempAir/);
    expect(() => windChill(Number.NaN, 5)).toThrow(/invalid tempAir: NaN/);
    expect(() => windChill(260, Number.NaN)).toThrow("invalid windSpeed: NaN");
  });
});
