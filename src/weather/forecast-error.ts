import { SECONDS_OF_HOUR } from "../units/index.js";
import type { WeatherSeries } from "./series.js";

/** Growth of the error of one quantity with lead time. */
export interface ErrorGrowth {
  /** Standard deviation at lead time 0. */
  readonly sdStart: number;
  /** Standard deviation it tends to; not below `sdStart`. */
  readonly sdLong: number;
  /** [s] time over which the error forgets itself. */
  readonly correlationTime: number;
}

/** Errors of a series: air [K] additive; wind as the logarithm of a factor [1]; cloud cover [1] additive. */
export interface WeatherErrorModel {
  readonly tempAir: ErrorGrowth;
  readonly windSpeed: ErrorGrowth;
  readonly cloudCover: ErrorGrowth;
}

const HOUR = SECONDS_OF_HOUR;

/**
 * First-order autoregression of hourly air temperature forecast errors, level "high", as published with the building
 * control test framework BOPTEST (IBPSA Project 1, forecast/forecast_uncertainty_params.json; method: Zheng et al.,
 * Quantifying and simulating the weather forecast uncertainty for advanced building control, Journal of Building
 * Performance Simulation, 2025; Berkeley, Leuven, Berlin, Oslo). Its small mean error (-0.3 K) is left out.
 */
const AIR_AUTOREGRESSION = { start: 1.5, factor: 0.95, noise: 0.7 } as const;

/**
 * Weather forecasts, believable up to about 72 h of lead. Air: the "high" autoregression above, since cold, calm, clear
 * nights are forecast worst (Køltzow et al., Weather and Forecasting 34, 2019); sd 1.5 K at issue, 2.24 K in the
 * end, correlation time 19.5 h. Wind: 5 kt (2.6 m/s) in 80 % of cases, the accuracy ICAO Annex 3 Attachment B holds
 * desirable of a TAF (an edition in force before 2010 was read), is an sd of 2.0 m/s, or a log-sd of 0.4 at 5 m/s. Cloud: 2 oktas in 70 % of cases (the same
 * table) is an sd of 0.24. How wind and cloud errors start and how long they last is project judgement.
 */
export const FORECAST_ERROR: WeatherErrorModel = {
  tempAir: {
    sdStart: AIR_AUTOREGRESSION.start,
    sdLong: AIR_AUTOREGRESSION.noise / Math.sqrt(1 - AIR_AUTOREGRESSION.factor ** 2),
    correlationTime: -HOUR / Math.log(AIR_AUTOREGRESSION.factor),
  },
  windSpeed: { sdStart: 0.25, sdLong: 0.4, correlationTime: 6 * HOUR },
  cloudCover: { sdStart: 0.15, sdLong: 0.24, correlationTime: 6 * HOUR },
};

/**
 * A last reading carried on with nobody's forecast: about 2.9 K after 6 h and 4.8 K after 24 h, what persistence of
 * winter temperatures misses by inland (from memory, no source read; project judgement). Wind and cloud likewise.
 * @internal
 */
export const PERSISTENCE_ERROR: WeatherErrorModel = {
  tempAir: { sdStart: 0.6, sdLong: 6, correlationTime: 48 * HOUR },
  windSpeed: { sdStart: 0.25, sdLong: 0.6, correlationTime: 12 * HOUR },
  cloudCover: { sdStart: 0.15, sdLong: 0.35, correlationTime: 12 * HOUR },
};

/**
 * Measured weather: whole degrees alone are 0.29 K, the rest is the way from the station to the aircraft; wind 10 %
 * by instrument (desirable accuracy of ICAO Annex 3 Attachment A, from memory) and more by site; cloud one okta.
 * Project judgement throughout.
 * @internal
 */
export const OBSERVATION_ERROR: WeatherErrorModel = {
  tempAir: { sdStart: 0.5, sdLong: 0.5, correlationTime: 12 * HOUR },
  windSpeed: { sdStart: 0.15, sdLong: 0.15, correlationTime: 6 * HOUR },
  cloudCover: { sdStart: 0.125, sdLong: 0.125, correlationTime: 6 * HOUR },
};

/**
 * Standard deviation at `lead` [s]: sd^2 = sdLong^2 + (sdStart^2 - sdLong^2) exp(-2 lead/correlationTime)   (1),
 * the variance of an Ornstein-Uhlenbeck process begun with sdStart.
 * @example errorSd(FORECAST_ERROR.tempAir, 24 * 3600) // 2.19 K
 */
export function errorSd(growth: ErrorGrowth, lead: number): number {
  if (!(lead >= 0)) throw new RangeError(`invalid lead: ${lead} (expected 0 or more seconds)`);
  const { sdStart, sdLong, correlationTime } = growth;
  return Math.sqrt(sdLong ** 2 + (sdStart ** 2 - sdLong ** 2) * Math.exp((-2 * lead) / correlationTime));
}

/**
 * The model a series asks for: observation error without `issued`, else that of its temperature's basis.
 * @internal
 */
export function errorModelOf(series: WeatherSeries): WeatherErrorModel {
  if (series.issued === undefined) return OBSERVATION_ERROR;
  return series.tempBasis === "persistence" ? PERSISTENCE_ERROR : FORECAST_ERROR;
}

/** Error paths at the knots of a series, member by member: index knot * members + member. */
export interface ForecastErrorPaths {
  readonly members: number;
  /** [K] to add to the air temperature. */
  readonly tempOffset: Float64Array;
  /** [1] to multiply the wind speed by; median 1. */
  readonly windFactor: Float64Array;
  /** [1] to add to the cloud cover, before it is held within 0 and 1. */
  readonly cloudOffset: Float64Array;
}

const QUANTITIES = ["tempAir", "windSpeed", "cloudCover"] as const;

/** Standard-normal numbers that one member of `sampleForecastErrors` takes: three quantities at each knot. */
export function forecastErrorDimensions(series: WeatherSeries): number {
  return QUANTITIES.length * series.time.length;
}

/**
 * Error paths from standard-normal numbers, dimension d and member m at `gaussians[d * members + m]`, where
 * d = 3 knot + quantity with the quantities air, wind, cloud: who looks further ahead draws the same for the hours before.
 * Along the knots, with
 * r = exp(-step/correlationTime),
 *   e(k+1) = r e(k) + sqrt(sd(k+1)^2 - r^2 sd(k)^2) g(k+1),   e(0) = sd(0) g(0)   (2),
 * which has the standard deviation of equation (1) at every knot whatever the steps. Before `issued` (readings, or
 * all of a measured series) sd is that of the observation error.
 */
export function sampleForecastErrors(
  series: WeatherSeries,
  gaussians: Float64Array,
  members: number,
  model: WeatherErrorModel = errorModelOf(series),
): ForecastErrorPaths {
  const knots = series.time.length;
  const dimensions = forecastErrorDimensions(series);
  if (!(Number.isInteger(members) && members > 0)) {
    throw new RangeError(`invalid members: ${members} (expected a whole number above 0)`);
  }
  if (gaussians.length !== members * dimensions) {
    throw new RangeError(`invalid gaussians: ${gaussians.length} numbers (expected ${members * dimensions})`);
  }
  const [tempOffset, windLog, cloudOffset] = QUANTITIES.map((quantity, q) => {
    const { memory, noise } = recursion(series, model[quantity], OBSERVATION_ERROR[quantity]);
    const path = new Float64Array(knots * members);
    for (let k = 0; k < knots; k++) {
      const row = k * members;
      for (let m = 0; m < members; m++) {
        const before = k === 0 ? 0 : path[row - members + m]!;
        path[row + m] =
          memory[k]! * before + noise[k]! * gaussians[(k * QUANTITIES.length + q) * members + m]!;
      }
    }
    return path;
  });
  return { members, tempOffset: tempOffset!, windFactor: windLog!.map(Math.exp), cloudOffset: cloudOffset! };
}

/** Per knot: share of the error that remains from the knot before, and sd of what is new. */
function recursion(series: WeatherSeries, growth: ErrorGrowth, observed: ErrorGrowth) {
  const { time, issued } = series;
  const sd = time.map((t) =>
    issued !== undefined && t >= issued ? errorSd(growth, t - issued) : observed.sdStart,
  );
  const memory = time.map((t, k) => (k === 0 ? 0 : Math.exp((time[k - 1]! - t) / growth.correlationTime)));
  const noise = sd.map((s, k) => Math.sqrt(Math.max(0, s ** 2 - (memory[k]! * (sd[k - 1] ?? 0)) ** 2)));
  return { memory, noise };
}
