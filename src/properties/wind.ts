import {
  celsiusFromKelvin,
  kelvinFromCelsius,
  requireInside,
  requireNotNegative,
  requirePositive,
  SECONDS_OF_HOUR,
} from "../units/index.js";

/**
 * [m] height at which wind is reported and forecast (WMO-No. 8, Guide to Instruments and Methods of
 * Observation, Part I, ch. 5).
 */
export const HEIGHT_OF_REPORTED_WIND = 10;

/**
 * Roughness lengths [m], Davenport's classes as revised by Wieringa (WMO-No. 8, Part I, ch. 5, annex; Stull,
 * Meteorology for Scientists and Engineers, whose words for the ground these are).
 */
export const ROUGHNESS_LENGTH = {
  /** Snow-covered flat plain or frozen lake, paved area, clear for 3 km upwind. */
  smoothSnowPlain: 0.0002,
  /** Snow-covered fields, pack ice, beach. */
  snowCoveredField: 0.005,
  /** Airport, grass, farm fields, tundra. */
  openGrass: 0.03,
  /** Low crops with single bushes. */
  lowCrops: 0.1,
  /** Scattered trees, hedgerows, buildings. */
  scatteredObstacles: 0.25,
  /** Mixed fields, clumps of forest, scattered buildings. */
  manyObstacles: 0.5,
  /** Suburb, village, forest. */
  builtUp: 1.0,
} as const;

/**
 * Wind speed [m/s] at a height from the reported one, logarithmic profile of neutral air: V(z) = V10 ln(z/z0)
 * / ln(10/z0). Zero at and below z0. Over strongly cooled snow in light wind the air is stable and the wind
 * near the ground less than this. Stull, Meteorology for Scientists and Engineers; WMO-No. 8, Part I, ch. 5.
 * @param windSpeed at 10 m [m/s]
 * @param height [m]
 * @param roughness length z0 [m], see {@link ROUGHNESS_LENGTH}
 * @example windSpeedLogarithmic(5, 1.5, 0.03) // 3.37
 */
export function windSpeedLogarithmic(windSpeed: number, height: number, roughness: number): number {
  requireNotNegative("windSpeed", windSpeed, "m/s");
  requirePositive("height", height, "m");
  requireInside("roughness", roughness, 1e-5, 2, "m");
  return (
    (windSpeed * Math.max(0, Math.log(height / roughness))) / Math.log(HEIGHT_OF_REPORTED_WIND / roughness)
  );
}

/**
 * Wind speed [m/s] at a height from the reported one by the power law V(z) = V10 (z/10)^p, p commonly 1/7
 * over open ground (from memory; Justus and Mikhail, Geophys. Res. Letters 3 (1976) 261-264). For when the
 * ground is not known.
 * @param windSpeed at 10 m [m/s]
 * @param height [m]
 * @param exponent [-]
 * @example windSpeedPowerLaw(5, 1.5) // 3.81
 */
export function windSpeedPowerLaw(windSpeed: number, height: number, exponent: number = 1 / 7): number {
  requireNotNegative("windSpeed", windSpeed, "m/s");
  requirePositive("height", height, "m");
  requireInside("exponent", exponent, 0, 1, "");
  return windSpeed * (height / HEIGHT_OF_REPORTED_WIND) ** exponent;
}

/**
 * Wind chill [K] felt on a human face: 13.12 + 0.6215 T - 11.37 V^0.16 + 0.3965 T V^0.16 in °C and km/h at 10
 * m, and below 5 km/h T + (0.1345 T - 1.59) V / 5. Joint Action Group on Temperature Indices (2001);
 * Environment and Climate Change Canada, Wind Chill Calculator. For the person who preheats, never for the
 * engine: wind cools metal faster, but not below the air's temperature.
 * @param tempAir up to 283.15 [K]
 * @param windSpeed at 10 m [m/s]
 * @example windChill(253.15, 20 / 3.6) // 242.67 (-30.48 °C)
 */
export function windChill(tempAir: number, windSpeed: number): number {
  requireInside("tempAir", tempAir, 173.15, kelvinFromCelsius(10), "K");
  requireNotNegative("windSpeed", windSpeed, "m/s");
  const t = celsiusFromKelvin(tempAir);
  const v = (windSpeed * SECONDS_OF_HOUR) / 1000;
  if (v < 5) return kelvinFromCelsius(t + ((0.1345 * t - 1.59) * v) / 5);
  return kelvinFromCelsius(13.12 + 0.6215 * t + (0.3965 * t - 11.37) * v ** 0.16);
}
