import { createRequire } from "node:module";
import { beforeAll, expect, test } from "vitest";
import {
  humidityRatio,
  saturationPressureOverStablePhase,
  tempCondensationPoint,
  tempWetBulb,
} from "../../src/properties/index.js";
import { celsiusFromKelvin, kelvinFromCelsius } from "../../src/units/index.js";

/** The part of psychrolib used here; it ships no types and keeps its unit system in a global. */
interface Psychrolib {
  readonly SI: number;
  SetUnitSystem(system: number): void;
  GetSatVapPres(celsius: number): number;
  GetHumRatioFromVapPres(pressureVapour: number, pressure: number): number;
  GetVapPresFromHumRatio(ratio: number, pressure: number): number;
  GetTDewPointFromVapPres(celsius: number, pressureVapour: number): number;
  GetTWetBulbFromHumRatio(celsius: number, ratio: number, pressure: number): number;
  GetHumRatioFromTWetBulb(celsius: number, bulb: number, pressure: number): number;
  GetSatHumRatio(celsius: number, pressure: number): number;
  GetMoistAirEnthalpy(celsius: number, ratio: number): number;
  GetMoistAirVolume(celsius: number, ratio: number, pressure: number): number;
  GetMoistAirDensity(celsius: number, ratio: number, pressure: number): number;
}

const psychrolib: Psychrolib = createRequire(import.meta.url)("psychrolib");

const PRESSURES = [70000, 95461, 101325, 105000];
const TEMPS = [-60, -45, -30, -20, -10, -5, -1, -0.2, 0.5, 1, 5, 10, 20, 30, 45, 55];
const HUMIDITIES = [0.05, 0.2, 0.4, 0.6, 0.8, 0.95, 1];

/** Every temperature, pressure and degree of saturation over the stable phase, which is psychrolib's convention. */
const GRID = PRESSURES.flatMap((pressure) =>
  TEMPS.flatMap((t) =>
    HUMIDITIES.map((saturation) => ({ pressure, t, temp: kelvinFromCelsius(t), saturation })),
  ),
);

beforeAll(() => psychrolib.SetUnitSystem(psychrolib.SI));

test("saturation pressure agrees from -100 to 200 °C", () => {
  for (let t = -99.5; t <= 199.5; t += 0.5) {
    expect(saturationPressureOverStablePhase(kelvinFromCelsius(t)) / psychrolib.GetSatVapPres(t)).toBeCloseTo(
      1,
      12,
    );
  }
});

test("frost point and dew point agree to its iteration tolerance", () => {
  for (const { t, temp, saturation } of GRID) {
    const vapour = saturation * saturationPressureOverStablePhase(temp);
    const ours = celsiusFromKelvin(tempCondensationPoint(vapour));
    expect(Math.abs(ours - psychrolib.GetTDewPointFromVapPres(t, vapour))).toBeLessThan(0.002);
  }
});

test("wet bulb agrees to its bisection tolerance, except where both bulbs have a solution", () => {
  let compared = 0;
  for (const { t, temp, pressure, saturation } of GRID) {
    const ratio = humidityRatio(saturation * saturationPressureOverStablePhase(temp), pressure);
    if (ratio < 1e-7) continue;
    const theirs = psychrolib.GetTWetBulbFromHumRatio(t, ratio, pressure);
    const ours = celsiusFromKelvin(tempWetBulb(temp, ratio, pressure));
    // Theirs stops at the jump between its two equations; ours takes the water bulb there.
    if (Math.abs(theirs) < 0.01) continue;
    compared++;
    expect(Math.abs(ours - theirs), `${t} °C, ${saturation}, ${pressure} Pa`).toBeLessThan(0.005);
  }
  expect(compared).toBeGreaterThan(400);
});
