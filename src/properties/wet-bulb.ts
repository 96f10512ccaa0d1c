import { findRoot } from "../numerics/index.js";
import { celsiusFromKelvin, KELVIN_OF_ZERO_CELSIUS, requireInside } from "../units/index.js";
import { humidityRatio } from "./moist-air.js";
import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";
import { saturationPressureOverIce, saturationPressureOverLiquid } from "./saturation-pressure.js";

// "ASHRAE" is ASHRAE Handbook, Fundamentals 2017, chapter 1. The thermodynamic wet bulb stands for the temperature a wet
// (or iced) skin settles at in moving air without sun or sky.

const RANGE_TEMP_WET_BULB: ValidityRange = {
  quantity: "air temperature [K]",
  min: 193.15,
  max: 333.15,
  source: "ASHRAE Fundamentals 2017 ch. 1; narrowed so that water never boils at flying pressures",
};

const COLDEST_BULB = 173.15;
/** [K] far below what any instrument resolves. */
const TOLERANCE = 1e-9;
/** Rounding slack of a humidity ratio that was itself computed as saturated. */
const SLACK = 1 + 1e-9;

/**
 * [K] wet bulb of air at `tempAir` [K], humidity ratio `ratio` [kg/kg] and `pressure` [Pa]. A water bulb is taken
 * wherever one of 0 °C or more exists, else an ice bulb. Air wetter than saturation over ice is allowed up to saturation
 * over liquid (its ice bulb is warmer than the air, as frost grows on it); wetter air is refused.
 * @example tempWetBulb(280.15, 0.003825, 100000) // 277.08
 */
export function tempWetBulb(tempAir: number, ratio: number, pressure: number): number {
  requireInRange("tempAir", tempAir, RANGE_TEMP_WET_BULB);
  const saturated = humidityRatio(saturationPressureOverLiquid(tempAir), pressure);
  requireInside("ratio", ratio, 0, saturated * SLACK, "kg/kg, saturated over liquid");
  if (
    tempAir >= KELVIN_OF_ZERO_CELSIUS &&
    ratio >= ratioOverWaterBulb(tempAir, KELVIN_OF_ZERO_CELSIUS, pressure)
  ) {
    const mismatch = (bulb: number) => ratioOverWaterBulb(tempAir, bulb, pressure) - ratio;
    return findRoot(mismatch, KELVIN_OF_ZERO_CELSIUS, tempAir, TOLERANCE) ?? tempAir;
  }
  const mismatch = (bulb: number) => ratioOverIceBulb(tempAir, bulb, pressure) - ratio;
  return findRoot(mismatch, COLDEST_BULB, KELVIN_OF_ZERO_CELSIUS, TOLERANCE) ?? KELVIN_OF_ZERO_CELSIUS;
}

function ratioOverWaterBulb(tempAir: number, tempBulb: number, pressure: number): number {
  const air = celsiusFromKelvin(tempAir);
  const bulb = celsiusFromKelvin(tempBulb);
  const saturated = humidityRatio(saturationPressureOverLiquid(tempBulb), pressure);
  return ((2501 - 2.326 * bulb) * saturated - 1.006 * (air - bulb)) / (2501 + 1.86 * air - 4.186 * bulb);
}

function ratioOverIceBulb(tempAir: number, tempBulb: number, pressure: number): number {
  const air = celsiusFromKelvin(tempAir);
  const bulb = celsiusFromKelvin(tempBulb);
  const saturated = humidityRatio(saturationPressureOverIce(tempBulb), pressure);
  return ((2830 - 0.24 * bulb) * saturated - 1.006 * (air - bulb)) / (2830 + 1.86 * air - 2.1 * bulb);
}
