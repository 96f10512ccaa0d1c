import type { Scenario } from "../simulation/index.js";
import { SECONDS_OF_MINUTE } from "../units/index.js";
import type { WeatherSeries } from "../weather/index.js";
import { interpolateHeld } from "./batch-surroundings.js";
import type { TemperatureLog } from "./log.js";

/** The air around the aircraft as far as the log knows it better than the scenario. */
export interface MeasuredSurroundings {
  readonly scenario: Scenario;
  readonly hangarAir?: { readonly time: readonly number[]; readonly temps: readonly number[] };
  /** [K] standard deviation of the air's lasting error. */
  readonly airSd: number;
}

/** [s] over which readings of the air are averaged. */
const AVERAGED = 30 * SECONDS_OF_MINUTE;
/** [K] a probe in the shade near the aircraft; project judgement. */
const MEASURED_SD = 0.5;
/** [K] a station's or forecast air, or a hangar known by one number; project judgement. */
const TOLD_SD = 1;

/**
 * Lets the log's own probes of outside and hangar air drive the model. Where they have no readings the scenario's weather
 * stands.
 */
export function measuredSurroundings(log: TemperatureLog, scenario: Scenario): MeasuredSurroundings {
  const outside = averaged(log, scenario, "outside-air");
  const hangar = averaged(log, scenario, "hangar-air");
  const isIndoors = scenario.initial.configuration.place === "hangar";
  const isMeasured = (isIndoors ? hangar : outside).time.length > 0;
  return {
    scenario:
      outside.time.length === 0
        ? scenario
        : { ...scenario, weather: withAir(scenario.weather, scenario.start, outside) },
    ...(hangar.time.length === 0 ? {} : { hangarAir: hangar }),
    airSd: isMeasured ? MEASURED_SD : TOLD_SD,
  };
}

interface AirReadings {
  /** [s] since the scenario's start. */
  readonly time: readonly number[];
  /** [K] */
  readonly temps: readonly number[];
}

function averaged(log: TemperatureLog, { start, duration }: Scenario, place: string): AirReadings {
  const bins = new Map<number, number[]>();
  for (const probe of log.probes) {
    if (probe.place !== place) continue;
    for (let k = 0; k < log.time.length; k++) {
      const t = log.time[k] - start;
      if (!(t >= 0 && t <= duration) || Number.isNaN(probe.temps[k])) continue;
      const bin = Math.floor(t / AVERAGED);
      const values = bins.get(bin) ?? [];
      bins.set(bin, values);
      values.push(probe.temps[k]);
    }
  }
  const entries = [...bins].sort(([a], [b]) => a - b);
  return {
    time: entries.map(([bin]) => (bin + 0.5) * AVERAGED),
    temps: entries.map(([, values]) => values.reduce((a, b) => a + b) / values.length),
  };
}

/** The weather with the air of the readings from the first to the last of them; dew points stay at or below the air. */
function withAir(weather: WeatherSeries, start: number, { time, temps }: AirReadings): WeatherSeries {
  const measured = time.map((t) => t + start);
  const first = measured[0];
  const last = measured[measured.length - 1];
  const told = [...weather.time].filter((t) => t < first || t > last);
  const knots = Float64Array.from([...told, ...measured].sort((a, b) => a - b));
  const of = (values: Float64Array) => knots.map((t) => interpolateHeld(weather.time, values, t));
  const tempAir = knots.map((t) =>
    t < first || t > last
      ? interpolateHeld(weather.time, weather.tempAir, t)
      : interpolateHeld(measured, temps, t),
  );
  return {
    ...weather,
    time: knots,
    tempAir,
    windSpeed: of(weather.windSpeed),
    tempDewPoint: of(weather.tempDewPoint).map((dew, k) => Math.min(dew, tempAir[k])),
    cloudCover: of(weather.cloudCover),
    origin: `${weather.origin}; air as logged`,
  };
}
