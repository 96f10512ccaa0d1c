import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  conductivityAir,
  densityAir,
  diffusivityAir,
  heatCapacityAir,
  kinematicViscosityAir,
  prandtlAir,
  viscosityAir,
} from "../../src/properties/index.js";

const temp = fc.double({ min: 200, max: 450, noNaN: true });
const step = fc.double({ min: 0.01, max: 50, noNaN: true });

describe("air", () => {
  test("gets lighter and thicker and conducts more as it warms", () => {
    fc.assert(
      fc.property(temp, step, (t, warmer) => {
        expect(densityAir(t + warmer)).toBeLessThan(densityAir(t));
        expect(viscosityAir(t + warmer)).toBeGreaterThan(viscosityAir(t));
        expect(conductivityAir(t + warmer)).toBeGreaterThan(conductivityAir(t));
        expect(kinematicViscosityAir(t + warmer)).toBeGreaterThan(kinematicViscosityAir(t));
      }),
    );
  });

  test("has density in proportion to pressure; diffusivities in inverse proportion", () => {
    fc.assert(
      fc.property(temp, fc.double({ min: 5e4, max: 1.1e5, noNaN: true }), (t, pressure) => {
        expect(densityAir(t, 2 * pressure) / densityAir(t, pressure)).toBeCloseTo(2, 12);
        expect(diffusivityAir(t, 2 * pressure) / diffusivityAir(t, pressure)).toBeCloseTo(0.5, 12);
      }),
    );
  });

  test("has a Prandtl number that is viscosity over diffusivity", () => {
    fc.assert(
      fc.property(temp, (t) => {
        expect(kinematicViscosityAir(t) / diffusivityAir(t)).toBeCloseTo(prandtlAir(t), 12);
      }),
    );
  });

  test("refuses temperatures and pressures that cannot be", () => {
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => densityAir(bad)).toThrow(`invalid temp: ${bad} (expected above 0 K)`);
      expect(() => densityAir(300, bad)).toThrow(`invalid pressure: ${bad} (expected above 0 Pa)`);
      expect(() => heatCapacityAir(bad)).toThrow(RangeError);
      expect(() => prandtlAir(bad)).toThrow(RangeError);
    }
  });
});
