import { requireInside, requireNotNegative, requirePositive } from "../units/index.js";

/** [W/(m2 K4)] Stefan-Boltzmann constant (CODATA 2018, exact to the digits given). */
export const STEFAN_BOLTZMANN = 5.670374419e-8;

/**
 * Net long-wave flux a small grey surface loses to large surroundings [W/m2]: q = eps sigma (Ts^4 - Tsur^4)
 * (Incropera eq. 1.7).
 * @param tempSurface [K]
 * @param tempSurroundings [K]
 * @param emissivity of the surface [-]
 * @example radiantExchange(400, 0, 1) // 1451.6
 */
export function radiantExchange(tempSurface: number, tempSurroundings: number, emissivity: number): number {
  check(tempSurface, tempSurroundings, emissivity);
  return emissivity * STEFAN_BOLTZMANN * (tempSurface ** 4 - tempSurroundings ** 4);
}

/**
 * Radiation coefficient [W/(m2 K)]: h = eps sigma (Ts + Tsur)(Ts^2 + Tsur^2), so that h (Ts - Tsur) is
 * {@link radiantExchange} exactly (Incropera eq. 1.9). With both at T and eps 1 it is 4 sigma T^3, h_r0 of
 * ISO 6946:2017, Annex C.
 * @param tempSurface [K]
 * @param tempSurroundings [K]
 * @param emissivity of the surface [-]
 * @example radiationCoefficient(283.15, 283.15, 1) // 5.149 (ISO 6946 prints 5.1 at 10 °C)
 */
export function radiationCoefficient(
  tempSurface: number,
  tempSurroundings: number,
  emissivity: number,
): number {
  check(tempSurface, tempSurroundings, emissivity);
  const sum = tempSurface + tempSurroundings;
  return emissivity * STEFAN_BOLTZMANN * sum * (tempSurface ** 2 + tempSurroundings ** 2);
}

function check(tempSurface: number, tempSurroundings: number, emissivity: number): void {
  requirePositive("tempSurface", tempSurface, "K");
  requireNotNegative("tempSurroundings", tempSurroundings, "K");
  requireInside("emissivity", emissivity, 0, 1, "");
}
