import { type Configuration, INPUT_NAMES, writeInputs } from "../aircraft/index.js";
import { skyTemperature, windSpeedLogarithmic } from "../properties/index.js";
import { WIND_OF_CALM } from "../weather/index.js";
import type { Draws } from "./draws.js";
import type { Scenario } from "./scenario.js";

/** [m] height of the middle of the cowl above ground; project judgement. */
const COWL_HEIGHT = 1.2;
/** [m/s] draughts in a closed hangar; project judgement. */
const HANGAR_DRAUGHT = 0.1;

/** The surroundings of every member over time: weather knots with each member's own forecast error. */
export interface Forcing {
  /** [s] since scenario start of the weather's knots strictly inside the scenario. */
  readonly knots: readonly number[];
  /** Writes the network's inputs (inputs x members) for time `t` [s since start] in a configuration. */
  write(configuration: Configuration, t: number, out: Float64Array): void;
  /** [K] outside air of member m at t. */
  tempAirAt(t: number, m: number): number;
}

/** [s] Seconds since 1970 are held to a quarter of a microsecond: an end that is off by less is the same end. */
const CLOCK_ROUNDING = 1e-6;

export function createForcing(scenario: Scenario, draws: Draws): Forcing {
  const { weather, start, site, installation, kit } = scenario;
  const { members } = draws;
  const { tempOffset, windFactor, cloudOffset } = draws.weather;
  const count = weather.time.length;
  if (tempOffset.length !== count * members) {
    throw new RangeError(
      `invalid draws: weather errors for ${tempOffset.length / members} knots (expected ${count})`,
    );
  }
  const time = weather.time.map((t) => t - start);
  if (Math.abs(time[count - 1] - scenario.duration) < CLOCK_ROUNDING) time[count - 1] = scenario.duration;
  if (!(time[0] <= 0 && time[count - 1] >= scenario.duration)) {
    throw new RangeError(
      `invalid weather: it runs from ${time[0]} to ${time[count - 1]} s after the start (expected all of 0 to ${scenario.duration} s)`,
    );
  }
  const tempAir = new Float64Array(count * members);
  const wind = new Float64Array(count * members);
  const tempSky = new Float64Array(count * members);
  for (let k = 0; k < count; k++) {
    const speed = windSpeedLogarithmic(
      Math.max(weather.windSpeed[k], WIND_OF_CALM),
      COWL_HEIGHT,
      site.roughness,
    );
    const depression = Math.max(0, weather.tempAir[k] - weather.tempDewPoint[k]);
    for (let m = 0, o = k * members; m < members; m++, o++) {
      tempAir[o] = weather.tempAir[k] + tempOffset[o];
      wind[o] = speed * windFactor[o];
      const cloud = Math.min(1, Math.max(0, weather.cloudCover[k] + cloudOffset[o]));
      tempSky[o] = skyTemperature(tempAir[o], tempAir[o] - depression, cloud);
    }
  }
  const surroundings = { tempAir: 0, windSpeed: 0, tempSky: 0 };
  const inputs = INPUT_NAMES.length;

  /** Knot k and weight w so that the value at t is (1-w) of knot k and w of knot k+1; the ends belong to their knots. */
  function locate(t: number): { k: number; w: number } {
    if (!(t > time[0])) return { k: 0, w: 0 };
    if (t >= time[count - 1]) return { k: count - 1, w: 0 };
    let k = 0;
    for (let after = count - 1; after - k > 1; ) {
      const middle = (k + after) >> 1;
      if (time[middle] <= t) k = middle;
      else after = middle;
    }
    return { k, w: (t - time[k]) / (time[k + 1] - time[k]) };
  }

  return {
    knots: [...time].filter((t) => t > 0 && t < scenario.duration),
    tempAirAt(t, m) {
      const { k, w } = locate(t);
      const next = Math.min(k + 1, count - 1);
      return (1 - w) * tempAir[k * members + m] + w * tempAir[next * members + m];
    },
    write(configuration, t, out) {
      if (out.length !== inputs * members) throw new RangeError(`invalid length of inputs: ${out.length}`);
      const { k, w } = locate(t);
      const next = Math.min(k + 1, count - 1);
      for (let m = 0; m < members; m++) {
        const air = (1 - w) * tempAir[k * members + m] + w * tempAir[next * members + m];
        if (configuration.place === "hangar") {
          surroundings.tempAir = site.tempHangar;
          surroundings.windSpeed = HANGAR_DRAUGHT;
          surroundings.tempSky = site.tempHangar;
        } else {
          surroundings.tempAir = air;
          surroundings.windSpeed = (1 - w) * wind[k * members + m] + w * wind[next * members + m];
          surroundings.tempSky = (1 - w) * tempSky[k * members + m] + w * tempSky[next * members + m];
        }
        writeInputs(installation, kit, configuration, surroundings, out, members, m);
      }
    },
  };
}
