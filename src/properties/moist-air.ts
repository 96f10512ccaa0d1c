import { celsiusFromKelvin, requireInside, requireNotNegative } from "../units/index.js";
import { vapourPressureFromDewPoint } from "./dew-point.js";
import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";
import {
  saturationPressureOverIce,
  saturationPressureOverLiquid,
  saturationPressureOverStablePhase,
} from "./saturation-pressure.js";

// "ASHRAE" is ASHRAE Handbook, Fundamentals 2017, chapter 1: ideal-gas moist air. Humidity ratios are kg of water per kg
// of dry air. Tables of real moist air lie up to 0.5 % above (enhancement factor, left out here).

/** [1] molar mass of water over that of dry air (ASHRAE eq. 20). */
export const MOLAR_MASS_RATIO_WATER_AIR = 0.621945;
/** [J/(kg K)] gas constant of dry air in the ASHRAE equations; differs from ISO 2533 by 0.004 %. */
const GAS_CONSTANT_ASHRAE = 287.042;

export const RANGE_TEMP_MOIST_AIR: ValidityRange = {
  quantity: "air temperature [K]",
  min: 173.15,
  max: 473.15,
  source: "ASHRAE Fundamentals 2017 ch. 1",
};
export const RANGE_PRESSURE_MOIST_AIR: ValidityRange = {
  quantity: "air pressure [Pa]",
  min: 20000,
  max: 120000,
  source: "project judgement: weather at any aerodrome and in flight",
};
/** More water than dry air is no weather. */
const MOST_HUMIDITY_RATIO = 1;

/** [1] relative humidity over liquid (WMO convention at all temperatures) at `pressureVapour` [Pa], `tempAir` [K]. */
export function relativeHumidityOverLiquid(pressureVapour: number, tempAir: number): number {
  requireNotNegative("pressureVapour", pressureVapour, "Pa");
  return pressureVapour / saturationPressureOverLiquid(tempAir);
}

/** [1] relative humidity over ice, `tempAir` [K] at most 273.16; above 1, frost grows on whatever is as cold as the air. */
export function relativeHumidityOverIce(pressureVapour: number, tempAir: number): number {
  requireNotNegative("pressureVapour", pressureVapour, "Pa");
  return pressureVapour / saturationPressureOverIce(tempAir);
}

/**
 * [1] relative humidity over liquid from a METAR pair, `tempDewPoint` and `tempAir` [K]. A dew point above the air
 * temperature is refused.
 */
export function relativeHumidityFromDewPoint(tempDewPoint: number, tempAir: number): number {
  if (!(tempDewPoint <= tempAir)) {
    throw new RangeError(`invalid tempDewPoint: ${tempDewPoint} (expected at most tempAir, ${tempAir} K)`);
  }
  return relativeHumidityOverLiquid(vapourPressureFromDewPoint(tempDewPoint), tempAir);
}

/** [Pa] vapour pressure at `relativeHumidity` [1], 0 to 1 over liquid, and `tempAir` [K]. */
export function vapourPressureFromRelativeHumidity(relativeHumidity: number, tempAir: number): number {
  requireInside("relativeHumidity", relativeHumidity, 0, 1, "[1]");
  return relativeHumidity * saturationPressureOverLiquid(tempAir);
}

/**
 * [kg/kg] W = 0.621945 pv/(p - pv), `pressureVapour` and `pressure` [Pa] (ASHRAE eq. 20).
 * @example humidityRatio(3169.7, 95461) // 0.02136
 */
export function humidityRatio(pressureVapour: number, pressure: number): number {
  requireNotNegative("pressureVapour", pressureVapour, "Pa");
  requireInRange("pressure", pressure, RANGE_PRESSURE_MOIST_AIR);
  if (!(pressureVapour < pressure)) {
    throw new RangeError(
      `invalid pressureVapour: ${pressureVapour} (expected below pressure, ${pressure} Pa)`,
    );
  }
  return (MOLAR_MASS_RATIO_WATER_AIR * pressureVapour) / (pressure - pressureVapour);
}

/** [kg/kg] humidity ratio of air saturated over the stable phase at `temp` [K] and `pressure` [Pa] (ASHRAE eq. 21). */
export function humidityRatioSaturated(temp: number, pressure: number): number {
  return humidityRatio(saturationPressureOverStablePhase(temp), pressure);
}

/** [Pa] vapour pressure of air with humidity ratio `ratio` [kg/kg] at `pressure` [Pa]: inverse of {@link humidityRatio}. */
export function vapourPressureFromHumidityRatio(ratio: number, pressure: number): number {
  requireInside("ratio", ratio, 0, MOST_HUMIDITY_RATIO, "kg/kg");
  requireInRange("pressure", pressure, RANGE_PRESSURE_MOIST_AIR);
  return (pressure * ratio) / (MOLAR_MASS_RATIO_WATER_AIR + ratio);
}

/**
 * [J] per kg of dry air, zero for dry air at 0 °C: h = 1006 t + W (2501000 + 1860 t), t in °C (ASHRAE eq. 30).
 * @example enthalpyMoistAir(303.15, 0.02) // 81316
 */
export function enthalpyMoistAir(tempAir: number, ratio: number): number {
  requireState(tempAir, ratio);
  const celsius = celsiusFromKelvin(tempAir);
  return 1006 * celsius + ratio * (2.501e6 + 1860 * celsius);
}

/**
 * [m3] per kg of dry air: v = 287.042 T (1 + 1.607858 W)/p (ASHRAE eq. 26).
 * @example specificVolumeMoistAir(303.15, 0.02, 95461) // 0.94086
 */
export function specificVolumeMoistAir(tempAir: number, ratio: number, pressure: number): number {
  requireState(tempAir, ratio);
  requireInRange("pressure", pressure, RANGE_PRESSURE_MOIST_AIR);
  return (GAS_CONSTANT_ASHRAE * tempAir * (1 + 1.607858 * ratio)) / pressure;
}

/** [kg/m3] of moist air: (1 + W)/v (ASHRAE eq. 11). */
export function densityMoistAir(tempAir: number, ratio: number, pressure: number): number {
  return (1 + ratio) / specificVolumeMoistAir(tempAir, ratio, pressure);
}

function requireState(tempAir: number, ratio: number): void {
  requireInRange("tempAir", tempAir, RANGE_TEMP_MOIST_AIR);
  requireInside("ratio", ratio, 0, MOST_HUMIDITY_RATIO, "kg/kg");
}
