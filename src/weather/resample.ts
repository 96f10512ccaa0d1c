import { finding } from "../findings/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import type { WeatherAssumption, WeatherReading, WeatherSeries } from "./series.js";
import { requireEpoch, utcText } from "./time.js";

/** Weather at one instant. */
export interface WeatherMoment {
  /** [K] */
  readonly tempAir: number;
  /** [m/s] */
  readonly windSpeed: number;
  /** [K] */
  readonly tempDewPoint: number;
  /** [0..1] */
  readonly cloudCover: number;
}

const QUANTITIES = ["tempAir", "windSpeed", "tempDewPoint", "cloudCover"] as const;

/** [h] past either end of a series for which its last value may be held. Project judgement. */
export const HOLD_HOURS = 6;

/** Weather at `time` [s since epoch], which must lie within the series: nothing is extrapolated here (see `cutSeries`). */
export function weatherAt(series: WeatherSeries, time: number): WeatherMoment {
  const { time: axis } = series;
  const first = axis[0]!;
  const last = axis.at(-1)!;
  if (!(time >= first && time <= last)) {
    throw new RangeError(`invalid time: ${time} (expected from ${utcText(first)} to ${utcText(last)})`);
  }
  const after = Math.max(1, firstNotBefore(axis, time));
  const at = (values: Float64Array) => {
    const a = values[after - 1]!;
    const b = values[after] ?? a;
    const width = (axis[after] ?? time) - axis[after - 1]!;
    return width > 0 ? a + ((b - a) * (time - axis[after - 1]!)) / width : a;
  };
  return {
    tempAir: at(series.tempAir),
    windSpeed: at(series.windSpeed),
    tempDewPoint: at(series.tempDewPoint),
    cloudCover: at(series.cloudCover),
  };
}

/**
 * The series from `from` to `to` [s since epoch], with knots at both ends. Where it does not reach so far its end
 * values are held for at most `holdHours` [h], as listed assumptions; a longer reach is an issue.
 */
export function cutSeries(
  series: WeatherSeries,
  from: number,
  to: number,
  holdHours: number = HOLD_HOURS,
): WeatherReading {
  requireEpoch("from", from);
  requireEpoch("to", to);
  if (!(from < to)) throw new RangeError(`invalid to: ${to} (expected after from, ${from})`);
  if (!(holdHours >= 0)) throw new RangeError(`invalid holdHours: ${holdHours} (expected 0 or more)`);
  const first = series.time[0]!;
  const last = series.time.at(-1)!;
  const hold = holdHours * SECONDS_OF_HOUR;
  const issues = [
    ...(from < first - hold ? [reach("beginning", first - hold, from, series)] : []),
    ...(to > last + hold ? [reach("end", last + hold, to, series)] : []),
  ];
  if (issues.length > 0) return { ok: false, issues };
  const inside = [...series.time].filter((time) => time > from && time < to);
  const time = [from, ...inside, to];
  const moments = time.map((t) => weatherAt(series, Math.min(Math.max(t, first), last)));
  const column = (quantity: keyof WeatherMoment) => Float64Array.from(moments, (moment) => moment[quantity]);
  const assumptions = [
    ...series.assumptions
      .filter((assumption) => assumption.to >= from && assumption.from <= to)
      .map((assumption) => clipped(assumption, from, to)),
    ...heldAssumptions(from, Math.min(first, to), "first"),
    ...heldAssumptions(Math.max(last, from), to, "last"),
  ];
  const cut: WeatherSeries = {
    ...series,
    time: Float64Array.from(time),
    tempAir: column("tempAir"),
    windSpeed: column("windSpeed"),
    tempDewPoint: column("tempDewPoint"),
    cloudCover: column("cloudCover"),
    assumptions,
  };
  return { ok: true, series: cut, warnings: [] };
}

function firstNotBefore(axis: Float64Array, time: number): number {
  let low = 0;
  let high = axis.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (axis[middle]! < time) low = middle + 1;
    else high = middle;
  }
  return low;
}

function reach(end: "beginning" | "end", limit: number, asked: number, series: WeatherSeries) {
  const words = end === "beginning" ? "no earlier than" : "no later than";
  return {
    place: `${end} of the weather (${series.origin})`,
    expected: `${words} ${utcText(limit)}`,
    received: utcText(asked),
  };
}

function heldAssumptions(from: number, to: number, end: "first" | "last"): WeatherAssumption[] {
  if (!(from < to)) return [];
  const text = finding("value-held", { end });
  return QUANTITIES.map((quantity) => ({ quantity, from, to, text }));
}

function clipped(assumption: WeatherAssumption, from: number, to: number): WeatherAssumption {
  return { ...assumption, from: Math.max(assumption.from, from), to: Math.min(assumption.to, to) };
}
