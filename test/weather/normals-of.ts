import type { MonthNormals } from "../../src/weather/normals.js";
import type { WeatherSeries } from "../../src/weather/series.js";
import { localStandard, SECONDS_OF_DAY } from "../../src/weather/through-year.js";

interface Day {
  readonly month: number;
  readonly year: number;
  readonly number: number;
  readonly values: readonly number[];
}

/**
 * Monthly normals of hourly weather over one or more years, January first; undefined for months with fewer than two
 * whole days. Days are those of the sun's clock; the spread and persistence of days' means are taken around each month's
 * own mean over all years.
 */
export function normalsOf(
  series: readonly WeatherSeries[],
  longitude: number,
): readonly (MonthNormals | undefined)[] {
  const sun = localStandard(longitude);
  const days = series.flatMap((one, year) => wholeDays(one, sun, year));
  const moments = series.flatMap((one) =>
    Array.from(one.time, (t, i) => ({ month: monthOf(t, sun), one, i })),
  );
  return Array.from({ length: 12 }, (_, month) => {
    const own = days.filter((day) => day.month === month);
    if (own.length < 2) return undefined;
    const hours = moments.filter((moment) => moment.month === month);
    const mean = (pick: (one: WeatherSeries, i: number) => number) =>
      average(hours.map(({ one, i }) => pick(one, i)));
    const tempAir = mean((one, i) => one.tempAir[i]!);
    const middle = average(own.map(({ values }) => average(values)));
    const means = own.map(({ values }) => average(values) - middle);
    const pairs = own.flatMap((day, k) => {
      const next = own[k + 1];
      return next?.year === day.year && next.number === day.number + 1 ? [[means[k]!, means[k + 1]!]] : [];
    });
    const variance = average(means.map((value) => value ** 2));
    return {
      tempAir,
      dailyRange: average(own.map(({ values }) => Math.max(...values) - Math.min(...values))),
      daySd: Math.sqrt(variance),
      persistence: average(pairs.map(([a, b]) => a! * b!)) / variance,
      windSpeed: mean((one, i) => one.windSpeed[i]!),
      cloudCover: mean((one, i) => one.cloudCover[i]!),
      depression: mean((one, i) => one.tempAir[i]! - one.tempDewPoint[i]!),
    };
  });
}

/** Days of the sun's clock with all of their hours. */
function wholeDays({ time, tempAir }: WeatherSeries, sun: number, year: number): Day[] {
  const byDay = new Map<number, number[]>();
  time.forEach((t, i) => {
    const day = Math.floor((t + sun) / SECONDS_OF_DAY);
    const values = byDay.get(day) ?? [];
    values.push(tempAir[i]!);
    byDay.set(day, values);
  });
  return [...byDay]
    .filter(([, values]) => values.length >= 24)
    .map(([number, values]) => ({
      ...{ number, year, values },
      month: new Date(number * SECONDS_OF_DAY * 1000).getUTCMonth(),
    }));
}

function monthOf(t: number, sun: number): number {
  return new Date((t + sun) * 1000).getUTCMonth();
}

function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
