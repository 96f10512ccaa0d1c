import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  radiantExchange,
  radiationCoefficient,
  STEFAN_BOLTZMANN,
  skyEmissivityNight,
  skyTemperature,
} from "../../src/properties/index.js";

const temp = fc.double({ min: 200, max: 600, noNaN: true });
const part = fc.double({ min: 0, max: 1, noNaN: true });
/** [K] dew points of the coldest and mildest winters */
const dewPoint = fc.double({ min: 203.15, max: 293.15, noNaN: true });
const step = fc.double({ min: 0.01, max: 30, noNaN: true });

describe("radiation", () => {
  test("the coefficient times the difference is the exchange", () => {
    fc.assert(
      fc.property(temp, temp, part, (hot, cold, emissivity) => {
        const exchange = radiantExchange(hot, cold, emissivity);
        expect(radiationCoefficient(hot, cold, emissivity) * (hot - cold)).toBeCloseTo(exchange, 8);
        expect(radiantExchange(cold, hot, emissivity)).toBeCloseTo(-exchange, 8);
      }),
    );
  });

  test("the constant is 2 pi^5 k^4 / (15 h^3 c^2) of the exact SI constants", () => {
    const boltzmann = 1.380649e-23;
    const planck = 6.62607015e-34;
    const light = 299_792_458;
    const computed = (2 * Math.PI ** 5 * boltzmann ** 4) / (15 * planck ** 3 * light ** 2);
    expect(Math.abs(STEFAN_BOLTZMANN / computed - 1)).toBeLessThan(1e-9);
  });

  test("refuses an emissivity beyond 0 to 1", () => {
    expect(() => radiantExchange(300, 280, 1.01)).toThrow("invalid emissivity: 1.01 (expected 0 to 1");
    expect(() => radiationCoefficient(300, 280, Number.NaN)).toThrow("invalid emissivity: NaN");
    expect(() => radiantExchange(0, 280, 0.9)).toThrow("invalid tempSurface: 0");
  });
});

describe("sky", () => {
  test("emissivity rises with dew point through the deepest cold, and radiates more as the air warms", () => {
    fc.assert(
      fc.property(dewPoint, step, (t, moister) => {
        const air = t + 5;
        const moist = skyEmissivityNight(air, t + moister, 101_325);
        expect(moist).toBeGreaterThan(skyEmissivityNight(air, t, 101_325));
        const warmer = skyEmissivityNight(air + moister, t, 101_325) * (air + moister) ** 4;
        expect(warmer).toBeGreaterThan(skyEmissivityNight(air, t, 101_325) * air ** 4);
      }),
    );
  });

  test("is never warmer than the air and never absurdly cold; warms with air, moisture and cloud", () => {
    const air = fc.double({ min: 213.15, max: 303.15, noNaN: true });
    fc.assert(
      fc.property(air, dewPoint, part, step, (tempAir, tempDew, cloud, more) => {
        const sky = skyTemperature(tempAir, tempDew, cloud);
        expect(sky).toBeLessThanOrEqual(tempAir);
        expect(sky).toBeGreaterThan(tempAir - 45);
        expect(skyTemperature(tempAir + more, tempDew, cloud)).toBeGreaterThan(sky);
        expect(skyTemperature(tempAir, tempDew + more, cloud)).toBeGreaterThanOrEqual(sky);
        expect(skyTemperature(tempAir, tempDew, Math.min(1, cloud + more / 30))).toBeGreaterThanOrEqual(sky);
      }),
    );
  });

  test("refuses cloud in tenths or oktas", () => {
    expect(() => skyTemperature(263.15, 258.15, 8)).toThrow("invalid cloudCover: 8 (expected 0 to 1");
    expect(() => skyTemperature(263.15, 258.15, Number.NaN)).toThrow("invalid cloudCover: NaN");
    expect(() => skyTemperature(Number.NaN, 258.15, 0)).toThrow("invalid tempAir: NaN");
  });
});
