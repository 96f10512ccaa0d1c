import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";
import { latentHeatVaporisationWagnerPruss, RANGE_WAGNER_PRUSS } from "./saturated-water.js";

/** [kg/mol] of water (IAPWS). */
const MOLAR_MASS_WATER = 18.015268e-3;

/**
 * [J/kg] heat of fusion at 0 °C: enthalpy of ice at the triple point -333.444 kJ/kg, of the liquid 0 (IAPWS R10-06,
 * Table 6; sources span 333.4 to 333.6 kJ/kg).
 */
export const LATENT_HEAT_FUSION = 333.4e3;
/** [kg/m3] of ice at 0 °C (IAPWS R10-06, Table 6: 916.709 at the triple point). */
export const DENSITY_ICE = 916.7;

const RANGE_VAPORISATION_MURPHY_KOOP: ValidityRange = {
  quantity: "temperature of supercooled water [K]",
  min: 236,
  max: 273.16,
  source: "Murphy & Koop 2005",
};
const RANGE_ICE_YEN: ValidityRange = {
  quantity: "temperature of ice [K]",
  min: 90,
  max: 273.16,
  source: "Yen 1981; lower end is project judgement",
};

/**
 * [J/kg] heat of vaporisation, the one used throughout: `temp` [K] 236 to 647.096, Murphy & Koop for supercooled water,
 * Wagner & Pruss above the triple point.
 */
export function latentHeatVaporisation(temp: number): number {
  return temp < RANGE_WAGNER_PRUSS.min
    ? latentHeatVaporisationMurphyKoop(temp)
    : latentHeatVaporisationWagnerPruss(temp);
}

/**
 * [J/kg] heat of vaporisation of supercooled water, `temp` [K] 236 to 273.16: 56579 - 42.212 T + exp(0.1149 (281.6 - T))
 * J/mol. Murphy & Koop, Q. J. R. Meteorol. Soc. 131 (2005) 1539, eq. (9), doi:10.1256/qj.04.94.
 */
export function latentHeatVaporisationMurphyKoop(temp: number): number {
  requireInRange("temp", temp, RANGE_VAPORISATION_MURPHY_KOOP);
  return (56579 - 42.212 * temp + Math.exp(0.1149 * (281.6 - temp))) / MOLAR_MASS_WATER;
}

/**
 * [J/(kg K)] specific heat capacity of ice: 152.5 + 7.122 T, `temp` [K] up to 273.16.
 * Yen, CRREL Report 81-10 (1981); coefficients from memory.
 * @example heatCapacityIceYen(273.15) // 2097.9
 */
export function heatCapacityIceYen(temp: number): number {
  requireInRange("temp", temp, RANGE_ICE_YEN);
  return 152.5 + 7.122 * temp;
}
