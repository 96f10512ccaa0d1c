import { requireNotNegative, requirePositive } from "../units/index.js";
import {
  conductivityAir,
  diffusivityAir,
  GRAVITY_STANDARD,
  kinematicViscosityAir,
  PRESSURE_STANDARD,
  prandtlAir,
} from "./air.js";
import {
  nusseltChurchillChuHorizontalCylinder,
  nusseltChurchillChuVerticalPlate,
  nusseltChurchillSphere,
  nusseltMcAdamsPlateAssisted,
  nusseltMcAdamsPlateOpposed,
  RANGE_CHURCHILL_CHU_HORIZONTAL_CYLINDER,
  RANGE_CHURCHILL_CHU_VERTICAL_PLATE,
  RANGE_CHURCHILL_SPHERE,
  RANGE_MCADAMS_PLATE_ASSISTED,
  RANGE_MCADAMS_PLATE_OPPOSED,
} from "./convection-free.js";
import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";

// "Incropera" is Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, 6th ed., Wiley
// (2007); its equation and table numbers are from memory. Examples are numbered as in the shorter
// Introduction to Heat Transfer, 6th ed. (2011).

/**
 * Heat transfer coefficient [W/(m2 K)]: h = Nu k / L.
 * @param nusselt [-]
 * @param conductivity of the fluid [W/(m K)]
 * @param length the one the Nusselt number is made with [m]
 * @example convectionCoefficient(147.16, 0.0338, 0.71) // 7.0 (Incropera Example 9.2)
 */
export function convectionCoefficient(nusselt: number, conductivity: number, length: number): number {
  requirePositive("length", length, "m");
  return (nusselt * conductivity) / length;
}

/**
 * Rayleigh number [-] of air: Ra = g |dT| L^3 / (T nu alpha), with expansion 1/T of an ideal gas (Incropera
 * eqs. 9.9, 9.25).
 * @param length [m]
 * @param tempDifference surface to air, either sign [K]
 * @param tempFilm mean of surface and air [K]
 * @param pressure [Pa]
 */
export function rayleighAir(
  length: number,
  tempDifference: number,
  tempFilm: number,
  pressure: number = PRESSURE_STANDARD,
): number {
  requirePositive("length", length, "m");
  const spread = tempFilm * kinematicViscosityAir(tempFilm, pressure) * diffusivityAir(tempFilm, pressure);
  return (GRAVITY_STANDARD * Math.abs(tempDifference) * length ** 3) / spread;
}

/**
 * A surface in still air and the length its correlation uses: height of a vertical plate, diameter of a
 * cylinder or sphere, area over perimeter of a horizontal plate. "assisted" is a warm face up or cold face
 * down, "opposed" the other two.
 */
export type FreeConvectionShape =
  | "vertical-plate"
  | "horizontal-cylinder"
  | "horizontal-plate-assisted"
  | "horizontal-plate-opposed"
  | "sphere";

interface Correlation {
  readonly nusselt: (flow: number, prandtl: number) => number;
  readonly range: ValidityRange;
}

const FREE: Readonly<Record<FreeConvectionShape, Correlation>> = {
  "vertical-plate": {
    nusselt: nusseltChurchillChuVerticalPlate,
    range: RANGE_CHURCHILL_CHU_VERTICAL_PLATE,
  },
  "horizontal-cylinder": {
    nusselt: nusseltChurchillChuHorizontalCylinder,
    range: RANGE_CHURCHILL_CHU_HORIZONTAL_CYLINDER,
  },
  "horizontal-plate-assisted": { nusselt: nusseltMcAdamsPlateAssisted, range: RANGE_MCADAMS_PLATE_ASSISTED },
  "horizontal-plate-opposed": { nusselt: nusseltMcAdamsPlateOpposed, range: RANGE_MCADAMS_PLATE_OPPOSED },
  sphere: { nusselt: nusseltChurchillSphere, range: RANGE_CHURCHILL_SPHERE },
};

/**
 * Free-convection coefficient [W/(m2 K)] of a surface in still air, radiation apart. A model whose link is
 * scaled by dT^(1/4) takes it at its own reference difference, commonly 10 K. Refuses sizes and differences
 * outside the published range; where a difference passes through zero, call the Nusselt number itself.
 * @param length see {@link FreeConvectionShape} [m]
 * @param tempDifference surface to air, either sign [K]
 * @param tempFilm mean of surface and air [K]
 * @param pressure [Pa]
 * @example freeConvectionCoefficient("vertical-plate", 0.71, 209, 400) // 7.0 (Incropera Example 9.2)
 */
export function freeConvectionCoefficient(
  shape: FreeConvectionShape,
  length: number,
  tempDifference: number,
  tempFilm: number,
  pressure: number = PRESSURE_STANDARD,
): number {
  const rayleigh = rayleighAir(length, tempDifference, tempFilm, pressure);
  const { nusselt, range } = FREE[shape];
  requireInRange("rayleigh", rayleigh, range);
  return convectionCoefficient(nusselt(rayleigh, prandtlAir(tempFilm)), conductivityAir(tempFilm), length);
}

/**
 * Free and forced convection together [W/(m2 K)]: h^3 = h_free^3 + h_forced^3, for streams that help or cross
 * each other (Incropera eq. 9.64 with n = 3).
 */
export function combinedConvectionCoefficient(free: number, forced: number): number {
  requireNotNegative("free", free, "W/(m2 K)");
  requireNotNegative("forced", forced, "W/(m2 K)");
  return Math.cbrt(free ** 3 + forced ** 3);
}

/**
 * Outdoor convective surface coefficient [W/(m2 K)], radiation apart: h = 4 + 4 V (ISO 6946:2017, Annex C).
 * @param windSpeed next to the surface [m/s]
 * @example windCoefficientIso6946(4) // 20
 */
export function windCoefficientIso6946(windSpeed: number): number {
  requireNotNegative("windSpeed", windSpeed, "m/s");
  return 4 + 4 * windSpeed;
}
