import fc from "fast-check";
import { expect, test } from "vitest";
import {
  densityAvgas,
  FLAMMABILITY_GASOLINE,
  type FuelVolatility,
  fuelVapourFraction,
  fuelVapourPressureAp42,
  startingMixture,
  tempOfFuelVapourFraction,
} from "../../src/properties/index.js";
import { kelvinFromCelsius, PASCAL_OF_PSI } from "../../src/units/index.js";

const SEA_LEVEL = 101325;
const fuels = fc.record({
  reidVapourPressure: fc.double({ min: 3.1 * PASCAL_OF_PSI, max: 14.9 * PASCAL_OF_PSI, noNaN: true }),
  distillationSlope: fc.double({ min: 2, max: 3.5, noNaN: true }),
});
const temperatures = fc.double({ min: 215, max: 330, noNaN: true });

test("vapour pressure rises with temperature and with Reid vapour pressure", () => {
  fc.assert(
    fc.property(fuels, temperatures, (fuel, temp) => {
      const pressure = fuelVapourPressureAp42(fuel, temp);
      expect(fuelVapourPressureAp42(fuel, temp + 1)).toBeGreaterThan(pressure);
      const livelier = { ...fuel, reidVapourPressure: fuel.reidVapourPressure * 1.005 };
      expect(fuelVapourPressureAp42(livelier, temp)).toBeGreaterThan(pressure);
    }),
  );
});

test("the temperature of a vapour fraction goes round", () => {
  fc.assert(
    fc.property(fuels, temperatures, (fuel, temp) => {
      const fraction = fuelVapourFraction(fuel, temp, SEA_LEVEL);
      fc.pre(fraction < 1);
      expect(tempOfFuelVapourFraction(fuel, fraction, SEA_LEVEL)).toBeCloseTo(temp, 8);
    }),
  );
});

test("the vapour fraction never passes 1, and flammable temperatures fall with altitude", () => {
  const lively: FuelVolatility = { reidVapourPressure: 14 * PASCAL_OF_PSI, distillationSlope: 3 };
  expect(fuelVapourFraction(lively, kelvinFromCelsius(55), 60000)).toBe(1);
  expect(tempOfFuelVapourFraction(lively, FLAMMABILITY_GASOLINE.lean, 70000)).toBeLessThan(
    tempOfFuelVapourFraction(lively, FLAMMABILITY_GASOLINE.lean, SEA_LEVEL),
  );
});

const LEAST_VOLATILE = { reidVapourPressure: 5.5 * PASCAL_OF_PSI, distillationSlope: 2 };

test("a colder intake asks for more fuel, until even saturated air is too lean", () => {
  const warm = kelvinFromCelsius(15);
  const at = (t: number) => startingMixture(LEAST_VOLATILE, kelvinFromCelsius(t), SEA_LEVEL, warm);
  let last = 0;
  for (let t = 14; t >= -55; t--) {
    expect(at(t).offeredRatio).toBeGreaterThan(last);
    last = at(t).offeredRatio;
  }
  expect(at(20).offeredRatio).toBe(1);
  const limit = tempOfFuelVapourFraction(LEAST_VOLATILE, FLAMMABILITY_GASOLINE.lean, SEA_LEVEL);
  const around = (shift: number) => startingMixture(LEAST_VOLATILE, limit + shift, SEA_LEVEL, warm);
  expect(around(0.01).status).toBe("ignitable");
  expect(around(-0.01).status).toBe("too-lean");
});

test("bad input is refused by name", () => {
  const temp = kelvinFromCelsius(-10);
  const withReid = (reidVapourPressure: number) => ({ reidVapourPressure, distillationSlope: 2 });
  // biome-ignore lint/suspicious/noExplicitAny: a record read from elsewhere
  const unknown = { distillationSlope: 2 } as any;
  expect(() => fuelVapourPressureAp42(unknown, temp)).toThrow(/^missing reidVapourPressure: /);
  for (const psi of [2.9, 15.1, Number.NaN]) {
    expect(() => fuelVapourPressureAp42(withReid(psi * PASCAL_OF_PSI), temp)).toThrow(
      /^invalid reidVapourPressure: /,
    );
  }
  // 7 given as psi where Pa is meant
  expect(() => fuelVapourPressureAp42(withReid(7), temp)).toThrow(/^invalid reidVapourPressure: 7 /);
  expect(() => fuelVapourPressureAp42({ ...LEAST_VOLATILE, distillationSlope: 0 }, temp)).toThrow(
    /^invalid distillationSlope: 0/,
  );
  expect(() => fuelVapourPressureAp42(LEAST_VOLATILE, 200)).toThrow(/^invalid temp: 200/);
  expect(() => fuelVapourFraction(LEAST_VOLATILE, temp, 1013)).toThrow(/^invalid pressure: 1013/);
  expect(() => tempOfFuelVapourFraction(LEAST_VOLATILE, 1.4, SEA_LEVEL)).toThrow(/^invalid fraction: 1.4/);
  expect(() => densityAvgas(400)).toThrow(/^invalid temp: 400/);
});
