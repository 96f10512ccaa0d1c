import type { ReadWinter } from "../documents/index.js";
import { posteriorFor } from "../learning/index.js";
import { createForcing, type Draws, type Forcing } from "../simulation/index.js";
import type { WeatherSeries } from "../weather/index.js";
import { STRIPPED } from "./cold-case.js";
import { drawnMembers, inKnownWeather } from "./members.js";

/** Aircraft of a study with one of its kits, the middle one first. */
export function studyMembers(read: ReadWinter, kit: number, weather: WeatherSeries): Draws {
  return inKnownWeather(
    drawnMembers({ ...read.ensemble, posterior: posteriorOf(read, kit) }, weather, undefined),
    weather,
  );
}

/** What was learned, as far as it holds for how a kit heats and covers. */
export function posteriorOf(read: ReadWinter, kit: number) {
  if (read.learned === undefined) return undefined;
  const { heaters, covers } = read.kits[kit]!.kit;
  const setting = { place: read.place, covers: covers.map(({ id }) => id).sort() };
  return posteriorFor(read.learned, { setting, heaters: heaters.map(({ id }) => id) });
}

/** The weather of a winter around all aircraft of a study alike. */
export function seasonForcing(read: ReadWinter, kit: number, weather: WeatherSeries): Forcing {
  const { installation, site, start, end } = read;
  const one: Draws = {
    members: 1,
    multipliers: new Map(),
    initialOffset: new Float64Array(1),
    weather: {
      members: 1,
      tempOffset: new Float64Array(weather.time.length),
      windFactor: new Float64Array(weather.time.length).fill(1),
      cloudOffset: new Float64Array(weather.time.length),
    },
  };
  return createForcing(
    {
      ...{ installation, site, weather, start, kit: read.kits[kit]!.kit },
      duration: end - start,
      initial: { configuration: STRIPPED, temps: new Map(), tempOthers: 273.15, sd: 0 },
      events: [],
    },
    one,
  );
}
