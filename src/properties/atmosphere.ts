import { requireInside } from "../units/index.js";
import { GAS_CONSTANT_AIR, GRAVITY_STANDARD, PRESSURE_STANDARD } from "./air.js";

/** [K] temperature of the standard atmosphere at sea level (ISO 2533:1975). */
const TEMP_STANDARD = 288.15;
/** [K/m] fall of temperature with geopotential altitude in the troposphere (ISO 2533:1975). */
export const LAPSE_STANDARD = 0.0065;

/** [-] 5.25588 */
const PRESSURE_EXPONENT = GRAVITY_STANDARD / (GAS_CONSTANT_AIR * LAPSE_STANDARD);
/** [m] geopotential ends of the layer of constant lapse (ISO 2533:1975). */
const ALTITUDE_LOWEST = -5000;
const ALTITUDE_HIGHEST = 11_000;

/**
 * Temperature of the standard atmosphere [K]: T = 288.15 - 0.0065 H (ISO 2533:1975, troposphere).
 * @param altitude geopotential, -5000 to 11000 [m]
 * @example temperatureStandard(11000) // 216.65
 */
export function temperatureStandard(altitude: number): number {
  requireInside("altitude", altitude, ALTITUDE_LOWEST, ALTITUDE_HIGHEST, "m");
  return TEMP_STANDARD - LAPSE_STANDARD * altitude;
}

/**
 * Pressure of the standard atmosphere [Pa]: p = 101325 (T / 288.15)^5.25588 (ISO 2533:1975, troposphere).
 * @param altitude geopotential, -5000 to 11000 [m]
 * @example pressureStandard(11000) // 22632
 */
export function pressureStandard(altitude: number): number {
  return PRESSURE_STANDARD * (temperatureStandard(altitude) / TEMP_STANDARD) ** PRESSURE_EXPONENT;
}
