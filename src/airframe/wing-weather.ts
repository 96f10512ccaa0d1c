import { createRandom, latinHypercubeNormals } from "../numerics/index.js";
import {
  PRESSURE_STANDARD,
  ROUGHNESS_LENGTH,
  vapourPressureFromDewPoint,
  windSpeedLogarithmic,
} from "../properties/index.js";
import { requireInside } from "../units/index.js";
import {
  forecastErrorDimensions,
  perturbedSeries,
  sampleForecastErrors,
  type WeatherSeries,
  WIND_OF_CALM,
} from "../weather/index.js";
import { COLDEST, requireMoistAir } from "./argument.js";
import type { Ensemble } from "./ensemble.js";
import { nightSkyEmissivity, nightSkyTemperature } from "./night-sky.js";
import type { Surroundings } from "./panel-rows.js";

/** Where the aircraft stands. */
export interface WingSite {
  /** [m] of the wing above ground. */
  readonly height: number;
  /** [m] roughness length of the ground upwind, see ROUGHNESS_LENGTH. */
  readonly roughness: number;
  /** [0..1] of the upper half-space that is open sky; the rest (trees, a hangar wall) is taken at air temperature. */
  readonly skyView: number;
  /** [Pa] */
  readonly pressure: number;
}

/** A wing 1.5 m up in the open, ground under thin snow, at sea level. Project judgement. */
export const OPEN_SITE: WingSite = {
  height: 1.5,
  roughness: ROUGHNESS_LENGTH.snowCoveredField,
  skyView: 1,
  pressure: PRESSURE_STANDARD,
};

/** What is uncertain about one member's weather beyond the forecast's own error, as standard normals. */
export interface WeatherDraw {
  readonly dewPoint: number;
  readonly sky: number;
}

/**
 * [K] standard deviation of the depression of the dew point: whole degrees in a report, the sensor, and the way from the
 * station to the wing. Project judgement.
 */
const DEPRESSION_SD = 1;

/** Weather at the wing over time; writes the surroundings of a panel. */
export interface WingWeather {
  /** [s since epoch] where it bends. */
  readonly bends: readonly number[];
  write(time: number, around: Surroundings): void;
}

export function requireSite(site: WingSite): void {
  requireInside("site.height", site.height, 0.2, 10, "m");
  requireInside("site.roughness", site.roughness, 1e-5, 2, "m");
  requireInside("site.skyView", site.skyView, 0, 1, "");
  requireInside("site.pressure", site.pressure, 5e4, 1.1e5, "Pa");
}

export function requireWeather(weather: WeatherSeries): void {
  weather.tempAir.forEach((tempAir, k) => {
    requireMoistAir(`weather[${k}]`, tempAir, weather.tempDewPoint[k]);
    requireInside(`weather[${k}].windSpeed`, weather.windSpeed[k], 0, 80, "m/s");
    requireInside(`weather[${k}].cloudCover`, weather.cloudCover[k], 0, 1, "");
  });
}

/** One series for each member, with the error of a forecast (or of a reading) drawn along it. */
export function weatherMembers(
  weather: WeatherSeries,
  ensemble: Ensemble | undefined,
): readonly WeatherSeries[] {
  if (ensemble === undefined) return [weather];
  const { members, seed } = ensemble;
  const normals = latinHypercubeNormals(
    forecastErrorDimensions(weather),
    members,
    createRandom(seed).stream("weather at the wing"),
  );
  const paths = sampleForecastErrors(weather, normals, members);
  return Array.from({ length: members }, (_, m) => perturbedSeries(weather, paths, m));
}

/**
 * The surroundings of a panel outside: wind at wing height (log profile; a calm counts as 0.5 m/s at 10 m), vapour pressure
 * of the dew point, sky above, and below ground at air temperature (project judgement: it is sheltered by the wing).
 * Linear between the knots of the series and held beyond its ends.
 */
export function wingWeather(weather: WeatherSeries, site: WingSite, draw: WeatherDraw): WingWeather {
  const { time } = weather;
  const knots = time.length;
  const pressureVapour = new Float64Array(knots);
  const windSpeed = new Float64Array(knots);
  const tempAbove = new Float64Array(knots);
  for (let k = 0; k < knots; k++) {
    const tempAir = weather.tempAir[k];
    const depression = Math.max(0, tempAir - weather.tempDewPoint[k] + DEPRESSION_SD * draw.dewPoint);
    const tempDewPoint = Math.max(COLDEST, tempAir - depression);
    const sky = nightSkyEmissivity(tempAir, tempDewPoint, weather.cloudCover[k], site.pressure);
    const emissivity = sky.middle + sky.sd * draw.sky;
    pressureVapour[k] = vapourPressureFromDewPoint(tempDewPoint);
    const wind = Math.max(weather.windSpeed[k], WIND_OF_CALM);
    windSpeed[k] = windSpeedLogarithmic(wind, site.height, site.roughness);
    tempAbove[k] = nightSkyTemperature(site.skyView * emissivity + (1 - site.skyView), tempAir);
  }
  return {
    bends: [...time],
    write(at, around) {
      let k = 0;
      while (k < knots - 2 && time[k + 1] <= at) k++;
      const next = Math.min(k + 1, knots - 1);
      const width = time[next] - time[k];
      const share = width > 0 ? Math.min(1, Math.max(0, (at - time[k]) / width)) : 0;
      const value = (values: Float64Array) => values[k] + share * (values[next] - values[k]);
      around.tempAir = value(weather.tempAir);
      around.pressureVapour = value(pressureVapour);
      around.windSpeed = value(windSpeed);
      around.tempAbove = value(tempAbove);
      around.tempBelow = around.tempAir;
    },
  };
}
