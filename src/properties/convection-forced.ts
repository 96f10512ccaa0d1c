import { requireNotNegative, requirePositive } from "../units/index.js";

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
 * Mean Nusselt number [-] of an isothermal plate turbulent from its leading edge: Nu = 0.036 Re^(4/5)
 * Pr^(1/3). Kreith, Manglik, Bohn, Principles of Heat Transfer, 7th ed. (2010).
 * @example nusseltKreithTurbulentPlate(1.03e6, 0.71) // 2074.9
 */
export function nusseltKreithTurbulentPlate(reynolds: number, prandtl: number): number {
  check(reynolds, prandtl);
  return 0.036 * reynolds ** 0.8 * Math.cbrt(prandtl);
}

/**
 * Mean Nusselt number [-] of a smooth isothermal plate in parallel flow: laminar (Incropera eq. 7.30) below
 * Re = 5e5, above it laminar then turbulent, Nu = (0.037 Re^(4/5) - 871) Pr^(1/3) (Incropera eq. 7.38).
 * @example nusseltPlate(1e6, 0.7) // 1299.5
 */
export function nusseltPlate(reynolds: number, prandtl: number): number {
  if (reynolds <= REYNOLDS_TRANSITION_PLATE) return nusseltLaminarPlate(reynolds, prandtl);
  check(reynolds, prandtl);
  return (0.037 * reynolds ** 0.8 - 871) * Math.cbrt(prandtl);
}

function check(reynolds: number, prandtl: number): void {
  requireNotNegative("reynolds", reynolds, "");
  requirePositive("prandtl", prandtl, "");
}
