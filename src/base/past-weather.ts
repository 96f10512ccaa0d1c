import { type Finding, finding } from "../findings/index.js";
import { celsiusFromKelvin } from "../units/index.js";
import { GAP_LIMIT, HOLD_HOURS, weatherAt } from "../weather/index.js";
import type { WeatherSection } from "./facts.js";
import { type ForecastSeries, isoOf, MS_OF_HOUR } from "./forecast.js";

type Points = NonNullable<WeatherSection["points"]>;

/** [ms] spacing of the points that what forecasts said of the past is taken over at. */
const WEATHER_GRID = 0.5 * MS_OF_HOUR;

export interface PastWeather {
  /** [ms] from when on the weather is known without a gap; never before what was asked. */
  readonly from: number;
  readonly points: Points;
  /** [ms] received of the newest forecast among them. */
  readonly issued: number;
}

/**
 * The weather from `from` over `now` to `until` [ms], at each time as the newest forecast received one step before had
 * it: what was said of the past never changes when the next forecast comes, so a live estimate goes on from where it
 * was. Before the first forecast its own beginning counts, and is held back as documents do it. A gap longer than
 * documents bridge ends it: only what comes after counts. Why not when `now` is not reached.
 * @param forecasts the newest first
 */
export function pastWeather(
  forecasts: readonly ForecastSeries[],
  { from, now, until }: { readonly from: number; readonly now: number; readonly until: number },
): PastWeather | Finding {
  const points: { readonly at: number; readonly point: Points[number]; readonly by: ForecastSeries }[] = [];
  const first = WEATHER_GRID * Math.floor(from / WEATHER_GRID);
  for (let at = first; at < until + WEATHER_GRID; at += WEATHER_GRID) {
    const by = forecastFor(forecasts, at, Math.min(now, at - WEATHER_GRID));
    if (by !== undefined) points.push({ at, by, point: pointOf(by, at) });
  }
  const { length } = points;
  if (length === 0) return finding("no-forecast-of-then", {});
  const last = points[length - 1];
  if (last.at + HOLD_HOURS * MS_OF_HOUR < until) {
    return finding("weather-known-until", { at: isoOf(last.at), wanted: isoOf(until) });
  }
  let k = length - 1;
  while (k > 0 && points[k].at - points[k - 1].at <= GAP_LIMIT * 1000) k--;
  const begins = points[k].at - HOLD_HOURS * MS_OF_HOUR;
  if (begins > now) return finding("weather-known-from", { at: isoOf(points[k].at) });
  return {
    from: Math.max(from, begins),
    points: points.slice(k).map(({ point }) => point),
    issued: last.by.received,
  };
}

/** The newest forecast that reaches over `at`: of those received by `known`, else the first one that came later. */
function forecastFor(
  forecasts: readonly ForecastSeries[],
  at: number,
  known: number,
): ForecastSeries | undefined {
  const covers = ({ series }: ForecastSeries) =>
    series.time[0] * 1000 <= at && at <= series.time[series.time.length - 1] * 1000;
  const then = forecasts.find((f) => f.received <= known && covers(f));
  if (then !== undefined || forecasts.some((f) => f.received <= known)) return then;
  return forecasts.findLast(covers);
}

function pointOf({ series }: ForecastSeries, at: number): Points[number] {
  const { tempAir, windSpeed, tempDewPoint, cloudCover } = weatherAt(series, at / 1000);
  const air = rounded(celsiusFromKelvin(tempAir), 3);
  return {
    time: isoOf(at),
    air_c: air,
    wind_mps: rounded(windSpeed, 3),
    dew_point_c: Math.min(air, rounded(celsiusFromKelvin(tempDewPoint), 3)),
    cloud_fraction: rounded(cloudCover, 3),
  };
}

function rounded(value: number, digits: number): number {
  const scale = 10 ** digits;
  return Math.round(value * scale) / scale + 0;
}
