import type { Caution } from "../aircraft/index.js";
import { type Finding, finding } from "../findings/index.js";
import {
  crankingLimitOil,
  dynamicViscosityOil,
  isBelowPourPoint,
  type Oil,
  type OilLimit,
  pumpingLimitOil,
} from "../properties/index.js";
import { celsiusFromKelvin, requireInside } from "../units/index.js";
import { START_CAUTIONS } from "./cautions.js";
import { CRANKING_REFERENCE_OIL } from "./cranking-drag.js";
import { clampedPart } from "./oil-table.js";

/** Whether an oil at one temperature flows to the pump and lets itself be cranked. */
export interface OilFitness {
  /** [Pa s] low shear; an extrapolation when gelled. */
  readonly viscosity: number;
  readonly pumpable: boolean;
  readonly crankable: boolean;
  /** Below the pour point: wax or gel, thicker than its viscosity line says, and it may not flow at all. */
  readonly gelled: boolean;
  readonly pumpingLimit: OilLimit;
  readonly crankingLimit: OilLimit;
  readonly text: Finding;
  readonly cautions: readonly Caution[];
}

/**
 * Beyond the ends of the oil tables the viscosity is that of the end.
 * @param temp [K] of the oil, for pumping in the sump, for cranking in the films
 */
export function oilFitness(oil: Oil, temp: number): OilFitness {
  requireInside("temp", temp, 180, 600, "K");
  const pumpingLimit = pumpingLimitOil(oil);
  const crankingLimit = crankingLimitOil(oil);
  const fit = {
    viscosity: dynamicViscosityOil(oil, clampedPart(temp)),
    pumpable: temp >= pumpingLimit.temp,
    crankable: temp >= crankingLimit.temp,
    gelled: isBelowPourPoint(oil, temp),
    pumpingLimit,
    crankingLimit,
  };
  return {
    ...fit,
    text: findingOf(oil, temp, fit),
    cautions: fit.pumpable && fit.crankable ? [] : [START_CAUTIONS.congealedOil],
  };
}

function findingOf(oil: Oil, temp: number, fit: Omit<OilFitness, "text" | "cautions">): Finding {
  const at = { oil: oil.name, temp_c: celsiusFromKelvin(temp) };
  if (fit.gelled) {
    return finding("oil-below-pour-point", { ...at, pour_point_c: celsiusFromKelvin(oil.pourPoint) });
  }
  if (!fit.pumpable) {
    return finding("oil-not-pumped", { ...at, limit_c: celsiusFromKelvin(fit.pumpingLimit.temp) });
  }
  if (!fit.crankable) {
    return finding("oil-too-stiff", { ...at, limit_c: celsiusFromKelvin(fit.crankingLimit.temp) });
  }
  return finding("oil-fit", at);
}

/** When oil pressure may be expected on the gauge: a warning range, never a promise. */
export interface OilPressureDelay {
  /** [s] */
  readonly least: number;
  readonly usual: number;
  /** [s] Infinity when the oil may not reach the pump. */
  readonly most: number;
}

/** [s] on a warm day, oil of 0.11 Pa s, from idle on; common practice, no published source. */
const DELAY_WARM = 4;
/** The range reaches a factor of two both ways; project judgement. */
const DELAY_FACTOR = 2;
const VISCOSITY_WARM = dynamicViscosityOil(CRANKING_REFERENCE_OIL, 299.82);

/**
 * Time from start to oil pressure [s]: 4 s (mu/0.11 Pa s)^0.5, and a factor of two either way. Exponent and level are
 * project judgement between 4 s on a warm day and more than 23 s for the thickest of six oils in a 2.0 l engine at -20 to
 * -30 °C (SAE abstract, second-hand). Without pressure within 10 s the engine is stopped.
 * @param temp [K] of the oil in sump and lines
 */
export function oilPressureDelay(oil: Oil, temp: number): OilPressureDelay {
  const { viscosity, pumpable } = oilFitness(oil, temp);
  const usual = DELAY_WARM * Math.sqrt(viscosity / VISCOSITY_WARM);
  return {
    least: usual / DELAY_FACTOR,
    usual,
    most: pumpable ? usual * DELAY_FACTOR : Number.POSITIVE_INFINITY,
  };
}
