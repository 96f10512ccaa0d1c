import { KELVIN_OF_ZERO_CELSIUS, requireInside, requireNotNegative } from "../units/index.js";

// ISO 9223 time of wetness: hours with relative humidity above 80 % and air above 0 °C (stated so by Norberg, ACS
// Symposium Series 805 (2002) 23-36; some texts count 80 % itself). Its author's limits hold here too: it describes open
// air, and fails below zero, with salt or dirt on the metal, and where a surface is not at air temperature (sky
// radiation, a heated sump). It says nothing about the inside of a crankcase, whose walls need their own balance.

/** [1] relative humidity above which bare steel is taken as wet (ISO 9223). */
export const RELATIVE_HUMIDITY_WET = 0.8;

/** "above" counts RH > 80 %, "at-least" counts RH >= 80 %; both count only air above 0 °C. */
export type WetnessRule = "above" | "at-least";

/** Time-of-wetness classes, dry to permanently wet. */
export type WetnessClass = 1 | 2 | 3 | 4 | 5;

/** Whether a sample counts as wet; `tempAir` [K], `relativeHumidity` [1] over liquid. */
export function isWetIso9223(tempAir: number, relativeHumidity: number, rule: WetnessRule): boolean {
  requireInside("tempAir", tempAir, 173.15, 373.15, "K");
  requireInside("relativeHumidity", relativeHumidity, 0, 1.1, "[1]");
  const wet =
    rule === "above" ? relativeHumidity > RELATIVE_HUMIDITY_WET : relativeHumidity >= RELATIVE_HUMIDITY_WET;
  return wet && tempAir > KELVIN_OF_ZERO_CELSIUS;
}

/** [s] time of wetness of samples `tempAir` [K] and `relativeHumidity` [1], each standing for `interval` [s]. */
export function timeOfWetnessIso9223(
  tempAir: ArrayLike<number>,
  relativeHumidity: ArrayLike<number>,
  interval: number,
  rule: WetnessRule,
): number {
  requireNotNegative("interval", interval, "s");
  if (tempAir.length !== relativeHumidity.length) {
    throw new RangeError(
      `invalid relativeHumidity: ${relativeHumidity.length} values (expected ${tempAir.length})`,
    );
  }
  let samples = 0;
  for (let i = 0; i < tempAir.length; i++) {
    if (isWetIso9223(tempAir[i]!, relativeHumidity[i]!, rule)) samples++;
  }
  return samples * interval;
}

/**
 * Class of `hoursPerYear`: 1 up to 10, 2 to 250, 3 to 2500, 4 to 5500, 5 above (ISO 9223:1992 Table 1, from memory;
 * informative in the 2012 edition).
 */
export function wetnessClassIso9223(hoursPerYear: number): WetnessClass {
  requireInside("hoursPerYear", hoursPerYear, 0, 8784, "h");
  if (hoursPerYear <= 10) return 1;
  if (hoursPerYear <= 250) return 2;
  if (hoursPerYear <= 2500) return 3;
  return hoursPerYear <= 5500 ? 4 : 5;
}
