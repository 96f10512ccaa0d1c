import { findRoot } from "../numerics/index.js";
import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";
import {
  saturationPressureOverIce,
  saturationPressureOverLiquid,
  TEMP_TRIPLE_POINT_WATER,
} from "./saturation-pressure.js";

/** Dew points (over liquid) that are handled: -80 to 150 °C. */
export const RANGE_DEW_POINT: ValidityRange = {
  quantity: "dew point [K]",
  min: 193.15,
  max: 423.15,
  source: "project judgement inside the ranges of Murphy & Koop 2005 and Hyland & Wexler 1983",
};
/** Frost points (over ice) that are handled: -100 °C to the triple point. */
const RANGE_FROST_POINT: ValidityRange = {
  quantity: "frost point [K]",
  min: 173.15,
  max: TEMP_TRIPLE_POINT_WATER,
  source: "Hyland & Wexler 1983",
};

/** [K] far below what any humidity sensor resolves. */
const TOLERANCE = 1e-10;

/**
 * [Pa] vapour pressure of air with dew point `tempDewPoint` [K] over liquid, as METAR reports it at all temperatures
 * (FMH-1, 1995, 10.4.3).
 * @example vapourPressureFromDewPoint(283.15) // 1228.0
 */
export function vapourPressureFromDewPoint(tempDewPoint: number): number {
  requireInRange("tempDewPoint", tempDewPoint, RANGE_DEW_POINT);
  return saturationPressureOverLiquid(tempDewPoint);
}

/** [K] dew point over liquid at vapour pressure `pressureVapour` [Pa]: inverse of {@link vapourPressureFromDewPoint}. */
export function tempDewPointFromVapourPressure(pressureVapour: number): number {
  return inverse(saturationPressureOverLiquid, RANGE_DEW_POINT, pressureVapour);
}

/** [K] frost point at vapour pressure `pressureVapour` [Pa], at most 611.66: inverse of {@link vapourPressureFromFrostPoint}. */
export function tempFrostPointFromVapourPressure(pressureVapour: number): number {
  return inverse(saturationPressureOverIce, RANGE_FROST_POINT, pressureVapour);
}

/**
 * [K] frost point that belongs to a METAR dew point below freezing: the temperature at which a surface starts to
 * collect frost, never below the dew point. `tempDewPoint` [K] 193.15 to 273.16.
 * @example tempFrostPointFromDewPoint(253.15) // 255.20: -20 °C over water is -17.95 °C over ice
 */
export function tempFrostPointFromDewPoint(tempDewPoint: number): number {
  requireInRange("tempDewPoint", tempDewPoint, { ...RANGE_DEW_POINT, max: TEMP_TRIPLE_POINT_WATER });
  // At the triple point itself the two branches differ in the eighth digit.
  const most = saturationPressureOverIce(TEMP_TRIPLE_POINT_WATER);
  return tempFrostPointFromVapourPressure(Math.min(vapourPressureFromDewPoint(tempDewPoint), most));
}

/**
 * [K] temperature below which a surface collects water from air of vapour pressure `pressureVapour` [Pa]: the frost
 * point up to the triple point, the dew point above.
 */
export function tempCondensationPoint(pressureVapour: number): number {
  return pressureVapour <= saturationPressureOverIce(TEMP_TRIPLE_POINT_WATER)
    ? tempFrostPointFromVapourPressure(pressureVapour)
    : tempDewPointFromVapourPressure(pressureVapour);
}

function inverse(saturation: (temp: number) => number, range: ValidityRange, pressureVapour: number): number {
  const min = saturation(range.min);
  const max = saturation(range.max);
  const bounds = {
    quantity: `vapour pressure [Pa] at that ${range.quantity}`,
    min,
    max,
    source: range.source,
  };
  requireInRange("pressureVapour", pressureVapour, bounds);
  // ln p is nearly straight in 1/T, so few evaluations are needed.
  const target = Math.log(pressureVapour);
  const mismatch = (reciprocal: number) => Math.log(saturation(1 / reciprocal)) - target;
  const reciprocal = findRoot(mismatch, 1 / range.max, 1 / range.min, TOLERANCE / range.max ** 2);
  // The end points themselves can miss their sign by a rounding error.
  return reciprocal === undefined
    ? pressureVapour - min < max - pressureVapour
      ? range.min
      : range.max
    : 1 / reciprocal;
}
