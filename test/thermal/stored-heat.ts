import { MELTING_WIDTH, type Part } from "../../src/thermal/network.js";

const FREEZING = 273.15;

/** Heat [J] stored between 273.15 K and `temp`: the integral of C(T), latent heat counted from fully frozen. */
export function storedHeat(part: Part, temp: number): number {
  const t = temp - FREEZING;
  const sensible = part.heatCapacity * t + 0.5 * (part.heatCapacitySlope ?? 0) * t * t;
  return part.latentHeat === undefined
    ? sensible
    : sensible + 0.5 * part.latentHeat * (1 + erf(t / MELTING_WIDTH));
}

/** Error function by Abramowitz & Stegun 7.1.26, absolute error below 1.5e-7. */
function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const series =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  return Math.sign(x) * (1 - series * Math.exp(-x * x));
}
