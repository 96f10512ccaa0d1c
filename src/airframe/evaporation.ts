import {
  densityAir,
  diffusivityAir,
  diffusivityVapourMontgomery,
  evaporationFluxAshraePool,
  evaporationShareMeasured,
  GAS_CONSTANT_VAPOUR,
  heatCapacityAir,
  lewisNumber,
  massTransferCoefficientChiltonColburn,
  RANGE_DIFFUSIVITY_MONTGOMERY,
} from "../properties/index.js";
import type { FilmConditions } from "./air-film.js";

/** [m2/s] diffusivity of vapour at film conditions; below -40 °C, where Montgomery's form ends and little vapour is left, that of -40 °C. */
export function diffusivityVapour({ tempFilm, pressure }: FilmConditions): number {
  return diffusivityVapourMontgomery(Math.max(tempFilm, RANGE_DIFFUSIVITY_MONTGOMERY.min), pressure);
}

/**
 * [kg/(m2 s Pa)] vapour moved per pascal of vapour pressure difference for a heat-transfer coefficient of 1 W/(m2 K), by
 * the Chilton-Colburn analogy: 1 / (rho cp Le^(2/3) Rv T). See massTransferCoefficientChiltonColburn for where it holds.
 * @example vapourPerHeatTransfer({ tempFilm: 273.15, pressure: 101325 }) // 6.95e-9
 */
export function vapourPerHeatTransfer(conditions: FilmConditions): number {
  const { tempFilm, pressure } = conditions;
  const lewis = lewisNumber(diffusivityAir(tempFilm, pressure), diffusivityVapour(conditions));
  const perHeat = massTransferCoefficientChiltonColburn(
    1,
    densityAir(tempFilm, pressure),
    heatCapacityAir(tempFilm),
    lewis,
  );
  return perHeat / (GAS_CONSTANT_VAPOUR * tempFilm);
}

/** Least log-sd of an evaporation coefficient: mean deviation 18.2 % of the best correlation, Shah, HVAC&R Research 8(1) (2002) 125-131. */
const LEAST_EVAPORATION_LOG_SD = 0.182;

/** An evaporation coefficient [kg/(m2 s Pa)] and the standard deviation of its logarithm. */
export interface EvaporationBand {
  readonly middle: number;
  readonly logSd: number;
}

/**
 * Evaporation coefficient between two rivals, the heat-mass analogy (`analogy` [kg/(m2 s Pa)]) and what was measured over a
 * pool at `windSpeed` [m/s] and `latentHeat` [J/kg]: the geometric mean, each rival one standard deviation away. In slow air
 * published equations differ by up to a factor of 4 (ASHRAE Trans. 101(1) 1995, paper 3841), these two by up to 4 over a film
 * colder than still air. Over a warm pool of 10 m the analogy gives 0.69 of the ASHRAE equation in still air, where 0.72 was
 * measured, but 0.47 at 2.2 m/s, where it was 0.83.
 */
export function evaporationBetween(analogy: number, windSpeed: number, latentHeat: number): EvaporationBand {
  const pool = evaporationShareMeasured(windSpeed) * evaporationFluxAshraePool(1, 0, windSpeed, latentHeat);
  return {
    middle: Math.sqrt(analogy * pool),
    logSd: Math.max(LEAST_EVAPORATION_LOG_SD, 0.5 * Math.abs(Math.log(analogy / pool))),
  };
}
