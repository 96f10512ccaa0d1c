import { coverById, heaterById, installationById } from "../../src/aircraft/index.js";
import { type Sensor, USUAL_SENSOR } from "../../src/learning/index.js";
import type { Scenario, TimedChange } from "../../src/simulation/index.js";
import type { WeatherSeries } from "../../src/weather/index.js";

export const HOUR = 3600;

/** Hourly weather from functions of the hour. */
export function weatherOf(
  hours: number,
  air: (hour: number) => number,
  wind: (hour: number) => number,
  issued?: number,
): WeatherSeries {
  const time = Float64Array.from({ length: hours + 1 }, (_, i) => i * HOUR);
  return {
    time,
    tempAir: time.map((t) => air(t / HOUR)),
    windSpeed: time.map((t) => wind(t / HOUR)),
    tempDewPoint: time.map((t) => air(t / HOUR) - 4),
    cloudCover: time.map(() => 0.5),
    ...(issued === undefined ? {} : { issued }),
    origin: "made for a test",
    assumptions: [],
  };
}

/** A covered four-cylinder aircraft through a cold night, plugged in from the second hour to the ninth. */
export function heatedNight(heater: string, change: Partial<Scenario> = {}): Scenario {
  return {
    installation: installationById("four-carburettor-160"),
    kit: { heaters: [heaterById(heater)], covers: [coverById("insulated-cover")] },
    start: 0,
    duration: 12 * HOUR,
    weather: weatherOf(
      14,
      (h) => 256 + 3 * Math.cos(((h - 17) / 12) * Math.PI),
      (h) => 3 + Math.sin(h),
    ),
    site: { tempHangar: 281, roughness: 0.005 },
    initial: {
      configuration: { place: "ramp", heatersOn: new Set(), coversOn: new Set(["insulated-cover"]) },
      temps: new Map(),
      tempOthers: 256,
      sd: 2,
    },
    events: [
      { at: HOUR, change: { do: "plug-in", heaters: [heater] } },
      { at: 9 * HOUR, change: { do: "unplug", heaters: [heater] } },
    ],
    ...change,
  };
}

/** The night after, colder and windier, with a forecast; plugged in from the fourth hour on. */
export function nextNight(heater: string, issued: boolean): Scenario {
  const first = heatedNight(heater);
  const plugIn: TimedChange = { at: 4 * HOUR, change: { do: "plug-in", heaters: [heater] } };
  return {
    ...first,
    weather: weatherOf(
      14,
      (h) => 250 + 4 * Math.cos(((h - 15) / 12) * Math.PI),
      (h) => 4 + 2 * Math.sin(h / 2),
      ...(issued ? [0] : []),
    ),
    initial: { ...first.initial, tempOthers: 250, sd: 1.5 },
    events: [plugIn],
  };
}

export const probesOn = (...parts: readonly string[]): Sensor[] =>
  parts.map((part) => ({ name: part, place: { part }, ...USUAL_SENSOR }));

export const every = (step: number, end: number) =>
  Array.from({ length: Math.round(end / step) + 1 }, (_, i) => i * step);
