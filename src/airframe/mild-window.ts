import { KELVIN_OF_ZERO_CELSIUS, SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import { type WeatherSeries, weatherAt } from "../weather/index.js";
import type { ThawResult } from "./thaw.js";
import { leavingReport } from "./thaw-leaving.js";
import type { RollOut, ThawStay } from "./thaw-stay.js";

/** Looked for up to `until` [s from the start]; leaving `at`, in air that stays mild up to `to`. */
export interface MildWindow {
  readonly until: number;
  readonly window:
    | { readonly at: number; readonly to: number; readonly tempAir: number; readonly chance: number }
    | undefined;
}

/** [K] of air in which water left on an aircraft stays water: a wet skin and a clear sky cool it below the air. Project judgement. */
const MILD = KELVIN_OF_ZERO_CELSIUS + 2;
/** [s] between looks, and shortest window worth a plan. Project judgement. */
const LOOK = 10 * SECONDS_OF_MINUTE;
const SHORTEST = SECONDS_OF_HOUR;
/** [s] from roll-out to take-off where no roll-out is named. */
const USUAL_OUTSIDE = 20 * SECONDS_OF_MINUTE;

/**
 * The next window of mild air outside, and the chance that nothing holds the aircraft there: dry, or clear and nothing
 * freezing again outside or in the climb. Undefined `window` where the forecast has none.
 */
export function mildWindow(
  read: ThawStay,
  stay: ThawResult,
  weather: WeatherSeries,
): MildWindow | { readonly remedy: string } {
  const end = Math.min(weather.time[weather.time.length - 1] - read.start, stay.series.time.at(-1)!);
  const timeOutside = read.rollOut?.timeOutside ?? USUAL_OUTSIDE;
  const span = nextMild(read.start, end, timeOutside, weather);
  if (span === undefined) return { until: end, window: undefined };
  const { from, to } = span;
  const at = Math.min(to - timeOutside, Math.max(from, stay.skinClear.high ?? to));
  const outside = weatherAt(weather, read.start + at);
  const rollOut: RollOut = { falling: "nothing", ...read.rollOut, at, timeOutside, outside };
  const leaving = leavingReport(read, rollOut, stay);
  if ("remedy" in leaving) return leaving;
  const { film, gaps } = leaving.wettest;
  const freezes = Math.max(film.atTakeOff, film.inClimb, gaps.atTakeOff, gaps.inClimb);
  const share = (times: Float64Array) => times.filter((time) => time <= at).length / times.length;
  const dry = share(stay.cases.gapsDry);
  const chance = dry + (share(stay.cases.gapsThawed) - dry) * (1 - freezes);
  return { until: end, window: { at, to, tempAir: outside.tempAir, chance } };
}

/** The first stretch of mild air [s from the start] in which one can leave and be outside. */
function nextMild(start: number, end: number, timeOutside: number, weather: WeatherSeries) {
  const least = Math.max(SHORTEST, timeOutside);
  let from: number | undefined;
  for (let t = 0; t <= end; t += LOOK) {
    const isMild = weatherAt(weather, start + t).tempAir >= MILD;
    if (isMild) from ??= t;
    const isLast = t + LOOK > end;
    if (from !== undefined && (!isMild || isLast)) {
      const to = isMild ? t : t - LOOK;
      if (to - from >= least) return { from, to };
      from = undefined;
    }
  }
  return undefined;
}
