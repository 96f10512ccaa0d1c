import { requireNotNegative, requirePositive } from "../units/index.js";

/**
 * Heat that a long fin takes from its root [W/K of root over air]: sqrt(h P k A), the infinite fin of Incropera, DeWitt,
 * Bergman, Lavine, Fundamentals of Heat and Mass Transfer, 6th ed., eq. 3.80 (from memory). A fin longer than
 * 2.65 sqrt(k A/(h P)) gives 99 % of it (their Example 3.9).
 * @param coefficient to the air [W/(m2 K)]
 * @param perimeter of the section [m]
 * @param conductivity of the fin [W/(m K)]
 * @param section [m2]
 * @example finConductanceInfinite(100, 0.015708, 398, 1.9635e-5) // 0.1108: 8.3 W at 75 K (Example 3.9, copper)
 */
export function finConductanceInfinite(
  coefficient: number,
  perimeter: number,
  conductivity: number,
  section: number,
): number {
  requireNotNegative("coefficient", coefficient, "W/(m2 K)");
  requirePositive("perimeter", perimeter, "m");
  requirePositive("conductivity", conductivity, "W/(m K)");
  requirePositive("section", section, "m2");
  return Math.sqrt(coefficient * perimeter * conductivity * section);
}
