import { requirePositive } from "../units/index.js";
import { VISCOSITY_INDEX_H, VISCOSITY_INDEX_L, viscosityIndexRow } from "./viscosity-index-table.js";

const SQUARE_METRE_OF_SQUARE_MILLIMETRE = 1e-6;

/** [m2/s] viscosities at 40 °C of the two reference oils that match an oil at 100 °C. */
export interface ViscosityIndexReference {
  /** viscosity index 0 */
  readonly l: number;
  /** viscosity index 100 */
  readonly h: number;
}

/**
 * L and H of ASTM D2270 [m2/s]: linear in Table 1 from 2 to 70 mm2/s, above it L = 0.8353 Y^2 + 14.67 Y - 216
 * and H = 0.1684 Y^2 + 11.85 Y - 97 with Y = nu100 in mm2/s (ASTM D2270-10(2016)).
 * @param nu100 kinematic viscosity at 100 °C, 2e-6 or more [m2/s]
 */
export function viscosityIndexReference(nu100: number): ViscosityIndexReference {
  const y = nu100 / SQUARE_METRE_OF_SQUARE_MILLIMETRE;
  if (!(y >= 2 && y < Number.POSITIVE_INFINITY)) {
    throw new RangeError(
      `invalid nu100: ${nu100} (expected 2e-6 m2/s or more, where the viscosity index is defined)`,
    );
  }
  const l = y <= 70 ? atRow(VISCOSITY_INDEX_L, viscosityIndexRow(y)) : (0.8353 * y + 14.67) * y - 216;
  const h = y <= 70 ? atRow(VISCOSITY_INDEX_H, viscosityIndexRow(y)) : (0.1684 * y + 11.85) * y - 97;
  return { l: l * SQUARE_METRE_OF_SQUARE_MILLIMETRE, h: h * SQUARE_METRE_OF_SQUARE_MILLIMETRE };
}

/**
 * Viscosity index [-], not rounded. U >= H: VI = 100 (L - U) / (L - H) (procedure A); U < H: VI = 100 + (10^N
 * - 1) / 0.00715 with N = (log H - log U) / log Y (procedure B). U = nu40, Y = nu100 in mm2/s. ASTM
 * D2270-10(2016), ISO 2909.
 * @param nu40 kinematic viscosity at 40 °C [m2/s]
 * @param nu100 kinematic viscosity at 100 °C, 2e-6 or more [m2/s]
 * @example viscosityIndex(73.3e-6, 8.86e-6) // 92.4, reported as 92 (ASTM D2270 par. 5.1.4)
 */
export function viscosityIndex(nu40: number, nu100: number): number {
  requirePositive("nu40", nu40, "m2/s");
  const { l, h } = viscosityIndexReference(nu100);
  if (nu40 >= h) return (100 * (l - nu40)) / (l - h);
  const n = Math.log(h / nu40) / Math.log(nu100 / SQUARE_METRE_OF_SQUARE_MILLIMETRE);
  return 100 + (10 ** n - 1) / 0.00715;
}

function atRow(column: readonly number[], row: number): number {
  const low = Math.min(Math.floor(row), column.length - 2);
  return column[low]! + (row - low) * (column[low + 1]! - column[low]!);
}
