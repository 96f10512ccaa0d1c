import { moistureAlong } from "../planning/index.js";
import { centralDraws, partTemps, type Scenario, simulate } from "../simulation/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { cutSeries, type WeatherSeries, weatherAt } from "../weather/index.js";
import type { StandingAircraft } from "./standing-aircraft.js";

/** [h] how far back heating is played; engine and moisture are steady long before. */
const LONGEST_PLAYED = 168;
/** [s] between samples. */
const STEP = 600;

export interface HeatedPast {
  /** [K] of every part at the start */
  readonly temps: ReadonlyMap<string, number>;
  /** [s] that the inside of the case was wet or frosted meanwhile */
  readonly wetFor: number;
}

/**
 * An aircraft cold-soaked when it was plugged in, heated since as it stands now, every uncertain number at its middle
 * value. Undefined when the weather cannot be held back so far.
 * @param heatedFor [s] before the start
 */
export function heatedPast(
  heatedFor: number,
  start: number,
  aircraft: StandingAircraft,
  weather: WeatherSeries,
): HeatedPast | undefined {
  const duration = STEP * Math.ceil(Math.min(heatedFor, LONGEST_PLAYED * SECONDS_OF_HOUR) / STEP);
  if (duration === 0) return undefined;
  const at = start - duration;
  const cut = cutSeries(weather, at, start, LONGEST_PLAYED + 24);
  if (!cut.ok) return undefined;
  const { configuration, site } = aircraft;
  const tempAir = configuration.place === "hangar" ? site.tempHangar : weatherAt(cut.series, at).tempAir;
  const scenario: Scenario = {
    ...aircraft,
    start: at,
    duration,
    weather: cut.series,
    initial: { configuration, temps: new Map(), tempOthers: tempAir, sd: 0 },
    events: [],
  };
  const times = Array.from({ length: duration / STEP + 1 }, (_, i) => i * STEP);
  const course = simulate(scenario, centralDraws(cut.series), times);
  if (course.status !== "completed") throw new Error(`${course.status}: ${course.remedy}`);
  return {
    temps: new Map(course.parts.map((part) => [part, partTemps(course, part, times.length - 1)[0]])),
    wetFor: moistureAlong(course, scenario).wetTimeMost,
  };
}
