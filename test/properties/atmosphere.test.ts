import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  densityAir,
  densityAltitude,
  densityStandard,
  geometricFromGeopotential,
  geopotentialFromGeometric,
  pressureAltitude,
  pressureOfQnh,
  pressureOfSeaLevel,
  pressureStandard,
  temperatureStandard,
} from "../../src/properties/index.js";
import { METRES_OF_FOOT } from "../../src/units/index.js";

const altitude = fc.double({ min: -500, max: 10_900, noNaN: true });
const step = fc.double({ min: 0.01, max: 100, noNaN: true });

describe("standard atmosphere", () => {
  test("cools, thins and lightens with altitude", () => {
    fc.assert(
      fc.property(altitude, step, (h, higher) => {
        expect(temperatureStandard(h + higher)).toBeLessThan(temperatureStandard(h));
        expect(pressureStandard(h + higher)).toBeLessThan(pressureStandard(h));
        expect(densityStandard(h + higher)).toBeLessThan(densityStandard(h));
      }),
    );
  });

  test("gives back pressure altitude, density altitude and geometric height", () => {
    fc.assert(
      fc.property(altitude, (h) => {
        expect(pressureAltitude(pressureStandard(h))).toBeCloseTo(h, 6);
        expect(densityAltitude(temperatureStandard(h), pressureStandard(h))).toBeCloseTo(h, 6);
        expect(geopotentialFromGeometric(geometricFromGeopotential(h))).toBeCloseTo(h, 6);
      }),
    );
  });

  test("density altitude is where the standard atmosphere has the air's density", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 220, max: 310, noNaN: true }),
        fc.double({ min: 7e4, max: 1.05e5, noNaN: true }),
        (temp, pressure) => {
          expect(densityStandard(densityAltitude(temp, pressure))).toBeCloseTo(densityAir(temp, pressure), 9);
        },
      ),
    );
  });

  test("the 120 ft rule errs by more than 500 ft in deep cold", () => {
    const exact = densityAltitude(243.15, 101325) / METRES_OF_FOOT;
    const rule = 120 * (243.15 - 288.15);
    expect(rule - exact).toBeGreaterThan(500);
  });

  test("refuses what lies above the troposphere or is not a number", () => {
    expect(() => temperatureStandard(11_001)).toThrow("invalid altitude: 11001 (expected -5000 to 11000 m)");
    expect(() => pressureStandard(Number.NaN)).toThrow("invalid altitude: NaN");
    expect(() => pressureAltitude(0)).toThrow("invalid pressure: 0");
    expect(() => densityAltitude(Number.NaN, 101325)).toThrow("invalid temp: NaN");
    expect(() => geopotentialFromGeometric(Number.NaN)).toThrow("invalid height: NaN");
  });
});

describe("pressure at the aerodrome", () => {
  test("of standard QNH is the standard atmosphere's", () => {
    fc.assert(
      fc.property(altitude, (h) => {
        expect(pressureOfQnh(101325, h)).toBeCloseTo(pressureStandard(h), 6);
      }),
    );
  });

  test("at sea level is what was given", () => {
    fc.assert(
      fc.property(fc.double({ min: 9.5e4, max: 1.05e5, noNaN: true }), (pressure) => {
        expect(pressureOfQnh(pressure, 0)).toBeCloseTo(pressure, 6);
        expect(pressureOfSeaLevel(pressure, 0, 260)).toBeCloseTo(pressure, 9);
      }),
    );
  });

  test("falls about 1 hPa in 8 m, faster in cold air", () => {
    const warm = pressureOfSeaLevel(101325, 300, 288.15);
    const cold = pressureOfSeaLevel(101325, 300, 243.15);
    expect((101325 - warm) / 300).toBeCloseTo(12, 0);
    expect(cold).toBeLessThan(warm);
    const standard = pressureOfSeaLevel(101325, 300, temperatureStandard(300));
    expect(Math.abs(standard - pressureOfQnh(101325, 300))).toBeLessThan(1);
  });

  test("refuses a pressure in hPa", () => {
    expect(() => pressureOfQnh(1013, 100)).toThrow("invalid pressure: 1013");
  });
});
