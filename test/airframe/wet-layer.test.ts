import fc from "fast-check";
import { expect, test } from "vitest";
import { saturationPressureAtSurface } from "../../src/airframe/saturation.js";
import { newLayerRates, writeLayerRates } from "../../src/airframe/wet-layer.js";
import { saturationPressureOverIce, saturationPressureOverLiquid } from "../../src/properties/index.js";

const temps = fc.double({ min: 223.15, max: 313.15, noNaN: true });
const masses = fc.double({ min: 0, max: 5, noNaN: true });

function rates(temp: number, ice: number, water: number, pressure: number) {
  const out = newLayerRates();
  writeLayerRates(temp, ice, water, pressure, 3e-8, out);
  return out;
}

test("the tables follow the saturation pressures", () => {
  for (let t = 213.15; t < 333.15; t += 0.37) {
    const exact = t < 273.16 ? saturationPressureOverIce(t) : saturationPressureOverLiquid(t);
    expect(Math.abs(saturationPressureAtSurface(t) / exact - 1)).toBeLessThan(1e-6);
  }
  expect(saturationPressureAtSurface(100)).toBe(0);
});

test("ice melts above 0 °C only, water freezes below only, and a bare face does neither", () => {
  fc.assert(
    fc.property(temps, masses, masses, (temp, ice, water) => {
      const { melting } = rates(temp, ice, water, 611);
      if (temp > 273.15) expect(melting).toBeGreaterThanOrEqual(0);
      else expect(melting).toBeLessThanOrEqual(0);
      expect(rates(temp, 0, 0, 611).melting).toBeCloseTo(0, 15);
    }),
  );
});

test("a face colder than the frost point gains vapour, a warmer one loses at most what it has", () => {
  fc.assert(
    fc.property(
      temps,
      masses,
      masses,
      fc.double({ min: 10, max: 5000, noNaN: true }),
      (temp, ice, water, pressure) => {
        const { vapourToIce, vapourToWater } = rates(temp, ice, water, pressure);
        const flux = vapourToIce + vapourToWater;
        if (pressure > saturationPressureAtSurface(temp)) expect(flux).toBeGreaterThan(0);
        else expect(flux).toBeLessThanOrEqual(0);
        const bare = rates(temp, 0, 0, pressure);
        expect(bare.vapourToIce + bare.vapourToWater).toBeGreaterThanOrEqual(0);
      },
    ),
  );
});

test("frost comes below 0 °C and dew above", () => {
  expect(rates(270, 0, 0, 600).vapourToWater).toBe(0);
  expect(rates(270, 0, 0, 600).vapourToIce).toBeGreaterThan(0);
  expect(rates(276, 0, 0, 900).vapourToIce).toBe(0);
  expect(rates(276, 0, 0, 900).vapourToWater).toBeGreaterThan(0);
});

test("depositing frees heat, melting and evaporating take it", () => {
  expect(rates(270, 0, 0, 600).heat).toBeGreaterThan(0);
  expect(rates(273.3, 1, 0, 611).heat).toBeLessThan(0);
  expect(rates(283, 0, 0.2, 400).heat).toBeLessThan(0);
});
