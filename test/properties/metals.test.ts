import fc from "fast-check";
import { expect, test } from "vitest";
import {
  diametralClearance,
  METALS,
  type Metal,
  TEMP_REFERENCE_LENGTH,
  thermalStrain,
} from "../../src/properties/index.js";

const ALL: readonly (readonly [string, Metal])[] = Object.entries(METALS);
const temperatures = fc.double({ min: 214, max: 572, noNaN: true });

test.each(ALL)("%s expands steadily, by 10 to 30e-6 a kelvin", (_, metal) => {
  fc.assert(
    fc.property(temperatures, temperatures, (a, b) => {
      fc.pre(Math.abs(a - b) > 1e-3);
      const slope = (thermalStrain(metal.expansion, b) - thermalStrain(metal.expansion, a)) / (b - a);
      expect(slope).toBeGreaterThan(10e-6);
      expect(slope).toBeLessThan(30e-6);
    }),
    { numRuns: 50 },
  );
});

test.each(ALL)("%s is zero at 20 °C", (_, metal) => {
  expect(thermalStrain(metal.expansion, TEMP_REFERENCE_LENGTH)).toBeCloseTo(0, 15);
});

test.each(ALL)("%s names its origin", (_, metal) => {
  expect(metal.origin.length).toBeGreaterThan(3);
});

test("a cold crankcase closes on its shaft, a cold barrel opens around its piston", () => {
  const bearing = (temp: number) =>
    diametralClearance(
      { diameter: 0.06, expansion: METALS["aluminium-a356-t6"].expansion, temp },
      { diameter: 0.05994, expansion: METALS["steel-4340"].expansion, temp },
    );
  const piston = (temp: number) =>
    diametralClearance(
      { diameter: 0.1302, expansion: METALS["steel-nitriding"].expansion, temp },
      { diameter: 0.1299, expansion: METALS["aluminium-4032-t6"].expansion, temp },
    );
  fc.assert(
    fc.property(fc.double({ min: 214, max: 500, noNaN: true }), (temp) => {
      expect(bearing(temp)).toBeLessThan(bearing(temp + 5));
      expect(piston(temp)).toBeGreaterThan(piston(temp + 5));
    }),
  );
});

test("a piston warmed alone in a cold barrel can seize: the clearance turns negative", () => {
  const barrel = { diameter: 0.1302, expansion: METALS["steel-nitriding"].expansion, temp: 243.15 };
  const piston = { diameter: 0.13, expansion: METALS["aluminium-2618-t61"].expansion, temp: 400 };
  expect(diametralClearance(barrel, piston)).toBeLessThan(0);
});

test("bad input is refused by name", () => {
  const { expansion } = METALS.copper;
  expect(() => thermalStrain(expansion, 200)).toThrow(/^invalid temp: 200/);
  expect(() => thermalStrain(expansion, Number.NaN)).toThrow(/^invalid temp: NaN/);
  expect(() => thermalStrain({ warm: [] }, 300)).toThrow(/^missing warm/);
  const part = { diameter: 0, expansion, temp: 300 };
  expect(() => diametralClearance(part, part)).toThrow(/^invalid bore.diameter: 0/);
});
