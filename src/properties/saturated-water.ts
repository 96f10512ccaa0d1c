import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";

// Wagner & Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783, released as IAPWS SR1-86(1992): saturation line of ordinary
// water, triple to critical point. Coefficients in the paper's letters.

export const RANGE_WAGNER_PRUSS: ValidityRange = {
  quantity: "temperature of water [K]",
  min: 273.16,
  max: 647.096,
  source: "IAPWS SR1-86(1992)",
};

type Term = readonly [coefficient: number, exponent: number];

const TEMP_CRITICAL = 647.096;
const PRESSURE_CRITICAL = 22.064e6;
const DENSITY_CRITICAL = 322;
const A: readonly Term[] = [
  [-7.85951783, 1],
  [1.84408259, 1.5],
  [-11.7866497, 3],
  [22.6807411, 3.5],
  [-15.9618719, 4],
  [1.80122502, 7.5],
];
const B: readonly Term[] = [
  [1.99274064, 1 / 3],
  [1.09965342, 2 / 3],
  [-0.510839303, 5 / 3],
  [-1.75493479, 16 / 3],
  [-45.5170352, 43 / 3],
  [-6.7469445e5, 110 / 3],
];
const C: readonly Term[] = [
  [-2.0315024, 2 / 6],
  [-2.6830294, 4 / 6],
  [-5.38626492, 8 / 6],
  [-17.2991605, 18 / 6],
  [-44.7586581, 37 / 6],
  [-63.9201063, 71 / 6],
];

/**
 * [Pa] vapour pressure of liquid water, `temp` [K] 273.16 to 647.096: ln(p/pc) = (Tc/T) sum a_i (1 - T/Tc)^n_i
 * (SR1-86 eq. 1).
 * @example saturationPressureLiquidWagnerPruss(373.1243) // 101325
 */
export function saturationPressureLiquidWagnerPruss(temp: number): number {
  requireInRange("temp", temp, RANGE_WAGNER_PRUSS);
  return PRESSURE_CRITICAL * Math.exp((TEMP_CRITICAL / temp) * sum(A, 1 - temp / TEMP_CRITICAL));
}

/**
 * [kg/m3] of saturated liquid water, `temp` [K] 273.16 to 647.096 (SR1-86 eq. 2).
 * @example densityWaterWagnerPruss(373.1243) // 958.365
 */
export function densityWaterWagnerPruss(temp: number): number {
  requireInRange("temp", temp, RANGE_WAGNER_PRUSS);
  return DENSITY_CRITICAL * (1 + sum(B, 1 - temp / TEMP_CRITICAL));
}

/**
 * [kg/m3] of saturated steam, `temp` [K] 273.16 to 647.096 (SR1-86 eq. 3).
 * @example densitySteamWagnerPruss(373.1243) // 0.597586
 */
export function densitySteamWagnerPruss(temp: number): number {
  requireInRange("temp", temp, RANGE_WAGNER_PRUSS);
  return DENSITY_CRITICAL * Math.exp(sum(C, 1 - temp / TEMP_CRITICAL));
}

/**
 * [J/kg] heat of vaporisation by Clapeyron on the equations above: L = T (1/rho'' - 1/rho') dp/dT; `temp` [K] 273.16 up
 * to just under 647.096.
 * @example latentHeatVaporisationWagnerPruss(275) // 2496.3e3 (IAPWS-95: 2496.5e3)
 */
export function latentHeatVaporisationWagnerPruss(temp: number): number {
  const pressure = saturationPressureLiquidWagnerPruss(temp);
  const tau = 1 - temp / TEMP_CRITICAL;
  const slope = A.reduce((total, [a, n]) => total + a * n * tau ** (n - 1), 0);
  const slopeTimesTemp = -pressure * (Math.log(pressure / PRESSURE_CRITICAL) + slope);
  return slopeTimesTemp * (1 / densitySteamWagnerPruss(temp) - 1 / densityWaterWagnerPruss(temp));
}

function sum(terms: readonly Term[], tau: number): number {
  return terms.reduce((total, [coefficient, exponent]) => total + coefficient * tau ** exponent, 0);
}
