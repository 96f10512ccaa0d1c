import { coverById, heaterById, installationById } from "../../src/aircraft/index.js";
import type { Scenario } from "../../src/simulation/index.js";
import type { WeatherSeries } from "../../src/weather/index.js";

export const HOUR = 3600;

/** Hourly weather with the same values throughout. */
export function steadyWeather(tempAir: number, windSpeed = 3, hours = 48, cloudCover = 0.5): WeatherSeries {
  const time = Float64Array.from({ length: hours + 1 }, (_, i) => i * HOUR);
  return {
    time,
    tempAir: time.map(() => tempAir),
    windSpeed: time.map(() => windSpeed),
    tempDewPoint: time.map(() => tempAir - 4),
    cloudCover: time.map(() => cloudCover),
    origin: "steady, for a test",
    assumptions: [],
  };
}

/** A cold-soaked four-cylinder aircraft on the ramp under its cover, with a whole-engine heater at hand. */
export function coldSoaked(change: Partial<Scenario> = {}): Scenario {
  const weather = change.weather ?? steadyWeather(253.15);
  return {
    installation: installationById("four-carburettor-160"),
    kit: {
      heaters: [heaterById("whole-engine-4"), heaterById("sump-pad-220")],
      covers: [coverById("insulated-cover"), coverById("inlet-plugs")],
    },
    start: 0,
    duration: 24 * HOUR,
    weather,
    site: { tempHangar: 281.15, roughness: 0.005 },
    initial: {
      configuration: { place: "ramp", heatersOn: new Set(), coversOn: new Set(["insulated-cover"]) },
      temps: new Map(),
      tempOthers: weather.tempAir[0],
      sd: 1,
    },
    events: [],
    ...change,
  };
}
