import { requirePositive } from "../units/index.js";

const SQUARE_METRE_OF_SQUARE_MILLIMETRE = 1e-6;

/** An oil's line in the Walther chart: log10 log10 Z = a - b log10 T. */
export interface WaltherFit {
  readonly a: number;
  readonly b: number;
}

/**
 * Z of ASTM D341 [-]: Z = nu + 0.7 + exp(-1.47 - 1.84 nu - 0.51 nu^2), nu in mm2/s. Above 2 mm2/s this is the
 * short form Z = nu + 0.7 to 0.03 %. ASTM D341-17 (after Walther 1931 and MacCoull).
 * @param nu kinematic viscosity [m2/s]
 * @example waltherZ(1e-6) // 1.72193
 */
export function waltherZ(nu: number): number {
  requirePositive("nu", nu, "m2/s");
  const v = nu / SQUARE_METRE_OF_SQUARE_MILLIMETRE;
  return v + 0.7 + Math.exp(-1.47 - 1.84 * v - 0.51 * v * v);
}

/**
 * Kinematic viscosity [m2/s] of Z, with x = Z - 0.7: nu = x - exp(-0.7487 - 3.295 x + 0.6119 x^2 - 0.3193
 * x^3). A fit of the standard's, not the exact inverse: off by up to 0.0002 mm2/s near 1.5 mm2/s. ASTM
 * D341-17.
 * @example viscosityOfWaltherZ(1.721928) // 0.99995e-6
 */
export function viscosityOfWaltherZ(z: number): number {
  const x = z - 0.7;
  requirePositive("z - 0.7", x, "");
  const nu = x - Math.exp(-0.7487 + x * (-3.295 + x * (0.6119 - 0.3193 * x)));
  return nu * SQUARE_METRE_OF_SQUARE_MILLIMETRE;
}

/**
 * The line through two measured viscosities (ASTM D341-17). It holds for a Newtonian oil between its cloud or
 * pour point and its boiling; below the pour point, and for a multigrade in deep cold, it is an
 * extrapolation.
 * @param temp1 [K]
 * @param nu1 [m2/s]
 * @param temp2 [K]
 * @param nu2 [m2/s]
 * @example waltherFit(313.15, 32e-6, 373.15, 5.4e-6) // { a: 9.5308, b: 3.7466 }
 */
export function waltherFit(temp1: number, nu1: number, temp2: number, nu2: number): WaltherFit {
  requirePositive("temp1", temp1, "K");
  requirePositive("temp2", temp2, "K");
  const y1 = Math.log10(Math.log10(waltherZ(nu1)));
  const y2 = Math.log10(Math.log10(waltherZ(nu2)));
  const b = (y1 - y2) / Math.log10(temp2 / temp1);
  if (!(b > 0 && b < Number.POSITIVE_INFINITY)) {
    throw new RangeError(
      `invalid viscosities: ${nu1} m2/s at ${temp1} K and ${nu2} m2/s at ${temp2} K (expected the warmer to be the thinner)`,
    );
  }
  return { a: y1 + b * Math.log10(temp1), b };
}

/**
 * Kinematic viscosity [m2/s] on the line.
 * @param temp [K]
 * @example waltherViscosity({ a: 9.53082, b: 3.74658 }, 353.15) // 8.53e-6
 */
export function waltherViscosity(fit: WaltherFit, temp: number): number {
  requirePositive("temp", temp, "K");
  return viscosityOfWaltherZ(10 ** (10 ** (fit.a - fit.b * Math.log10(temp))));
}
