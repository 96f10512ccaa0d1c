import { CALIBRATED, HEAT_SPREADS, isHeatSpread, PARAMETERS } from "../aircraft/index.js";
import { createRandom, latinHypercubeNormals, type Random } from "../numerics/index.js";
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
  /** What was learned of this aircraft; parameters it does not name keep their priors. */
  readonly posterior?: MultiplierPosterior;
  readonly correction?: DrawCorrection;
}

/** What the outcomes of earlier plans ask of new ones. */
export interface DrawCorrection {
  /** [K] added to the outside air of every case: 0 or below where parts came out colder than said. */
  readonly airShift: number;
  /** [1] by which cases differ more from each other, in everything that is drawn. */
  readonly spread: number;
}

/** Joint normal distribution of the logarithms of some parameters' multipliers: mean + factor z, z standard normal. */
export interface MultiplierPosterior {
  readonly names: readonly string[];
  /** ln(multiplier) in the middle, one for each name. */
  readonly mean: readonly number[];
  /** Rows of the lower-triangular Cholesky factor of the covariance of ln(multiplier). */
  readonly factor: readonly (readonly number[])[];
}

/** Members from the priors of the parameters (or what was learned), of the initial state and of the weather's own error. */
export function drawEnsemble(request: DrawRequest): Draws {
  const draws = uncorrected(request);
  return request.correction === undefined ? draws : corrected(draws, request.correction);
}

function corrected({ members, multipliers, initialOffset, weather }: Draws, by: DrawCorrection): Draws {
  const { airShift, spread } = by;
  /** Further from the mean of the logarithms, or from 0 and 1, by the spread. */
  const further = (values: Float64Array): Float64Array => {
    const mean = values.reduce((sum, value) => sum + Math.log(value), 0) / values.length;
    return values.map((value) => Math.exp(mean + spread * (Math.log(value) - mean)));
  };
  return {
    members,
    multipliers: new Map([...multipliers].map(([name, values]) => [name, further(values)])),
    initialOffset: initialOffset.map((z) => spread * z),
    weather: {
      members,
      tempOffset: weather.tempOffset.map((offset) => spread * offset + airShift),
      windFactor: weather.windFactor.map((factor) => factor ** spread),
      cloudOffset: weather.cloudOffset.map((offset) => spread * offset),
    },
  };
}

function uncorrected({ members, seed, weather, posterior }: DrawRequest): Draws {
  if (!(Number.isInteger(members) && members >= 1)) {
    throw new RangeError(`invalid members: ${members} (expected a whole number above 0)`);
  }
  const random = createRandom(seed);
  const normals = latinHypercubeNormals(PARAMETERS.length + 1, members, random.stream("parameters"));
  const row = (d: number) => normals.subarray(d * members, (d + 1) * members);
  const errors = latinHypercubeNormals(forecastErrorDimensions(weather), members, random.stream("weather"));
  const multipliers = multipliersFrom(PRIOR, row);
  if (posterior !== undefined) {
    for (const [name, values] of multipliersFrom(posterior, row)) multipliers.set(name, values);
  }
  return {
    members,
    multipliers: new Map([...multipliers, ...heatSpreads(members, random.stream("heater basis"))]),
    initialOffset: row(PARAMETERS.length),
    weather: sampleForecastErrors(weather, errors, members),
  };
}

/** Of the heat that heaters bring whose numbers were not measured. */
function heatSpreads(members: number, random: Random): [string, Float64Array][] {
  const spreads = Object.values(HEAT_SPREADS);
  const normals = latinHypercubeNormals(spreads.length, members, random);
  return spreads.map(({ name, logSd }, d) => [
    name,
    normals.subarray(d * members, (d + 1) * members).map((z) => Math.exp(logSd * z)),
  ]);
}

/** What engines and nights are like that nobody has measured yet. */
export const PRIOR: MultiplierPosterior = CALIBRATED;

/** Of every name of a joint distribution, from the normals of the parameter it belongs to. */
function multipliersFrom(
  joint: MultiplierPosterior,
  row: (d: number) => Float64Array,
): Map<string, Float64Array> {
  const { names, mean, factor } = joint;
  if (mean.length !== names.length || factor.length !== names.length) {
    throw new RangeError(
      `invalid posterior: ${mean.length} means and ${factor.length} rows (expected ${names.length} of each)`,
    );
  }
  const normals = names.map((name) => row(indexOfParameter(name)));
  return new Map(names.map((name, i) => [name, jointMultipliers(joint, i, normals)]));
}

function indexOfParameter(name: string): number {
  const index = PARAMETERS.findIndex((parameter) => parameter.name === name);
  if (index < 0) throw new RangeError(`unknown parameter: ${name}`);
  return index;
}

/** Multiplier i of every member; its row of the factor mixes the members' normals. */
function jointMultipliers(
  { mean, factor }: MultiplierPosterior,
  i: number,
  normals: readonly Float64Array[],
): Float64Array {
  return normals[i].map((_, m) => {
    let log = mean[i];
    for (let j = 0; j <= i; j++) log += factor[i][j] * normals[j][m];
    return Math.exp(log);
  });
}

/** One member with every parameter in the middle of its prior and the weather as given. */
export function centralDraws(weather: WeatherSeries): Draws {
  const knots = weather.time.length;
  return {
    members: 1,
    multipliers: new Map(PRIOR.names.map((name, i) => [name, Float64Array.of(Math.exp(PRIOR.mean[i]))])),
    initialOffset: new Float64Array(1),
    weather: {
      members: 1,
      tempOffset: new Float64Array(knots),
      windFactor: new Float64Array(knots).fill(1),
      cloudOffset: new Float64Array(knots),
    },
  };
}

/** Product of the named parameters' multipliers for every member. */
export function multipliersOf({ members, multipliers }: Draws, names: readonly string[]): Float64Array {
  const product = new Float64Array(members).fill(1);
  for (const name of names) {
    const values = multipliers.get(name);
    if (values === undefined) {
      if (isHeatSpread(name)) continue;
      throw new RangeError(`unknown parameter: ${name}`);
    }
    for (let m = 0; m < members; m++) product[m] *= values[m];
  }
  return product;
}

/** Values of links or sources for every member, [owner][member], each times its owner's multipliers. */
export function spread(
  draws: Draws,
  values: Float64Array,
  owners: readonly { readonly parameters: readonly string[] }[],
): Float64Array {
  const { members } = draws;
  const out = new Float64Array(values.length * members);
  owners.forEach(({ parameters }, i) => {
    const own = multipliersOf(draws, parameters);
    for (let m = 0; m < members; m++) out[i * members + m] = values[i] * own[m];
  });
  return out;
}
