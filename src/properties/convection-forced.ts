import { requireNotNegative, requirePositive } from "../units/index.js";
import type { ValidityRange } from "./range.js";

// "Incropera" is Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, 6th ed., Wiley
// (2007); its equation and table numbers are from memory. Examples are numbered as in the shorter
// Introduction to Heat Transfer, 6th ed. (2011).

/** Published range of {@link nusseltChurchillBernsteinCylinder}. */
export const RANGE_CHURCHILL_BERNSTEIN_CYLINDER: ValidityRange = {
  quantity: "Reynolds times Prandtl number by diameter [-]",
  min: 0.2,
  max: Number.POSITIVE_INFINITY,
  source: "Churchill and Bernstein 1977; Incropera eq. 7.54",
};

/**
 * Mean Nusselt number [-] of a cylinder in cross flow, properties at film temperature:
 * Nu = 0.3 + 0.62 Re^(1/2) Pr^(1/3) / [1 + (0.4/Pr)^(2/3)]^(1/4) [1 + (Re/282000)^(5/8)]^(4/5).
 * Churchill and Bernstein, J. Heat Transfer 99 (1977) 300-306, doi:10.1115/1.3450685; Incropera eq. 7.54.
 * @param reynolds by diameter [-]
 * @param prandtl [-]
 * @example nusseltChurchillBernsteinCylinder(6071, 0.7) // 40.6 (Incropera Example 7.3)
 */
export function nusseltChurchillBernsteinCylinder(reynolds: number, prandtl: number): number {
  check(reynolds, prandtl);
  const laminar =
    (0.62 * Math.sqrt(reynolds) * Math.cbrt(prandtl)) / (1 + (0.4 / prandtl) ** (2 / 3)) ** 0.25;
  return 0.3 + laminar * (1 + (reynolds / 282_000) ** 0.625) ** 0.8;
}

/** One row of a table Nu ~ c Re^m, used below `below`. */
interface PowerRow {
  readonly below: number;
  readonly c: number;
  readonly m: number;
}

const ZUKAUSKAS: readonly PowerRow[] = [
  { below: 40, c: 0.75, m: 0.4 },
  { below: 1e3, c: 0.51, m: 0.5 },
  { below: 2e5, c: 0.26, m: 0.6 },
  { below: Number.POSITIVE_INFINITY, c: 0.076, m: 0.7 },
];

/**
 * Mean Nusselt number [-] of a cylinder in cross flow: Nu = c Re^m Pr^n (Pr/Prs)^(1/4), n = 0.37 for Pr <=
 * 10, else 0.36. Properties at free-stream temperature, Prs at the surface. Made for Re from 1 to 1e6;
 * outside it the nearest row serves. Zukauskas, Advances in Heat Transfer 8 (1972) 93-160; Incropera eq. 7.53, Table 7.4.
 * @example nusseltZukauskasCylinder(7992, 0.707, 0.69) // 50.5 (Incropera Example 7.3)
 */
export function nusseltZukauskasCylinder(
  reynolds: number,
  prandtl: number,
  prandtlSurface: number = prandtl,
): number {
  check(reynolds, prandtl);
  requirePositive("prandtlSurface", prandtlSurface, "");
  const { c, m } = rowOf(ZUKAUSKAS, reynolds);
  return c * reynolds ** m * prandtl ** (prandtl <= 10 ? 0.37 : 0.36) * (prandtl / prandtlSurface) ** 0.25;
}

/** Constants from memory of Incropera Table 7.2. */
const HILPERT: readonly PowerRow[] = [
  { below: 4, c: 0.989, m: 0.33 },
  { below: 40, c: 0.911, m: 0.385 },
  { below: 4e3, c: 0.683, m: 0.466 },
  { below: 4e4, c: 0.193, m: 0.618 },
  { below: Number.POSITIVE_INFINITY, c: 0.027, m: 0.805 },
];

/**
 * Mean Nusselt number [-] of a cylinder in cross flow, properties at film temperature: Nu = c Re^m Pr^(1/3).
 * Made for Re from 0.4 to 4e5; outside it the nearest row serves. Hilpert, Forsch. Geb. Ingenieurwes. 4 (1933) 215; Incropera eq.
 * 7.52.
 * @example nusseltHilpertCylinder(6071, 0.7) // 37.3
 */
export function nusseltHilpertCylinder(reynolds: number, prandtl: number): number {
  check(reynolds, prandtl);
  const { c, m } = rowOf(HILPERT, reynolds);
  return c * reynolds ** m * Math.cbrt(prandtl);
}

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
 * Mean Nusselt number [-] of an isothermal plate in laminar parallel flow, all Prandtl numbers:
 * Nu = 0.6774 Re^(1/2) Pr^(1/3) / [1 + (0.0468/Pr)^(2/3)]^(1/4).
 * Churchill and Ozoe, J. Heat Transfer 95 (1973) 416-419, doi:10.1115/1.3450078.
 * @example nusseltChurchillOzoeLaminarPlate(1e5, 0.7) // 183.09
 */
export function nusseltChurchillOzoeLaminarPlate(reynolds: number, prandtl: number): number {
  check(reynolds, prandtl);
  return (0.6774 * Math.sqrt(reynolds) * Math.cbrt(prandtl)) / (1 + (0.0468 / prandtl) ** (2 / 3)) ** 0.25;
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

/** Published range of {@link nusseltPlate}. */
export const RANGE_PLATE: ValidityRange = {
  quantity: "Reynolds number by length [-]",
  min: 0,
  max: 1e8,
  source: "Incropera eqs. 7.30 (Pr >= 0.6), 7.38 (0.6 <= Pr <= 60)",
};

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

function rowOf(rows: readonly PowerRow[], reynolds: number): PowerRow {
  return rows.find((r) => reynolds < r.below)!;
}

function check(reynolds: number, prandtl: number): void {
  requireNotNegative("reynolds", reynolds, "");
  requirePositive("prandtl", prandtl, "");
}
