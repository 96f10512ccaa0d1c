import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  humidityRatio,
  isWetIso9223,
  saturationPressureIceHylandWexler,
  saturationPressureLiquidHylandWexler,
  saturationPressureLiquidMurphyKoop,
  saturationPressureLiquidWagnerPruss,
  saturationPressureOverIce,
  saturationPressureOverLiquid,
  saturationPressureOverStablePhase,
  tempCondensationPoint,
  tempDewPointFromVapourPressure,
  tempFrostPointFromDewPoint,
  tempFrostPointFromVapourPressure,
  tempWetBulb,
  vapourPressureFromDewPoint,
  vapourPressureFromRelativeHumidity,
} from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const SATURATION = {
  saturationPressureIceHylandWexler: [saturationPressureIceHylandWexler, 173.15, 273.16],
  saturationPressureLiquidHylandWexler: [saturationPressureLiquidHylandWexler, 213.15, 473.15],
  saturationPressureLiquidMurphyKoop: [saturationPressureLiquidMurphyKoop, 123, 332],
  saturationPressureLiquidWagnerPruss: [saturationPressureLiquidWagnerPruss, 273.16, 647],
  saturationPressureOverIce: [saturationPressureOverIce, 173.15, 273.16],
  saturationPressureOverLiquid: [saturationPressureOverLiquid, 123, 473.15],
  saturationPressureOverStablePhase: [saturationPressureOverStablePhase, 173.15, 473.15],
} as const;

describe.each(Object.entries(SATURATION))("%s", (_, [saturation, min, max]) => {
  test("rises with temperature", () => {
    fc.assert(
      fc.property(between(min, max - 0.01), between(0.005, 0.01), (temp, step) => {
        expect(saturation(temp + step)).toBeGreaterThan(saturation(temp));
      }),
    );
  });

  test("refuses what lies outside, and NaN", () => {
    for (const temp of [min - 1, max + 1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => saturation(temp)).toThrow(/^invalid temp: /);
    }
  });
});

test("the choosers are continuous at the triple point", () => {
  const below = 273.16 - 1e-9;
  expect(saturationPressureOverLiquid(below)).toBeCloseTo(saturationPressureOverLiquid(273.16), 3);
  expect(saturationPressureOverStablePhase(273.16)).toBeCloseTo(
    saturationPressureOverStablePhase(273.16 + 1e-9),
    3,
  );
});

test("the frost point lies above a METAR dew point below freezing, and meets it at the triple point", () => {
  fc.assert(
    fc.property(between(200, 273), (dew) => {
      const frost = tempFrostPointFromDewPoint(dew);
      expect(frost).toBeGreaterThan(dew);
      expect(frost).toBeLessThan(273.16);
    }),
  );
  expect(tempFrostPointFromDewPoint(273.16)).toBeCloseTo(273.16, 4);
  expect(() => tempFrostPointFromDewPoint(280)).toThrow(/^invalid tempDewPoint: 280 /);
});

test("wet bulb rises with humidity, through the step from ice to water too", () => {
  const tempAir = kelvinFromCelsius(3);
  let last = 0;
  for (let humidity = 0; humidity <= 1; humidity += 0.01) {
    const bulb = tempWetBulb(
      tempAir,
      humidityRatio(humidity * saturationPressureOverLiquid(tempAir), 1e5),
      1e5,
    );
    expect(bulb).toBeGreaterThan(last);
    last = bulb;
  }
});

test("frost grows warmer than air that is saturated over water", () => {
  const tempAir = kelvinFromCelsius(-20);
  const ratio = humidityRatio(vapourPressureFromDewPoint(tempAir), 1e5);
  const bulb = tempWetBulb(tempAir, ratio, 1e5);
  expect(bulb).toBeGreaterThan(tempAir);
  expect(bulb).toBeLessThan(tempFrostPointFromDewPoint(tempAir));
});

test("vapour pressure over ice is below that over supercooled water, whoever is asked", () => {
  fc.assert(
    fc.property(between(213.15, 273.15), (temp) => {
      const ice = saturationPressureIceHylandWexler(temp);
      expect(ice).toBeLessThan(saturationPressureLiquidHylandWexler(temp));
      expect(ice).toBeLessThan(saturationPressureLiquidMurphyKoop(temp));
    }),
  );
});

test("dew point and vapour pressure go round", () => {
  fc.assert(
    fc.property(between(193.15, 423.15), (dew) => {
      expect(tempDewPointFromVapourPressure(vapourPressureFromDewPoint(dew))).toBeCloseTo(dew, 6);
    }),
  );
  for (const t of [-20, 5, 50]) {
    const temp = kelvinFromCelsius(t);
    expect(tempCondensationPoint(saturationPressureOverStablePhase(temp))).toBeCloseTo(temp, 6);
  }
});

test("the wet bulb lies between the air and its condensation point", () => {
  fc.assert(
    fc.property(
      between(205, 330),
      between(0.01, 1),
      between(60000, 105000),
      (tempAir, humidity, pressure) => {
        const vapour = humidity * saturationPressureOverStablePhase(tempAir);
        const ratio = humidityRatio(vapour, pressure);
        const bulb = tempWetBulb(tempAir, ratio, pressure);
        expect(bulb).toBeLessThanOrEqual(tempAir + 1e-6);
        expect(bulb).toBeGreaterThanOrEqual(tempCondensationPoint(vapour) - 0.02);
      },
    ),
  );
});

test("bad states are refused by name", () => {
  expect(() => vapourPressureFromRelativeHumidity(1.2, 270)).toThrow(/^invalid relativeHumidity: 1.2/);
  expect(() => humidityRatio(90000, 80000)).toThrow(/^invalid pressureVapour: 90000/);
  expect(() => humidityRatio(-1, 80000)).toThrow(/^invalid pressureVapour: -1/);
  expect(() => humidityRatio(500, 1013)).toThrow(/^invalid pressure: 1013 /);
  expect(() => tempWetBulb(280, 0.02, 101325)).toThrow(/^invalid ratio: 0.02/);
  expect(() => tempDewPointFromVapourPressure(0)).toThrow(/^invalid pressureVapour: 0/);
  expect(() => tempFrostPointFromVapourPressure(700)).toThrow(/^invalid pressureVapour: 700/);
  // biome-ignore lint/suspicious/noExplicitAny: what a caller without types does
  expect(() => vapourPressureFromDewPoint(undefined as any)).toThrow(/^missing tempDewPoint: /);
});

test("air counts as wet by its rule, and only above 0 °C", () => {
  expect(isWetIso9223(kelvinFromCelsius(0), 0.99, "at-least")).toBe(false);
  expect(isWetIso9223(kelvinFromCelsius(0.1), 0.8, "above")).toBe(false);
  expect(isWetIso9223(kelvinFromCelsius(0.1), 0.8, "at-least")).toBe(true);
});
