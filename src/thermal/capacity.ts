import { MELTING_WIDTH, type Part } from "./network.js";

const FREEZING = 273.15;
const GAUSS_NORM = 1 / (MELTING_WIDTH * Math.sqrt(Math.PI));

/** The heat capacities of all parts and members. */
export interface HeatCapacities {
  /** [K/J] reciprocal heat capacities at 0 °C without ice, parts x members. */
  readonly inverse: Float64Array;
  /** Writes those that vary with temperature. */
  update(temp: Float64Array, inverse: Float64Array): void;
  /** Adds what a heat capacity's change with temperature means for dT/dt under the net heat [W], on the Jacobian's diagonal. */
  addSlopes(
    temp: Float64Array,
    net: Float64Array,
    inverse: Float64Array,
    diagonal: Int32Array,
    jacobian: Float64Array,
  ): void;
}

/** @param factors multipliers of the heat capacities, parts x members [1] */
export function createHeatCapacities(
  parts: readonly Part[],
  members: number,
  factors: Float64Array,
): HeatCapacities {
  const constant = new Float64Array(parts.length * members);
  parts.forEach(({ heatCapacity }, i) => {
    for (let k = i * members; k < (i + 1) * members; k++) constant[k] = 1 / (heatCapacity * factors[k]);
  });
  const varying = parts
    .map((part, index) => ({ part, index, row: index * members }))
    .filter(({ part }) => (part.heatCapacitySlope ?? 0) !== 0 || part.latentHeat !== undefined);
  return {
    inverse: constant,
    update(temp, inverse) {
      for (const { part, row } of varying) {
        for (let k = row; k < row + members; k++)
          inverse[k] = 1 / (heatCapacityAt(part, temp[k]) * factors[k]);
      }
    },
    addSlopes(temp, net, inverse, diagonal, jacobian) {
      for (const { part, index, row } of varying) {
        const entry = diagonal[index] * members;
        for (let m = 0, k = row; m < members; m++, k++) {
          const slope = heatCapacitySlopeAt(part, temp[k]) * factors[k];
          jacobian[entry + m] -= net[k] * slope * inverse[k] * inverse[k];
        }
      }
    },
  };
}

/**
 * Heat capacity C(T) [J/K] of a part: C0 + C1 (T - 273.15 K) + L exp(-((T - T_f)/w)²)/(w√π).
 * The last term is the latent heat L [J] of ice on the part, spread over the melting width (apparent heat capacity
 * method; Bonacina et al. 1973, Int. J. Heat Mass Transfer 16, 1825-1832, cited from memory).
 */
export function heatCapacityAt(part: Part, temp: number): number {
  const t = temp - FREEZING;
  let capacity = part.heatCapacity + (part.heatCapacitySlope ?? 0) * t;
  if (part.latentHeat !== undefined)
    capacity += part.latentHeat * GAUSS_NORM * Math.exp(-((t / MELTING_WIDTH) ** 2));
  return capacity;
}

/** dC/dT [J/K2]. */
export function heatCapacitySlopeAt(part: Part, temp: number): number {
  const t = temp - FREEZING;
  let slope = part.heatCapacitySlope ?? 0;
  if (part.latentHeat !== undefined) {
    const x = t / MELTING_WIDTH;
    slope -= (2 * x * part.latentHeat * GAUSS_NORM * Math.exp(-x * x)) / MELTING_WIDTH;
  }
  return slope;
}
