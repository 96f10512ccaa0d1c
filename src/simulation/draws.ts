import { PARAMETERS } from "../aircraft/index.js";
import { createRandom, latinHypercubeNormals } from "../numerics/index.js";
import {
  type ForecastErrorPaths,
  forecastErrorDimensions,
  sampleForecastErrors,
  type WeatherSeries,
} from "../weather/index.js";

/** What is uncertain, drawn once for every member and kept through all runs of a plan, so that runs compare. */
export interface Draws {
  readonly members: number;
  /** Multiplier of each uncertain parameter, per member [1]. */
  readonly multipliers: ReadonlyMap<string, Float64Array>;
  /** Common offset of the initial temperatures in standard deviations, per member [1]. */
  readonly initialOffset: Float64Array;
  /** Error of the weather at each of its knots. */
  readonly weather: ForecastErrorPaths;
}

export interface DrawRequest {
  readonly members: number;
  readonly seed: number;
  readonly weather: WeatherSeries;
}

/** Members from the priors of the parameters, of the initial state and of the weather's own error. */
export function drawEnsemble({ members, seed, weather }: DrawRequest): Draws {
  if (!(Number.isInteger(members) && members >= 1)) {
    throw new RangeError(`invalid members: ${members} (expected a whole number above 0)`);
  }
  const random = createRandom(seed);
  const normals = latinHypercubeNormals(PARAMETERS.length + 1, members, random.stream("parameters"));
  const row = (d: number) => normals.subarray(d * members, (d + 1) * members);
  const errors = latinHypercubeNormals(forecastErrorDimensions(weather), members, random.stream("weather"));
  return {
    members,
    multipliers: new Map(
      PARAMETERS.map(({ name, logSd }, d) => [name, row(d).map((z) => Math.exp(logSd * z))]),
    ),
    initialOffset: row(PARAMETERS.length),
    weather: sampleForecastErrors(weather, errors, members),
  };
}

/** One member with every parameter at its central value and the weather as given. */
export function centralDraws(weather: WeatherSeries): Draws {
  const knots = weather.time.length;
  return {
    members: 1,
    multipliers: new Map(PARAMETERS.map(({ name }) => [name, Float64Array.of(1)])),
    initialOffset: new Float64Array(1),
    weather: {
      members: 1,
      tempOffset: new Float64Array(knots),
      windFactor: new Float64Array(knots).fill(1),
      cloudOffset: new Float64Array(knots),
    },
  };
}

/** Product of the named parameters' multipliers for member m. */
export function multiplierOf(draws: Draws, names: readonly string[], m: number): number {
  let product = 1;
  for (const name of names) {
    const values = draws.multipliers.get(name);
    if (values === undefined) throw new RangeError(`unknown parameter: ${name}`);
    product *= values[m];
  }
  return product;
}
