import { requireInside, requireNotNegative } from "../units/index.js";
import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";
import { saturationPressureOverLiquid } from "./saturation-pressure.js";

// "ASHRAE" is ASHRAE Handbook, Fundamentals 2017, chapter 1: ideal-gas moist air. Humidity ratios are kg of water per kg
// of dry air. Tables of real moist air lie up to 0.5 % above (enhancement factor, left out here).

/** [1] molar mass of water over that of dry air (ASHRAE eq. 20). */
const MOLAR_MASS_RATIO_WATER_AIR = 0.621945;

const RANGE_PRESSURE_MOIST_AIR: ValidityRange = {
  quantity: "air pressure [Pa]",
  min: 20000,
  max: 120000,
  source: "project judgement: weather at any aerodrome and in flight",
};

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
