import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pressureStandard, temperatureStandard } from "../../src/properties/index.js";

const altitude = fc.double({ min: -500, max: 10_900, noNaN: true });
const step = fc.double({ min: 0.01, max: 100, noNaN: true });

describe("standard atmosphere", () => {
  test("cools and thins with altitude", () => {
    fc.assert(
      fc.property(altitude, step, (h, higher) => {
        expect(temperatureStandard(h + higher)).toBeLessThan(temperatureStandard(h));
        expect(pressureStandard(h + higher)).toBeLessThan(pressureStandard(h));
      }),
    );
  });

  test("refuses what lies above the troposphere or is not a number", () => {
    expect(() => temperatureStandard(11_001)).toThrow("invalid altitude: 11001 (expected -5000 to 11000 m)");
    expect(() => pressureStandard(Number.NaN)).toThrow("invalid altitude: NaN");
  });
});
