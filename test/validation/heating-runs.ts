import type { Configuration, Cover, Heater, Installation } from "../../src/aircraft/index.js";
import { centralDraws, prepareRun, type TimedChange, timelineOf } from "../../src/simulation/index.js";
import { celsiusFromKelvin, kelvinFromCelsius } from "../../src/units/index.js";
import type { WeatherSeries } from "../../src/weather/index.js";

export const HOUR = 3600;

export interface HeatingRun {
  readonly installation: Installation;
  readonly heaters: readonly Heater[];
  readonly covers: readonly Cover[];
  readonly place: Configuration["place"];
  /** [°C] air around the aircraft: constant, or after hours */
  readonly air: number | readonly (readonly [h: number, c: number])[];
  /** [m/s] at 10 m */
  readonly wind: number;
  /** [°C] by part; `others` for the rest */
  readonly initial: Readonly<Record<string, number>>;
  readonly events: readonly TimedChange[];
  readonly coversOn?: readonly string[];
}

/** Temperatures [°C] by part at the given times [s], every parameter at its central value. */
export function play(run: HeatingRun, times: readonly number[]): Readonly<Record<string, number>>[] {
  const course: readonly (readonly number[])[] =
    typeof run.air === "number"
      ? [
          [0, run.air],
          [1e6 / HOUR, run.air],
        ]
      : run.air;
  const tempAir = Float64Array.from(course.map(([, c]) => kelvinFromCelsius(c)));
  const weather: WeatherSeries = {
    time: Float64Array.from(course.map(([h]) => h * HOUR)),
    tempAir,
    windSpeed: new Float64Array(course.length).fill(run.wind),
    tempDewPoint: tempAir.map((t) => t - 3),
    cloudCover: new Float64Array(course.length).fill(0.5),
    origin: "made for a heating run",
    assumptions: [],
  };
  const configuration: Configuration = {
    place: run.place,
    heatersOn: new Set(),
    coversOn: new Set(run.coversOn ?? []),
  };
  const end = times[times.length - 1];
  const prepared = prepareRun(
    {
      installation: run.installation,
      kit: { heaters: run.heaters, covers: run.covers },
      start: 0,
      duration: end,
      weather,
      site: { tempHangar: tempAir[0], roughness: 0.005 },
      initial: {
        configuration,
        temps: new Map(Object.entries(run.initial).map(([part, c]) => [part, kelvinFromCelsius(c)])),
        tempOthers: kelvinFromCelsius(run.initial.others),
        sd: 0,
      },
      events: run.events,
    },
    centralDraws(weather),
  );
  const result = prepared.advance({
    state: prepared.initial,
    from: 0,
    to: end,
    timeline: timelineOf(configuration, run.events),
    sampleTimes: times,
    tolerance: 0.01,
  });
  if (result.status !== "completed") throw new Error(`${result.status}: ${result.remedy}`);
  const { parts } = prepared.network;
  return times.map((_, s) =>
    Object.fromEntries(
      parts.map((p, i) => [p.name, celsiusFromKelvin(result.samples[s * parts.length + i])]),
    ),
  );
}
