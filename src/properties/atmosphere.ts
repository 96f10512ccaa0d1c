import { requireInside, requirePositive } from "../units/index.js";
import { GAS_CONSTANT_AIR, GRAVITY_STANDARD, PRESSURE_STANDARD } from "./air.js";

/** [K] temperature of the standard atmosphere at sea level (ISO 2533:1975). */
export const TEMP_STANDARD = 288.15;
/** [K/m] fall of temperature with geopotential altitude in the troposphere (ISO 2533:1975). */
export const LAPSE_STANDARD = 0.0065;

/** [m] radius of the earth in the geopotential altitude (ISO 2533:1975). */
const EARTH_RADIUS = 6_356_766;
/** [-] 5.25588 */
const PRESSURE_EXPONENT = GRAVITY_STANDARD / (GAS_CONSTANT_AIR * LAPSE_STANDARD);
const DENSITY_STANDARD = PRESSURE_STANDARD / (GAS_CONSTANT_AIR * TEMP_STANDARD);
/** [m] geopotential ends of the layer of constant lapse (ISO 2533:1975). */
const ALTITUDE_LOWEST = -5000;
const ALTITUDE_HIGHEST = 11_000;
/** [Pa] pressures a little beyond those ends. */
const PRESSURE_LOWEST = 22_600;
const PRESSURE_HIGHEST = 178_000;

/**
 * Geopotential altitude [m]: H = r h / (r + h), r = 6 356 766 m (ISO 2533:1975).
 * @param height geometric [m]
 */
export function geopotentialFromGeometric(height: number): number {
  requireInside("height", height, -10_000, 100_000, "m");
  return (EARTH_RADIUS * height) / (EARTH_RADIUS + height);
}

/** Geometric height [m]: h = r H / (r - H) (ISO 2533:1975). @param altitude geopotential [m] */
export function geometricFromGeopotential(altitude: number): number {
  requireInside("altitude", altitude, -10_000, 100_000, "m");
  return (EARTH_RADIUS * altitude) / (EARTH_RADIUS - altitude);
}

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

/**
 * Density of the standard atmosphere [kg/m3]: rho = p / (R T) (ISO 2533:1975).
 * @param altitude geopotential, -5000 to 11000 [m]
 * @example densityStandard(0) // 1.225
 */
export function densityStandard(altitude: number): number {
  return pressureStandard(altitude) / (GAS_CONSTANT_AIR * temperatureStandard(altitude));
}

/**
 * Pressure altitude [m]: geopotential altitude at which the standard atmosphere has this pressure.
 * @param pressure [Pa]
 * @example pressureAltitude(84307.3) // 1524 (5000 ft)
 */
export function pressureAltitude(pressure: number): number {
  requireInside("pressure", pressure, PRESSURE_LOWEST, PRESSURE_HIGHEST, "Pa");
  return (TEMP_STANDARD / LAPSE_STANDARD) * (1 - (pressure / PRESSURE_STANDARD) ** (1 / PRESSURE_EXPONENT));
}

/**
 * Density altitude of dry air [m]: geopotential altitude at which the standard atmosphere has this density,
 * H = (T0 / L) (1 - (rho / rho0)^(1 / (n - 1))), n = 5.25588. Exact, where the rule of 120 ft for each °C
 * errs by more than 500 ft in deep cold. Negative far below standard temperature.
 * @param temp outside air [K]
 * @param pressure [Pa]
 * @example densityAltitude(243.15, 101325) // -1804 (-5920 ft)
 */
export function densityAltitude(temp: number, pressure: number): number {
  requirePositive("temp", temp, "K");
  requireInside("pressure", pressure, PRESSURE_LOWEST, PRESSURE_HIGHEST, "Pa");
  const ratio = pressure / (GAS_CONSTANT_AIR * temp) / DENSITY_STANDARD;
  return (TEMP_STANDARD / LAPSE_STANDARD) * (1 - ratio ** (1 / (PRESSURE_EXPONENT - 1)));
}

/**
 * Pressure [Pa] at an aerodrome from the altimeter setting in its report: the standard atmosphere shifted so
 * that an altimeter set to QNH shows the elevation (ICAO Doc 8896, Manual of Aeronautical Meteorological
 * Practice, from memory).
 * @param qnh [Pa]
 * @param elevation of the aerodrome [m]
 */
export function pressureOfQnh(qnh: number, elevation: number): number {
  return pressureStandard(pressureAltitude(qnh) + elevation);
}

/**
 * Pressure [Pa] at a place from the mean-sea-level pressure of a forecast: p = p0 exp(-g z / (R Tm)), Tm = Ta
 * + 0.0065 z / 2 of the column below, in dry air (WMO-No. 8, Part I, Chapter 3, reduction of pressure).
 * @param pressureSeaLevel [Pa]
 * @param elevation [m]
 * @param tempAir at the place [K]
 * @example pressureOfSeaLevel(102484, 105, 290.34) // 101227
 */
export function pressureOfSeaLevel(pressureSeaLevel: number, elevation: number, tempAir: number): number {
  requirePositive("pressureSeaLevel", pressureSeaLevel, "Pa");
  requireInside("elevation", elevation, ALTITUDE_LOWEST, ALTITUDE_HIGHEST, "m");
  requirePositive("tempAir", tempAir, "K");
  const tempColumn = tempAir + (LAPSE_STANDARD * elevation) / 2;
  return pressureSeaLevel * Math.exp((-GRAVITY_STANDARD * elevation) / (GAS_CONSTANT_AIR * tempColumn));
}
