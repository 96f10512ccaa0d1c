import type { ForecastErrorPaths } from "./forecast-error.js";
import type { WeatherSeries } from "./series.js";

/**
 * [m/s] wind that a calm stands for when its error is drawn: calm is reported below 1 kt (ICAO Annex 3, Attachment C),
 * and no factor makes anything of zero.
 */
export const WIND_OF_CALM = 0.5;

/** One member of a perturbed series: air moved with its dew point, wind multiplied, cloud moved within 0 and 1. */
export function perturbedSeries(
  series: WeatherSeries,
  paths: ForecastErrorPaths,
  member: number,
): WeatherSeries {
  const { members } = paths;
  if (!(Number.isInteger(member) && member >= 0 && member < members)) {
    throw new RangeError(`invalid member: ${member} (expected 0 to ${members - 1})`);
  }
  const of = (path: Float64Array, knot: number) => path[knot * members + member]!;
  return {
    ...series,
    tempAir: series.tempAir.map((temp, k) => temp + of(paths.tempOffset, k)),
    tempDewPoint: series.tempDewPoint.map((temp, k) => temp + of(paths.tempOffset, k)),
    windSpeed: series.windSpeed.map((wind, k) => Math.max(wind, WIND_OF_CALM) * of(paths.windFactor, k)),
    cloudCover: series.cloudCover.map((cover, k) =>
      Math.min(1, Math.max(0, cover + of(paths.cloudOffset, k))),
    ),
  };
}
