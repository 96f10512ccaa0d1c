import { PARAMETERS } from "../aircraft/index.js";

/** What is uncertain, drawn once for every member and kept through all runs of a plan, so that runs compare. */
export interface Draws {
  readonly members: number;
  /** Multiplier of each uncertain parameter, per member [1]. */
  readonly multipliers: ReadonlyMap<string, Float64Array>;
  /** Common offset of the initial temperatures in standard deviations, per member [1]. */
  readonly initialOffset: Float64Array;
  /** Error of the air temperature [K] at each weather knot, knots x members. */
  readonly tempAirError: Float64Array;
  /** Multiplier of the wind speed [1] at each weather knot, knots x members. */
  readonly windFactor: Float64Array;
}

/** One member with every parameter at its central value and the weather as given. */
export function centralDraws(knots: number): Draws {
  return {
    members: 1,
    multipliers: new Map(PARAMETERS.map(({ name }) => [name, Float64Array.of(1)])),
    initialOffset: new Float64Array(1),
    tempAirError: new Float64Array(knots),
    windFactor: new Float64Array(knots).fill(1),
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
