import { requireInside, requireNotNegative, requirePositive } from "../units/index.js";
import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";

export const RANGE_DIFFUSIVITY_MONTGOMERY: ValidityRange = {
  quantity: "air temperature [K]",
  min: 233.15,
  max: 373.15,
  source: "Montgomery 1947; the ends are project judgement (sources agree within 10 % over it)",
};

/** [J/(kg K)] gas constant of water vapour (IAPWS R6-95). */
export const GAS_CONSTANT_VAPOUR = 461.51805;

/**
 * [m2/s] diffusivity of water vapour in air: 2.26e-5 (T/273.15)^1.81 (101325/p), `temp` [K], `pressure` [Pa].
 * Montgomery, J. Meteorol. 4 (1947) 193-196, form and constant read in secondary sources. Sources differ by up to 10 %.
 * @example diffusivityVapourMontgomery(298.15, 101325) // 2.648e-5
 */
export function diffusivityVapourMontgomery(temp: number, pressure: number): number {
  requireInRange("temp", temp, RANGE_DIFFUSIVITY_MONTGOMERY);
  requirePositive("pressure", pressure, "Pa");
  return 2.26e-5 * (temp / 273.15) ** 1.81 * (101325 / pressure);
}

/** [1] Le = alpha/D: thermal diffusivity of air over diffusivity of vapour [m2/s]; about 0.84 at 0 °C. */
export function lewisNumber(thermalDiffusivity: number, vapourDiffusivity: number): number {
  requirePositive("thermalDiffusivity", thermalDiffusivity, "m2/s");
  requirePositive("vapourDiffusivity", vapourDiffusivity, "m2/s");
  return thermalDiffusivity / vapourDiffusivity;
}

/**
 * [m/s] mass-transfer coefficient from a heat-transfer coefficient by the Chilton-Colburn analogy:
 * hm = h/(rho cp Le^(2/3)); `coefficient` [W/(m2 K)], `density` [kg/m3] and `heatCapacity` [J/(kg K)] of the air.
 * Good in turbulent flow, above 2.5 m/s or with more than 15 K difference (Shah 1981); a factor of several off in still
 * air. Incropera et al., Fundamentals of Heat and Mass Transfer, eq. (6.60), from memory.
 */
export function massTransferCoefficientChiltonColburn(
  coefficient: number,
  density: number,
  heatCapacity: number,
  lewis: number,
): number {
  requireNotNegative("coefficient", coefficient, "W/(m2 K)");
  requirePositive("density", density, "kg/m3");
  requirePositive("heatCapacity", heatCapacity, "J/(kg K)");
  requirePositive("lewis", lewis, "[1]");
  return coefficient / (density * heatCapacity * lewis ** (2 / 3));
}

/**
 * [kg/(m2 s)] evaporation from a wet level surface, negative when it condenses: W = (pw - pa)(0.089 + 0.0782 V)/Y with
 * pressures in kPa and Y in kJ/kg, which is the same number with Pa and J/kg. `pressureSurface` [Pa] saturated at the
 * water, `pressureVapour` [Pa] of the air, `windSpeed` [m/s] over it, `latentHeat` [J/kg].
 * ASHRAE Handbook, HVAC Applications, pool evaporation equation. Measured evaporation in slow air differs from such
 * equations by up to a factor of 4 (ASHRAE Trans. 101(1) 1995, paper 3841): take it as good to a factor of 2; see
 * {@link evaporationShareMeasured}.
 */
export function evaporationFluxAshraePool(
  pressureSurface: number,
  pressureVapour: number,
  windSpeed: number,
  latentHeat: number,
): number {
  requireNotNegative("pressureSurface", pressureSurface, "Pa");
  requireNotNegative("pressureVapour", pressureVapour, "Pa");
  requireNotNegative("windSpeed", windSpeed, "m/s");
  requireInside("latentHeat", latentHeat, 1.5e6, 3e6, "J/kg");
  return ((pressureSurface - pressureVapour) * (0.089 + 0.0782 * windSpeed)) / latentHeat;
}

/** [m/s] wind over the pool of {@link evaporationShareMeasured}. */
const WIND_MEASURED = 2.2;

/**
 * [-] measured evaporation over that of {@link evaporationFluxAshraePool}: 0.72 in still air, 0.83 at 2.2 m/s (0.82 to 0.84),
 * linear between, 0.83 in more wind. Smith, Löf and Jones, Solar Energy 53 (1994) 3-7: an outdoor pool that nobody bathes in.
 * @example evaporationShareMeasured(1.1) // 0.775
 */
export function evaporationShareMeasured(windSpeed: number): number {
  requireNotNegative("windSpeed", windSpeed, "m/s");
  return 0.72 + 0.11 * Math.min(1, windSpeed / WIND_MEASURED);
}
