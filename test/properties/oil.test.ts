import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  densityOil,
  dynamicViscosityOil,
  GENERIC_OILS,
  heatCapacityOil,
  isBelowPourPoint,
  kinematicViscosityOil,
  type Oil,
  waltherFit,
  waltherViscosity,
  waltherZ,
} from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { ENGINE_OIL_TABLE } from "../validation/engine-oil-table.js";

const oil = fc.constantFrom(...GENERIC_OILS);
const temp = fc.double({ min: 223.15, max: 423.15, noNaN: true });
/** [m2/s] the thinner of two measured viscosities, and how much thicker the other is. */
const nu100 = fc.double({ min: 3e-6, max: 30e-6, noNaN: true });
const ratio = fc.double({ min: 2, max: 20, noNaN: true });

describe("Walther line", () => {
  test("passes through the two viscosities it was made from", () => {
    fc.assert(
      fc.property(nu100, ratio, (hot, times) => {
        const fit = waltherFit(313.15, hot * times, 373.15, hot);
        expect(waltherViscosity(fit, 313.15) / (hot * times)).toBeCloseTo(1, 4);
        expect(waltherViscosity(fit, 373.15) / hot).toBeCloseTo(1, 4);
      }),
    );
  });

  test("equals the short form Z = nu + 0.7 above 2 mm2/s within 0.03 %", () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 1e6, noNaN: true }), (nu) => {
        expect(Math.abs(waltherZ(nu * 1e-6) / (nu + 0.7) - 1)).toBeLessThan(3e-4);
      }),
    );
  });

  test("refuses an oil that is thicker when hot, and what is not a number", () => {
    expect(() => waltherFit(313.15, 10e-6, 373.15, 20e-6)).toThrow(/invalid viscosities/);
    expect(() => waltherFit(313.15, 10e-6, 313.15, 10e-6)).toThrow(/invalid viscosities/);
    expect(() => waltherFit(313.15, Number.NaN, 373.15, 20e-6)).toThrow("invalid nu: NaN");
    expect(() => waltherZ(0)).toThrow("invalid nu: 0 (expected above 0 m2/s)");
  });
});

describe("an oil", () => {
  test("thickens without end as it cools", () => {
    fc.assert(
      fc.property(oil, temp, fc.double({ min: 0.01, max: 50, noNaN: true }), (anOil, t, cooler) => {
        expect(kinematicViscosityOil(anOil, t - cooler)).toBeGreaterThan(kinematicViscosityOil(anOil, t));
        expect(dynamicViscosityOil(anOil, t - cooler)).toBeGreaterThan(dynamicViscosityOil(anOil, t));
      }),
    );
  });

  test("has its data-sheet density at 15 °C", () => {
    for (const anOil of GENERIC_OILS) {
      expect(densityOil(anOil, kelvinFromCelsius(15))).toBeCloseTo(anOil.density15, 9);
    }
  });

  test("is flagged below its pour point and not at or above it", () => {
    fc.assert(
      fc.property(oil, fc.double({ min: 1e-6, max: 60, noNaN: true }), (anOil, by) => {
        expect(isBelowPourPoint(anOil, anOil.pourPoint - by)).toBe(true);
        expect(isBelowPourPoint(anOil, anOil.pourPoint)).toBe(false);
        expect(isBelowPourPoint(anOil, anOil.pourPoint + by)).toBe(false);
      }),
    );
  });
});

describe("the generic oils", () => {
  test("that are multigrades also meet the least viscosity of their winter grade", () => {
    const multigrades = GENERIC_OILS.filter((anOil) => anOil.winterGrade !== undefined);
    expect(multigrades.map((anOil) => anOil.id)).toEqual(["sae-20w-50", "sae-15w-50"]);
    // 5.6 mm2/s of 15W and 20W (SAE J300).
    for (const anOil of multigrades) expect(anOil.nu100).toBeGreaterThanOrEqual(5.6e-6);
  });

  test("have distinct ids and say that they are nobody's data", () => {
    expect(new Set(GENERIC_OILS.map((anOil: Oil) => anOil.id)).size).toBe(GENERIC_OILS.length);
    for (const anOil of GENERIC_OILS) expect(anOil.origin).toMatch(/from memory/);
  });
});

describe("the engine oil table used for validation", () => {
  test.each(ENGINE_OIL_TABLE)(
    "is consistent at $temp K: nu = mu / rho and Pr = nu / alpha within 1.6 %",
    (row) => {
      expect(Math.abs(row.mu / row.density / row.nu - 1)).toBeLessThan(0.016);
      expect(Math.abs(row.nu / row.alpha / row.prandtl - 1)).toBeLessThan(0.016);
      const diffusivity = row.conductivity / (row.density * row.heatCapacity);
      expect(Math.abs(diffusivity / row.alpha - 1)).toBeLessThan(0.016);
    },
  );
});

describe("warmer oil", () => {
  test("gets lighter and stores more as it warms", () => {
    fc.assert(
      fc.property(oil, temp, fc.double({ min: 0.01, max: 50, noNaN: true }), (anOil, t, warmer) => {
        expect(densityOil(anOil, t + warmer)).toBeLessThan(densityOil(anOil, t));
        expect(heatCapacityOil(t + warmer)).toBeGreaterThan(heatCapacityOil(t));
      }),
    );
  });
});
