import { createRandom } from "../numerics/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { anomalyModel } from "./made-anomaly.js";
import type { MonthNormals, PlaceNormals } from "./normals.js";
import { SECONDS_OF_DAY } from "./through-year.js";

/** Days over which the range is tried, always the same ones. */
const TRIAL_DAYS = 600;
const SEED = 8191;

/**
 * [K] half-width of day and night in each month, such that the mean range of a day, spells passing through included, is
 * the wanted one. Zero where the spells alone make more.
 */
export function swingsOf({ months }: PlaceNormals): number[] {
  return months.map((month) => {
    const found = known.get(month) ?? swingOf(month);
    known.set(month, found);
    return found;
  });
}

/** The trial takes some milliseconds a month; years of one place share it. */
const known = new WeakMap<MonthNormals, number>();

function swingOf({ daySd, persistence, dailyRange }: MonthNormals): number {
  const { memory, scale } = anomalyModel(persistence);
  const random = createRandom(SEED);
  let state = random.normal();
  const noons = Float64Array.from({ length: TRIAL_DAYS + 2 }, () => {
    state = memory * state + Math.sqrt(1 - memory ** 2) * random.normal();
    return daySd * scale * state;
  });
  let low = 0;
  let high = dailyRange;
  while (high - low > 1e-3) {
    const middle = (low + high) / 2;
    if (meanRange(noons, middle) < dailyRange) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Mean over the days of the warmest less the coldest hour. */
function meanRange(noons: Float64Array, swing: number): number {
  let sum = 0;
  for (let day = 1; day <= TRIAL_DAYS; day++) {
    let coldest = Number.POSITIVE_INFINITY;
    let warmest = Number.NEGATIVE_INFINITY;
    for (let hour = 0; hour < 24; hour++) {
      const at = day + (hour - 12) / 24;
      const before = Math.floor(at);
      const spell = noons[before]! + (at - before) * (noons[before + 1]! - noons[before]!);
      const temp = spell + swing * DAY[hour]!;
      coldest = Math.min(coldest, temp);
      warmest = Math.max(warmest, temp);
    }
    sum += warmest - coldest;
  }
  return sum / TRIAL_DAYS;
}

/** Warmth of the day and night [-1..1] at a time of the sun's clock [s]: coldest at 06 h, warmest at 14 h. */
export function dayShape(time: number): number {
  const hour = (((time % SECONDS_OF_DAY) + SECONDS_OF_DAY) % SECONDS_OF_DAY) / SECONDS_OF_HOUR;
  const sinceCold = (hour - COLDEST + 24) % 24;
  const rising = WARMEST - COLDEST;
  return sinceCold < rising
    ? -Math.cos((Math.PI * sinceCold) / rising)
    : Math.cos((Math.PI * (sinceCold - rising)) / (24 - rising));
}

/** [h] common practice for the daily course, no published source. */
const COLDEST = 6;
const WARMEST = 14;

const DAY = Array.from({ length: 24 }, (_, hour) => dayShape(hour * 3600));
