import type { WeatherSeries } from "../weather/index.js";

const HOUR = 3600;
/** [s] knots of the weather where nobody is about to fly. */
const COARSE_STEP = 6 * HOUR;
/** [s] before a departure from which on every second hour counts, and every hour. */
const FINE_BEFORE = 8 * HOUR;
const FINEST_BEFORE = 3 * HOUR;

/**
 * Hourly weather with fewer knots: all of them from some hours before each departure until the return, every second hour some
 * hours earlier, every six hours elsewhere, where a knot is the mean of what lies around it, so that no degree-hour is lost. What that changes is measured in
 * docs/winter.md. A series that is coarse already stays as it is.
 */
export function thinnedWeather(
  series: WeatherSeries,
  flights: readonly { readonly departure: number; readonly back: number }[],
): WeatherSeries {
  const { time } = series;
  const count = time.length;
  const first = time[0]!;
  const last = time[count - 1]!;
  const knots = new Set<number>([first, last]);
  for (let t = first + COARSE_STEP; t < last; t += COARSE_STEP) knots.add(t);
  let k = 0;
  for (const { departure, back } of flights) {
    while (k < count && time[k]! < departure - FINE_BEFORE) k++;
    let latest = Number.NEGATIVE_INFINITY;
    for (; k < count && time[k]! <= back; k++) {
      const t = time[k]!;
      if (t < departure - FINEST_BEFORE && t - latest < 2 * HOUR) continue;
      knots.add(t);
      latest = t;
    }
  }
  const kept = Float64Array.from(knots).sort();
  const weights = kept.map((t, i) => Math.min(t - (kept[i - 1] ?? t), (kept[i + 1] ?? t) - t));
  const means = (values: Float64Array) => {
    let low = 0;
    return Float64Array.from(kept, (t, i) => {
      const width = weights[i]!;
      // Weight falls in a straight line to nothing at the neighbours: with it sums over the series are kept.
      while (low < count - 1 && time[low + 1]! <= t - width) low++;
      let sum = 0;
      let weight = 0;
      for (let j = low; j < count && time[j]! < t + Math.max(width, 1); j++) {
        const share = width > 0 ? 1 - Math.abs(time[j]! - t) / width : Number(time[j] === t);
        if (share <= 0) continue;
        sum += share * values[j]!;
        weight += share;
      }
      return weight > 0 ? sum / weight : interpolated(time, values, t);
    });
  };
  return {
    ...series,
    time: kept,
    tempAir: means(series.tempAir),
    windSpeed: means(series.windSpeed),
    tempDewPoint: means(series.tempDewPoint),
    cloudCover: means(series.cloudCover),
  };
}

function interpolated(time: Float64Array, values: Float64Array, t: number): number {
  const after = time.findIndex((one) => one >= t);
  if (after <= 0) return values[Math.max(0, after)]!;
  const share = (t - time[after - 1]!) / (time[after]! - time[after - 1]!);
  return values[after - 1]! + share * (values[after]! - values[after - 1]!);
}
