import {
  densityAir,
  densityOil,
  diffusivityAir,
  diffusivityVapourMontgomery,
  GAS_CONSTANT_VAPOUR,
  heatCapacityAir,
  kinematicViscosityOil,
  lewisNumber,
  massTransferCoefficientChiltonColburn,
  type Oil,
  PRESSURE_STANDARD,
} from "../properties/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import type { CaseGeometry } from "./case-geometry.js";

// How easily water passes between oil, air and walls inside a case, as conductances [kg/(s Pa)] of vapour pressure.

/** [W/(m2 K)] still air between warm oil and cold walls; project judgement. */
const COEFFICIENT_INSIDE = 3;
const TEMP_FREEZING = kelvinFromCelsius(0);
/** [m/s] */
const MASS_COEFFICIENT = massTransferCoefficientChiltonColburn(
  COEFFICIENT_INSIDE,
  densityAir(TEMP_FREEZING),
  heatCapacityAir(TEMP_FREEZING),
  lewisNumber(diffusivityAir(TEMP_FREEZING), diffusivityVapourMontgomery(TEMP_FREEZING, PRESSURE_STANDARD)),
);

const TEMP_WARM_OIL = kelvinFromCelsius(50);
/**
 * [m/s] water through stirring-free oil at 50 °C: analogy with 50 W/(m2 K) of free convection at D = 1e-10 m2/s. Free
 * convection goes as D^(3/4) nu^(-1/4) and D as 1/nu, so it falls as 1/nu. Project judgement, a factor of three either
 * way; it is by far the largest resistance on the way out of the oil.
 */
const OIL_COEFFICIENT_WARM = 3e-7;
/**
 * Water that engine oil dissolves [kg/kg]: 500 ppm at 20 °C, twice as much every 25 K. Trade texts have 200 to 600 ppm
 * dissolved unnoticed and 400 ppm in fresh motor oil; the rise with temperature is from memory. More is emulsion.
 */
const SOLUBILITY_20 = 500e-6;
const SOLUBILITY_DOUBLING = 25;

/** [kg/kg] */
export function waterSolubilityOil(temp: number): number {
  return SOLUBILITY_20 * 2 ** ((temp - kelvinFromCelsius(20)) / SOLUBILITY_DOUBLING);
}

/** [1] water activity of oil that holds `water` [kg/kg]: 1 once it is emulsified. */
export function waterActivityOil(water: number, temp: number): number {
  return Math.min(1, water / waterSolubilityOil(temp));
}

/** [kg/(s Pa)] from the air of the case at `tempAir` [K] to a wall of `area` [m2]. */
export function wallConductance(area: number, tempAir: number): number {
  return (MASS_COEFFICIENT * area) / (GAS_CONSTANT_VAPOUR * tempAir);
}

/**
 * [kg/(s Pa)] from the body of the oil at `tempOil` [K] to the air of the case at `tempAir` [K].
 * @param saturated [Pa] vapour pressure of liquid water at `tempOil`
 */
export function oilConductance(
  { oil, oilArea }: CaseGeometry,
  tempOil: number,
  saturated: number,
  tempAir: number,
): number {
  const air = wallConductance(oilArea, tempAir);
  const dissolved = densityOil(oil, tempOil) * waterSolubilityOil(tempOil);
  const liquid = (oilCoefficient(oil, tempOil) * oilArea * dissolved) / saturated;
  return 1 / (1 / air + 1 / liquid);
}

function oilCoefficient(oil: Oil, temp: number): number {
  const warm = warmViscosities.get(oil) ?? kinematicViscosityOil(oil, TEMP_WARM_OIL);
  warmViscosities.set(oil, warm);
  return OIL_COEFFICIENT_WARM * (warm / kinematicViscosityOil(oil, temp));
}

const warmViscosities = new WeakMap<Oil, number>();
