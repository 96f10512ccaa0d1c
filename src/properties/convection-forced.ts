import { requireInside, requireNotNegative, requirePositive } from "../units/index.js";

// "Incropera" is Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, 6th ed., Wiley
// (2007); its equation and table numbers are from memory. Examples are numbered as in the shorter
// Introduction to Heat Transfer, 6th ed. (2011).

/**
 * [-] Reynolds number at which a smooth plate's boundary layer is taken to turn turbulent (Incropera eq.
 * 6.24).
 */
export const REYNOLDS_TRANSITION_PLATE = 5e5;

/**
 * Mean Nusselt number [-] of an isothermal plate in laminar parallel flow: Nu = 0.664 Re^(1/2) Pr^(1/3)
 * (Incropera eq. 7.30, for Re up to {@link REYNOLDS_TRANSITION_PLATE} and Pr >= 0.6).
 * @example nusseltLaminarPlate(1e5, 0.7) // 186.44
 */
export function nusseltLaminarPlate(reynolds: number, prandtl: number): number {
  check(reynolds, prandtl);
  return 0.664 * Math.sqrt(reynolds) * Math.cbrt(prandtl);
}

/**
 * Mean Nusselt number [-] of an isothermal plate in parallel flow: laminar (Incropera eq. 7.30) up to `transition` [-],
 * beyond it laminar then turbulent, Nu = (0.037 Re^(4/5) - A) Pr^(1/3), A = 0.037 Rc^(4/5) - 0.664 Rc^(1/2) (Incropera
 * eqs. 7.38, 7.39; A = 871 for Rc = 5e5).
 * @param transition Reynolds number at which the boundary layer turns turbulent, see {@link reynoldsTransitionMayle}
 * @example nusseltPlate(1e6, 0.7) // 1299.2
 */
export function nusseltPlate(
  reynolds: number,
  prandtl: number,
  transition: number = REYNOLDS_TRANSITION_PLATE,
): number {
  if (reynolds <= transition) return nusseltLaminarPlate(reynolds, prandtl);
  check(reynolds, prandtl);
  const turbulent = 0.037 * (reynolds ** 0.8 - transition ** 0.8);
  return turbulent * Math.cbrt(prandtl) + nusseltLaminarPlate(transition, prandtl);
}

/**
 * [-] Reynolds number along a plate at which a disturbed stream makes the boundary layer turbulent, by
 * Re_theta = 400 Tu^(-5/8), Tu in per cent, and the laminar Re_theta = 0.664 Re^(1/2). Mayle, J. Turbomachinery 113 (1991)
 * 509-537, from memory.
 * @param turbulence root-mean-square of the fluctuations over the speed of the stream [-]
 * @example reynoldsTransitionMayle(0.03) // 9.19e4
 */
export function reynoldsTransitionMayle(turbulence: number): number {
  requireInside("turbulence", turbulence, 0.005, 0.2, "");
  return ((400 * (100 * turbulence) ** (-5 / 8)) / 0.664) ** 2;
}

/**
 * Mean Nusselt number [-], by the nozzle's diameter, of a round jet that strikes a surface within a radius around it:
 * Nu = G 2 Re^(1/2) (1 + 0.005 Re^0.55)^(1/2) Pr^0.42, G = 2 a (1 - 2.2 a)/(1 + 0.2 (H/D - 6) a), a = D/(2 r).
 * Martin, Advances in Heat Transfer 13 (1977) 1-60, as Incropera eqs. 7.71 and 7.72: Re 2000 to 400 000, H/D 2 to 12,
 * a 0.063 to 0.2.
 * @param gap from nozzle to surface over the nozzle's diameter, H/D [-]
 * @param narrowness a, nozzle diameter over twice the radius [-]
 * @example nusseltRoundJet(20_000, 0.7, 6, 0.1) // 55.83
 */
export function nusseltRoundJet(reynolds: number, prandtl: number, gap: number, narrowness: number): number {
  check(reynolds, prandtl);
  requirePositive("narrowness", narrowness, "");
  const place = (2 * narrowness * (1 - 2.2 * narrowness)) / (1 + 0.2 * (gap - 6) * narrowness);
  return place * 2 * Math.sqrt(reynolds * (1 + 0.005 * reynolds ** 0.55)) * prandtl ** 0.42;
}

function check(reynolds: number, prandtl: number): void {
  requireNotNegative("reynolds", reynolds, "");
  requirePositive("prandtl", prandtl, "");
}
