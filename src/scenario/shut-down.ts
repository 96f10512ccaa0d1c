import { centralDraws, partTemps, simulate } from "../simulation/index.js";
import { shutDownTemps } from "../starting/index.js";
import { cutSeries, type WeatherSeries, weatherAt } from "../weather/index.js";
import type { StandingAircraft } from "./standing-aircraft.js";

/** [K] how well the temperatures at shut-down are known (see shutDownTemps). */
const SHUT_DOWN_SD = 15;

export interface SinceShutDown {
  /** [K] of every part at the start */
  readonly temps: ReadonlyMap<string, number>;
  /** [K] standard deviation: the doubt at shut-down fades as the engine cools towards the air. */
  readonly sd: number;
  /** The weather did not reach back to the shut-down and its first value was held. */
  readonly weatherHeld: boolean;
}

/**
 * Temperatures `ago` [s] after the engine was shut down from cruise: the typical state then, cooled through the weather
 * since, with what is fitted and where the aircraft stands at the start. Undefined when the weather begins more than
 * a day too late.
 */
export function sinceShutDown(
  ago: number,
  start: number,
  aircraft: StandingAircraft,
  weather: WeatherSeries,
): SinceShutDown | undefined {
  const { installation, kit, configuration, site } = aircraft;
  const at = start - ago;
  const weatherHeld = weather.time[0] > at;
  const tempAir = weatherAt(weather, Math.max(at, weather.time[0])).tempAir;
  const initial = shutDownTemps(installation, tempAir);
  if (ago === 0) return { temps: initial, sd: SHUT_DOWN_SD, weatherHeld };
  const cut = cutSeries(weather, at, start, 24);
  if (!cut.ok) return undefined;
  const cooling = { ...configuration, heatersOn: new Set<string>() };
  const warmest = Math.max(...initial.values());
  const course = simulate(
    {
      installation,
      kit,
      start: at,
      duration: start - at,
      weather: cut.series,
      site,
      initial: {
        configuration: cooling,
        temps: initial,
        tempOthers: initial.get("cowl_air") ?? tempAir,
        sd: 0,
      },
      events: [],
    },
    centralDraws(cut.series),
    [0, start - at],
  );
  if (course.status !== "completed") throw new Error(`${course.status}: ${course.remedy}`);
  const temps = new Map(course.parts.map((part) => [part, partTemps(course, part, 1)[0]]));
  const left = (Math.max(...temps.values()) - tempAir) / (warmest - tempAir);
  return { temps, sd: SHUT_DOWN_SD * Math.min(1, Math.max(0.1, left)), weatherHeld };
}
