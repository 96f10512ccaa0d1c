import type { UniformTable } from "../numerics/index.js";

/**
 * A heat network: parts that store heat, links that carry it, sources that bring it, and inputs (outside air, sky,
 * hangar, wind terms) that are given from outside as functions of time.
 *
 * Heat balance of each part: C(T) dT/dt = Σ links q_in + Σ sources P. One sign rule: a link's heat flow q [W] is
 * positive from `from` to `to`.
 *
 * The structure (names, ends, laws) is fixed for a run; the numbers of a configuration (cover on or off, plugged in or
 * not, ramp or hangar) are `NetworkValues` and change at switching times.
 */
export interface Network {
  readonly parts: readonly Part[];
  /** Names of the inputs, in the order in which their values are given. */
  readonly inputs: readonly string[];
  readonly links: readonly Link[];
  readonly sources: readonly Source[];
}

/** Something with one temperature. */
export interface Part {
  readonly name: string;
  /** [J/K] at 273.15 K. */
  readonly heatCapacity: number;
  /** [J/K2] growth of the heat capacity with temperature (oil). */
  readonly heatCapacitySlope?: number;
  /** Ice or wet snow lying on the part: melts around 0 °C. */
  readonly latentHeat?: number;
  /** Uncertain parameter that multiplies the heat store. */
  readonly parameter?: string;
}

/**
 * How a link's flow depends on its two temperatures; G is the conductance [W/K] and ΔT = T_from - T_to [K]:
 * - conduction:       q = G ΔT
 * - free-convection:  q = G (ΔT/10 K)^1/4 ΔT, the laminar law h ~ ΔT^1/4; G is the value at ΔT = 10 K
 * - ventilation:      q = G sqrt((|ΔT| + w)/10 K) ΔT, orifice flow driven by stack effect and wind; w [K] is the wind
 *                     pressure as the temperature difference with the same stack pressure; G at ΔT = 10 K, no wind
 * - radiation:        q = G (T_from⁴ - T_to⁴)/(4 (273.15 K)³); G is the linearised value at 0 °C
 * The two laws with a power of ΔT are made smooth through zero (SMOOTHING_TEMPERATURE).
 */
export type FluxLaw = "conduction" | "free-convection" | "ventilation" | "radiation";

export interface Link {
  readonly name: string;
  /** A part or an input that is a temperature [K]. */
  readonly from: string;
  readonly to: string;
  readonly law: FluxLaw;
  /** Uncertain parameters that multiply the conductance. */
  readonly parameters: readonly string[];
  /** Input that multiplies the conductance (wind-dependent surface conductance) [1]. */
  readonly factorInput?: string;
  /** Input that adds to the driving |ΔT| of the ventilation law [K]. */
  readonly windInput?: string;
  /** Dimensionless factor of the mean of the two temperatures (oil thins as it warms). */
  readonly filmFactor?: FilmFactor;
}

/** A tabulated smooth function φ(T) [1] and its slope [1/K]. */
export type FilmFactor = UniformTable;

/** Heat put into a part: P σ((T_set - T_sensed)/width), or just P where nothing limits it. */
export interface Source {
  readonly name: string;
  readonly part: string;
  /**
   * Self-limiting element or thermostat: the time-averaged power falls from full to nothing around `setPoint` [K] over
   * about ±2 `width` [K]. A cycling thermostat is represented by its time average.
   */
  readonly limiter?: { readonly senses: string; readonly setPoint: number; readonly width: number };
  readonly parameters: readonly string[];
}

/** The numbers of one configuration, in the order of the network's links and sources. */
export interface NetworkValues {
  /** [W/K] per link; 0 switches a link off. */
  readonly conductance: Float64Array;
  /** [W] per source. */
  readonly power: Float64Array;
}

/** [K] below which the ΔT power laws turn linear, so that flux and slope stay smooth through ΔT = 0. */
export const SMOOTHING_TEMPERATURE = 0.1;

/** [K] half-width over which ice melts (the latent heat is spread as a Gaussian around 273.15 K). */
export const MELTING_WIDTH = 0.5;

/** Throws unless every name is unique and every reference resolves; returns the network unchanged. */
export function checkedNetwork(network: Network): Network {
  const ends = new Set<string>();
  for (const name of [...network.parts.map((p) => p.name), ...network.inputs]) {
    if (ends.has(name)) throw new RangeError(`duplicate part or input: ${name}`);
    ends.add(name);
  }
  const parts = new Set(network.parts.map((p) => p.name));
  const inputs = new Set(network.inputs);
  for (const part of network.parts) {
    if (!(part.heatCapacity > 0))
      throw new RangeError(`invalid heatCapacity of ${part.name}: ${part.heatCapacity}`);
  }
  for (const link of network.links) {
    for (const end of [link.from, link.to]) {
      if (!ends.has(end)) throw new RangeError(`unknown end of link ${link.name}: ${end}`);
    }
    if (link.law === "ventilation" && link.windInput === undefined) {
      throw new RangeError(`missing windInput of link ${link.name}: the ventilation law needs one`);
    }
    for (const input of [link.factorInput, link.windInput]) {
      if (input !== undefined && !inputs.has(input))
        throw new RangeError(`unknown input of link ${link.name}: ${input}`);
    }
  }
  for (const source of network.sources) {
    for (const part of [source.part, source.limiter?.senses ?? source.part]) {
      if (!parts.has(part)) throw new RangeError(`unknown part of source ${source.name}: ${part}`);
    }
  }
  return network;
}
