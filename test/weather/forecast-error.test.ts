import { expect, test } from "vitest";
import { createRandom } from "../../src/numerics/index.js";
import { errorModelOf, OBSERVATION_ERROR, PERSISTENCE_ERROR } from "../../src/weather/forecast-error.js";
import {
  errorSd,
  FORECAST_ERROR,
  forecastErrorDimensions,
  perturbedSeries,
  sampleForecastErrors,
  type WeatherSeries,
  WIND_OF_CALM,
} from "../../src/weather/index.js";

const HOUR = 3600;
const MEMBERS = 20_000;

/** Uneven knots, two of them before the issue. */
const HOURS = [-3, -1, 0, 1, 1.5, 4, 12, 24];

function seriesAt(hours: readonly number[], issued?: number): WeatherSeries {
  const filled = (value: number) => new Float64Array(hours.length).fill(value);
  return {
    time: Float64Array.from(hours, (h) => h * HOUR),
    tempAir: filled(250),
    windSpeed: filled(4),
    tempDewPoint: filled(247),
    cloudCover: filled(0.5),
    ...(issued === undefined ? {} : { issued }),
    origin: "invented",
    assumptions: [],
  };
}

function gaussians(series: WeatherSeries, members: number): Float64Array {
  const random = createRandom(20260109);
  return Float64Array.from({ length: forecastErrorDimensions(series) * members }, () => random.normal());
}

const forecast = seriesAt(HOURS, 0);
const paths = sampleForecastErrors(forecast, gaussians(forecast, MEMBERS), MEMBERS);
const row = (path: Float64Array, knot: number) => path.subarray(knot * MEMBERS, (knot + 1) * MEMBERS);

function moments(a: Float64Array, b: Float64Array = a) {
  const mean = (x: Float64Array) => x.reduce((sum, v) => sum + v, 0) / x.length;
  const [ma, mb] = [mean(a), mean(b)];
  return { mean: ma, covariance: a.reduce((sum, v, i) => sum + (v - ma) * (b[i]! - mb), 0) / a.length };
}

// A sample sd of 20 000 numbers has a standard error of 0.5 %, a correlation one of 0.7 % at most: five of them.
test.each(HOURS.map((hour, knot) => [hour, knot]))(
  "sd at lead %s h is that of equation (1)",
  (hour, knot) => {
    const lead = Math.max(hour, 0) * HOUR;
    for (const [path, growth, observed] of [
      [paths.tempOffset, FORECAST_ERROR.tempAir, OBSERVATION_ERROR.tempAir],
      [paths.windFactor.map(Math.log), FORECAST_ERROR.windSpeed, OBSERVATION_ERROR.windSpeed],
      [paths.cloudOffset, FORECAST_ERROR.cloudCover, OBSERVATION_ERROR.cloudCover],
    ] as const) {
      const expected = hour < 0 ? observed.sdStart : errorSd(growth, lead);
      const { mean, covariance } = moments(row(path, knot));
      expect(Math.sqrt(covariance) / expected).toBeGreaterThan(0.975);
      expect(Math.sqrt(covariance) / expected).toBeLessThan(1.025);
      expect(Math.abs(mean)).toBeLessThan((5 * expected) / Math.sqrt(MEMBERS));
    }
  },
);

test("correlation between knots falls with their distance as the process says", () => {
  const { tempAir } = FORECAST_ERROR;
  for (const [i, j] of [
    [2, 4],
    [3, 5],
    [5, 6],
    [4, 7],
  ] as const) {
    const { covariance } = moments(row(paths.tempOffset, i), row(paths.tempOffset, j));
    const [sdI, sdJ] = [i, j].map((k) => errorSd(tempAir, HOURS[k]! * HOUR)) as [number, number];
    const memory = Math.exp(((HOURS[i]! - HOURS[j]!) * HOUR) / tempAir.correlationTime);
    expect(Math.abs(covariance / (sdI * sdJ) - (memory * sdI) / sdJ)).toBeLessThan(0.035);
  }
});

test("air, wind and cloud errors are independent", () => {
  const { covariance } = moments(row(paths.tempOffset, 7), row(paths.windFactor.map(Math.log), 7));
  const scale = errorSd(FORECAST_ERROR.tempAir, 24 * HOUR) * errorSd(FORECAST_ERROR.windSpeed, 24 * HOUR);
  expect(Math.abs(covariance / scale)).toBeLessThan(0.035);
});

test("measured weather has the observation error throughout, a carried-on reading a larger one than a forecast", () => {
  const measured = seriesAt(HOURS);
  expect(errorModelOf(measured)).toBe(OBSERVATION_ERROR);
  const sample = sampleForecastErrors(measured, gaussians(measured, 4000), 4000, FORECAST_ERROR);
  const last = sample.tempOffset.subarray(7 * 4000);
  expect(Math.sqrt(moments(last).covariance) / 0.5).toBeCloseTo(1, 1);
  const carried: WeatherSeries = { ...forecast, tempBasis: "persistence" };
  expect(errorModelOf(carried)).toBe(PERSISTENCE_ERROR);
  expect(errorModelOf(forecast)).toBe(FORECAST_ERROR);
  expect(errorSd(PERSISTENCE_ERROR.tempAir, 6 * HOUR)).toBeGreaterThan(
    errorSd(FORECAST_ERROR.tempAir, 6 * HOUR),
  );
});

test("sd never falls with lead time in any model", () => {
  for (const model of [FORECAST_ERROR, PERSISTENCE_ERROR, OBSERVATION_ERROR]) {
    for (const growth of [model.tempAir, model.windSpeed, model.cloudCover]) {
      const sds = Array.from({ length: 73 }, (_, h) => errorSd(growth, h * HOUR));
      expect(sds[0]).toBeCloseTo(growth.sdStart, 12);
      expect(sds.every((sd, h) => h === 0 || sd >= sds[h - 1]! - 1e-12)).toBe(true);
    }
  }
});

test("zero numbers give no error, and wrong sizes are refused", () => {
  const still = sampleForecastErrors(forecast, new Float64Array(forecastErrorDimensions(forecast)), 1);
  expect([...still.tempOffset, ...still.cloudOffset].every((e) => e === 0)).toBe(true);
  expect([...still.windFactor].every((f) => f === 1)).toBe(true);
  expect(() => sampleForecastErrors(forecast, new Float64Array(5), 1)).toThrow(/invalid gaussians: 5/);
  expect(() => sampleForecastErrors(forecast, new Float64Array(0), 0)).toThrow(/invalid members/);
  expect(() => errorSd(FORECAST_ERROR.tempAir, -1)).toThrow(/invalid lead/);
});

test("one member: dew point moves with the air, cloud stays a fraction, a calm is not perfectly calm", () => {
  const calm: WeatherSeries = { ...forecast, windSpeed: new Float64Array(HOURS.length) };
  for (let member = 0; member < 50; member++) {
    const moved = perturbedSeries(calm, paths, member);
    moved.tempAir.forEach((temp, k) => {
      expect(temp - 250).toBeCloseTo(paths.tempOffset[k * MEMBERS + member]!, 9);
      expect(temp - moved.tempDewPoint[k]!).toBeCloseTo(3, 9);
      expect(moved.windSpeed[k]).toBeCloseTo(WIND_OF_CALM * paths.windFactor[k * MEMBERS + member]!, 12);
      expect(moved.cloudCover[k]).toBeGreaterThanOrEqual(0);
      expect(moved.cloudCover[k]).toBeLessThanOrEqual(1);
    });
  }
  expect(() => perturbedSeries(calm, paths, MEMBERS)).toThrow(/invalid member/);
});
