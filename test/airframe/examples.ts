import {
  boxHangar,
  FILM_LEFT,
  type FrostRequest,
  HINGE_GAP,
  OPEN_SITE,
  PANELS,
} from "../../src/airframe/index.js";
import type { RefreezeRequest } from "../../src/airframe/refreeze.js";
import type { ThawRequest } from "../../src/airframe/thaw.js";
import { kelvinFromCelsius, SECONDS_OF_HOUR } from "../../src/units/index.js";
import type { WeatherSeries } from "../../src/weather/index.js";

export const NIGHTFALL = Date.UTC(2026, 0, 9, 18) / 1000;
const HOURS = 12;

/** An invented night of constant weather: air [°C], depression of the dew point [K], wind [m/s], cloud [0..1]. */
export function night(air: number, depression: number, windSpeed: number, cloudCover: number): WeatherSeries {
  const knots = HOURS + 1;
  const constant = (value: number) => new Float64Array(knots).fill(value);
  return {
    time: Float64Array.from({ length: knots }, (_, i) => NIGHTFALL + i * SECONDS_OF_HOUR),
    tempAir: constant(kelvinFromCelsius(air)),
    windSpeed: constant(windSpeed),
    tempDewPoint: constant(kelvinFromCelsius(air - depression)),
    cloudCover: constant(cloudCover),
    origin: "invented",
    assumptions: [],
  };
}

/** Frost request for a night; a painted aluminium wing in the open. */
export function frostRequest(weather: WeatherSeries, change: Partial<FrostRequest> = {}): FrostRequest {
  return {
    weather,
    start: NIGHTFALL,
    duration: HOURS * SECONDS_OF_HOUR,
    site: OPEN_SITE,
    panel: PANELS["aluminium-painted"],
    ...change,
  };
}

/** A hangar bay of 12 m by 10 m, heated to 15 °C. */
export const BAY = boxHangar({
  length: 12,
  width: 10,
  height: 4,
  insulated: true,
  tempSet: kelvinFromCelsius(15),
  heaterPower: 20_000,
});

/** An aircraft cold-soaked at -15 °C with 1 kg/m2 of snow, brought into the bay. */
export function thawRequest(change: Partial<ThawRequest> = {}): ThawRequest {
  return {
    panel: PANELS["aluminium-painted"],
    area: 25,
    snow: 1,
    film: FILM_LEFT.dripping,
    gap: HINGE_GAP,
    tempAircraft: kelvinFromCelsius(-15),
    hangar: BAY,
    outside: { tempAir: kelvinFromCelsius(-15), tempDewPoint: kelvinFromCelsius(-17) },
    pressure: 101_325,
    duration: 48 * SECONDS_OF_HOUR,
    ...change,
  };
}

/** A warm damp aircraft rolled out into -10 °C. */
export function refreezeRequest(change: Partial<RefreezeRequest> = {}): RefreezeRequest {
  return {
    panel: PANELS["aluminium-painted"],
    gap: HINGE_GAP,
    tempSkin: kelvinFromCelsius(15),
    film: 0.1,
    outside: {
      tempAir: kelvinFromCelsius(-10),
      tempDewPoint: kelvinFromCelsius(-13),
      windSpeed: 2,
      cloudCover: 0.5,
    },
    falling: "nothing",
    site: OPEN_SITE,
    timeOutside: 1200,
    ...change,
  };
}

/** The result of a report that must have been completed. */
export function resultOf<Result>(report: {
  status: string;
  remedy: string;
  result: Result | undefined;
}): Result {
  if (report.result === undefined) throw new Error(`${report.status}: ${report.remedy}`);
  return report.result;
}
