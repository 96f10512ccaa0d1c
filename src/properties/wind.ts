import { requireInside, requireNotNegative, requirePositive } from "../units/index.js";

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
