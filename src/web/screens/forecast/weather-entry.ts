import type { EventOf } from "../../../logbook/index.js";
import { isoOf, nextClock } from "../../units/times.js";

export type WeatherSection = EventOf<"forecast">["weather"];

/** Weather in the user's own words: how cold now, how cold at its coldest, how windy. */
export interface PlainWeather {
  readonly nowC: number;
  readonly coldestC: number;
  readonly windMps: number;
}

const HOUR = 3_600_000;
/** When a night is usually coldest; project judgement. */
const COLDEST_AT = "06:00";

/** Points every three hours from the plain words, over a night and the day after it. */
export function plainPoints(
  { nowC, coldestC, windMps }: PlainWeather,
  now: number,
  zone: string,
): WeatherSection {
  const coldest = nextClock(COLDEST_AT, now, zone) ?? now + 12 * HOUR;
  const points = Array.from({ length: 13 }, (_, i) => {
    const at = now + 3 * i * HOUR;
    const before = Math.max(0, coldest - at) / Math.max(HOUR, coldest - now);
    const after = Math.min(1, Math.max(0, at - coldest) / (9 * HOUR));
    const air = coldestC + (nowC - coldestC) * Math.max(before, after);
    return { time: isoOf(at), air_c: Math.round(air * 10) / 10, wind_mps: windMps };
  });
  return { points, issued: isoOf(now) };
}
