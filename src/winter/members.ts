import { type Draws, drawEnsemble, type MultiplierPosterior } from "../simulation/index.js";
import type { WeatherSeries } from "../weather/index.js";

/** The middle aircraft first, then those drawn; weather errors of `series` are zero for the middle one. */
function withMiddle(draws: Draws): Draws {
  const { members, multipliers, initialOffset, weather } = draws;
  const rows = (values: Float64Array, middle: number) => {
    const count = values.length / members;
    const out = new Float64Array(count * (members + 1)).fill(middle);
    for (let k = 0; k < count; k++)
      out.set(values.subarray(k * members, (k + 1) * members), k * (members + 1) + 1);
    return out;
  };
  return {
    members: members + 1,
    multipliers: new Map([...multipliers].map(([name, values]) => [name, rows(values, 1)])),
    initialOffset: rows(initialOffset, 0),
    weather: {
      members: members + 1,
      tempOffset: rows(weather.tempOffset, 0),
      windFactor: rows(weather.windFactor, 1),
      cloudOffset: rows(weather.cloudOffset, 0),
    },
  };
}

/** The same aircraft in weather that is known: no errors at any of the knots. */
export function inKnownWeather(draws: Draws, { time }: WeatherSeries): Draws {
  const size = time.length * draws.members;
  return {
    ...draws,
    weather: {
      members: draws.members,
      tempOffset: new Float64Array(size),
      windFactor: new Float64Array(size).fill(1),
      cloudOffset: new Float64Array(size),
    },
  };
}

export interface MembersRequest {
  readonly members: number;
  readonly seed: number;
  readonly posterior?: MultiplierPosterior | undefined;
}

/**
 * Drawn aircraft, the middle one first, each with a forecast that errs the same all night, as widely as forecasts of `age` [s]
 * do; undefined: the weather is known.
 */
export function drawnMembers(
  { members, seed, posterior }: MembersRequest,
  weather: WeatherSeries,
  age: number | undefined,
): Draws {
  const issued = weather.time[0]! - (age ?? 0);
  const draws = drawEnsemble({
    ...{ members, seed },
    weather: { ...weather, issued },
    ...(posterior === undefined ? {} : { posterior }),
  });
  if (age === undefined) return inKnownWeather(withMiddle(draws), weather);
  const { tempOffset, windFactor, cloudOffset } = draws.weather;
  const held = (values: Float64Array) => values.map((_, k) => values[k % members]!);
  return withMiddle({
    ...draws,
    weather: {
      members,
      tempOffset: held(tempOffset),
      windFactor: held(windFactor),
      cloudOffset: held(cloudOffset),
    },
  });
}
