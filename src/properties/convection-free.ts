import { requireNotNegative, requirePositive } from "../units/index.js";
import type { ValidityRange } from "./range.js";

// "Incropera" is Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, 6th ed., Wiley
// (2007); its equation and table numbers are from memory. Examples are numbered as in the shorter
// Introduction to Heat Transfer, 6th ed. (2011).

/** Published range of {@link nusseltChurchillChuVerticalPlate}. */
export const RANGE_CHURCHILL_CHU_VERTICAL_PLATE: ValidityRange = {
  quantity: "Rayleigh number by height [-]",
  min: 0,
  max: 1e13,
  source: "Churchill and Chu 1975a; upper end as plotted in Incropera Fig. 9.6 (from memory)",
};

/**
 * Mean Nusselt number [-] of free convection at an isothermal vertical plate (all Rayleigh numbers):
 * Nu = (0.825 + 0.387 Ra^(1/6) / [1 + (0.492/Pr)^(9/16)]^(8/27))^2.
 * Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1323-1329, doi:10.1016/0017-9310(75)90243-4;
 * Incropera eq. 9.26.
 * @param rayleigh by plate height, at film temperature [-]
 * @param prandtl [-]
 * @example nusseltChurchillChuVerticalPlate(0.69 * 2.63e9, 0.69) // 147 (Incropera Example 9.2)
 */
export function nusseltChurchillChuVerticalPlate(rayleigh: number, prandtl: number): number {
  check(rayleigh, prandtl);
  return (0.825 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2;
}

/** Published range of {@link nusseltChurchillChuHorizontalCylinder}. */
export const RANGE_CHURCHILL_CHU_HORIZONTAL_CYLINDER: ValidityRange = {
  quantity: "Rayleigh number by diameter [-]",
  min: 1e-5,
  max: 1e12,
  source: "Churchill and Chu 1975b (lower end); Incropera eq. 9.34 (upper end)",
};

/**
 * Mean Nusselt number [-] of free convection at an isothermal horizontal cylinder:
 * Nu = (0.60 + 0.387 Ra^(1/6) / [1 + (0.559/Pr)^(9/16)]^(8/27))^2.
 * Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1049-1053, doi:10.1016/0017-9310(75)90222-7;
 * Incropera eq. 9.34.
 * @param rayleigh by diameter, at film temperature [-]
 * @param prandtl [-]
 * @example nusseltChurchillChuHorizontalCylinder(0.69 * 2.63e9, 0.69) // 139.13
 */
export function nusseltChurchillChuHorizontalCylinder(rayleigh: number, prandtl: number): number {
  check(rayleigh, prandtl);
  return (0.6 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2;
}

/** Published range of {@link nusseltMcAdamsPlateAssisted}. */
export const RANGE_MCADAMS_PLATE_ASSISTED: ValidityRange = {
  quantity: "Rayleigh number by area over perimeter [-]",
  min: 1e4,
  max: 1e11,
  source: "McAdams 1954; Incropera eqs. 9.30, 9.31",
};

/**
 * Mean Nusselt number [-] of a horizontal plate whose film moves away freely (warm face up, cold face down):
 * Nu = 0.54 Ra^(1/4) to Ra = 1e7, 0.15 Ra^(1/3) above. McAdams, Heat Transmission, 3rd ed. (1954); Incropera
 * eqs. 9.30, 9.31.
 * @param rayleigh by area over perimeter, at film temperature [-]
 * @example nusseltMcAdamsPlateAssisted(5.54 * 3.21e8) // 181.73
 */
export function nusseltMcAdamsPlateAssisted(rayleigh: number): number {
  requireNotNegative("rayleigh", rayleigh, "");
  return rayleigh <= 1e7 ? 0.54 * rayleigh ** 0.25 : 0.15 * rayleigh ** (1 / 3);
}

/** Published range of {@link nusseltMcAdamsPlateOpposed}. */
export const RANGE_MCADAMS_PLATE_OPPOSED: ValidityRange = {
  quantity: "Rayleigh number by area over perimeter [-]",
  min: 1e5,
  max: 1e10,
  source: "McAdams 1954; Incropera eq. 9.32",
};

/**
 * Mean Nusselt number [-] of a horizontal plate whose film is held against it (warm face down, cold face up):
 * Nu = 0.27 Ra^(1/4). McAdams, Heat Transmission, 3rd ed. (1954); Incropera eq. 9.32.
 * @param rayleigh by area over perimeter, at film temperature [-]
 * @example nusseltMcAdamsPlateOpposed(5.54 * 3.21e8) // 55.446
 */
export function nusseltMcAdamsPlateOpposed(rayleigh: number): number {
  requireNotNegative("rayleigh", rayleigh, "");
  return 0.27 * rayleigh ** 0.25;
}

/**
 * Mean Nusselt number [-] of a horizontal plate whose film is held against it (warm face down, cold face up):
 * Nu = 0.6 (Ra f1)^(1/5), f1 = [1 + (0.492/Pr)^(9/16)]^(-16/9). What is held can leave over the edges only, which makes the
 * exponent 1/5 and a quarter less than {@link nusseltMcAdamsPlateOpposed} on a surface of a metre. VDI Heat Atlas, 2nd ed.
 * (2010), for 1e3 < Ra f1 < 1e10 (from memory); Radziemska and Lewandowski, Applied Energy 68 (2001) 347-366, found 0.52 Ra^(1/5) in air, 7 % more.
 * @param rayleigh by area over perimeter, at film temperature [-]
 * @param prandtl [-]
 * @example nusseltVdiPlateOpposed(5.54 * 3.21e8, 5.54) // 39.169
 */
export function nusseltVdiPlateOpposed(rayleigh: number, prandtl: number): number {
  check(rayleigh, prandtl);
  const f1 = (1 + (0.492 / prandtl) ** (9 / 16)) ** (-16 / 9);
  return 0.6 * (rayleigh * f1) ** 0.2;
}

/** Published range of {@link nusseltChurchillSphere}. */
export const RANGE_CHURCHILL_SPHERE: ValidityRange = {
  quantity: "Rayleigh number by diameter [-]",
  min: 0,
  max: 1e13,
  source: "Churchill, in Heat Exchanger Design Handbook (1983)",
};

/**
 * Mean Nusselt number [-] of free convection at an isothermal sphere, with f = 1 + (0.469/Pr)^(9/16):
 * Nu = 2 + 0.589 Ra^(1/4) / f^(4/9) (1 + 7.44e-8 Ra / f^(16/9))^(1/12).
 * Churchill, Free convection around immersed bodies, in Heat Exchanger Design Handbook, Hemisphere (1983).
 * @param rayleigh by diameter, at film temperature [-]
 * @param prandtl [-]
 * @example nusseltChurchillSphere(0.7e7, 0.7) // 25.671
 */
export function nusseltChurchillSphere(rayleigh: number, prandtl: number): number {
  check(rayleigh, prandtl);
  const f = 1 + (0.469 / prandtl) ** (9 / 16);
  return (
    2 + ((0.589 * rayleigh ** 0.25) / f ** (4 / 9)) * (1 + (7.44e-8 * rayleigh) / f ** (16 / 9)) ** (1 / 12)
  );
}

function check(rayleigh: number, prandtl: number): void {
  requireNotNegative("rayleigh", rayleigh, "");
  requirePositive("prandtl", prandtl, "");
}
