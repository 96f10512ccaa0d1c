import {
  RANGE_DEW_POINT,
  tempDewPointFromVapourPressure,
  vapourPressureFromDewPoint,
  vapourPressureFromRelativeHumidity,
} from "../properties/index.js";

/**
 * [K] dew point over liquid water at `tempAir` [K] and `relativeHumidity` [1] over liquid water, 0 to 1 (as weather
 * services report it at all temperatures). Very dry air stays at the lowest dew point handled, -80 °C.
 */
export function tempDewPointFromRelativeHumidity(relativeHumidity: number, tempAir: number): number {
  const pressure = vapourPressureFromRelativeHumidity(relativeHumidity, tempAir);
  return tempDewPointFromVapourPressure(Math.max(pressure, vapourPressureFromDewPoint(RANGE_DEW_POINT.min)));
}
