import { KELVIN_OF_ZERO_CELSIUS, requireInside } from "../units/index.js";

// ISO 9223 time of wetness: hours with relative humidity above 80 % and air above 0 °C (stated so by Norberg, ACS
// Symposium Series 805 (2002) 23-36; some texts count 80 % itself). Its author's limits hold here too: it describes open
// air, and fails below zero, with salt or dirt on the metal, and where a surface is not at air temperature (sky
// radiation, a heated sump). It says nothing about the inside of a crankcase, whose walls need their own balance.

/** [1] relative humidity above which bare steel is taken as wet (ISO 9223). */
export const RELATIVE_HUMIDITY_WET = 0.8;

/** "above" counts RH > 80 %, "at-least" counts RH >= 80 %; both count only air above 0 °C. */
export type WetnessRule = "above" | "at-least";

/** Whether a sample counts as wet; `tempAir` [K], `relativeHumidity` [1] over liquid. */
export function isWetIso9223(tempAir: number, relativeHumidity: number, rule: WetnessRule): boolean {
  requireInside("tempAir", tempAir, 173.15, 373.15, "K");
  requireInside("relativeHumidity", relativeHumidity, 0, 1.1, "[1]");
  const wet =
    rule === "above" ? relativeHumidity > RELATIVE_HUMIDITY_WET : relativeHumidity >= RELATIVE_HUMIDITY_WET;
  return wet && tempAir > KELVIN_OF_ZERO_CELSIUS;
}
