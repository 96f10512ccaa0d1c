import type { Caution, Fuel } from "../aircraft/index.js";
import { type Finding, finding } from "../findings/index.js";
import {
  DISTILLATION_SLOPE_AVGAS,
  DISTILLATION_SLOPE_MOGAS,
  FLAMMABILITY_GASOLINE,
  type FuelVolatility,
  PRESSURE_STANDARD,
  RANGE_TEMP_FUEL_AP42,
  startingMixture,
  tempOfFuelVapourFraction,
} from "../properties/index.js";
import { celsiusFromKelvin, kelvinFromCelsius } from "../units/index.js";
import { START_CAUTIONS } from "./cautions.js";

/** [K] of the warm start that fuel is compared with. */
export const TEMP_WARM_START = kelvinFromCelsius(15);
/**
 * [1] most fuel to be offered over that of a warm start: handbooks of one maker span 1 to 2 strokes warm or preheated to
 * 4 to 8 cold (Cessna TR182, 172RG, 172N), a factor of four; project judgement.
 */
export const OFFERED_MOST = 4;

export interface FuelStart {
  /** [1] vapour in saturated air at the intake. */
  readonly vapourFraction: number;
  /** [1] fuel to be offered over that of a start at {@link TEMP_WARM_START}. */
  readonly offeredRatio: number;
  /** [K] intake below which even saturated air is too lean. */
  readonly tempLeanLimit: number;
  readonly text: Finding;
  readonly cautions: readonly Caution[];
}

export function fuelVolatility({ grade, reid_kpa }: Fuel): FuelVolatility {
  return {
    reidVapourPressure: 1000 * reid_kpa,
    distillationSlope: grade === "avgas" ? DISTILLATION_SLOPE_AVGAS : DISTILLATION_SLOPE_MOGAS,
  };
}

/**
 * Vapour and priming at an intake of `tempIntake` [K]: the coldest head, on whose port the fuel lies. Equilibrium over
 * liquid fuel: real vapour in the few tenths of a second of an intake stroke is less. At sea level: higher up the same vapour
 * is a larger share, so this is the cautious side.
 */
export function fuelStart(fuel: Fuel, tempIntake: number): FuelStart {
  const volatility = fuelVolatility(fuel);
  const { vapourFraction, offeredRatio, status } = startingMixture(
    volatility,
    clampedFuel(tempIntake),
    PRESSURE_STANDARD,
    TEMP_WARM_START,
  );
  return {
    vapourFraction,
    offeredRatio,
    tempLeanLimit: tempOfFuelVapourFraction(volatility, FLAMMABILITY_GASOLINE.lean, PRESSURE_STANDARD),
    text: primingFinding(tempIntake, offeredRatio, status),
    cautions: [
      START_CAUTIONS.primeByHandbook,
      START_CAUTIONS.intakeFire,
      START_CAUTIONS.overPriming,
      START_CAUTIONS.frostedPlugs,
    ],
  };
}

/** [K] within the range of the vapour pressure. */
export function clampedFuel(temp: number): number {
  return Math.min(RANGE_TEMP_FUEL_AP42.max, Math.max(RANGE_TEMP_FUEL_AP42.min, temp));
}

function primingFinding(tempIntake: number, ratio: number, status: "ignitable" | "too-lean"): Finding {
  const at = { temp_c: celsiusFromKelvin(tempIntake) };
  if (status === "too-lean") return finding("fuel-too-lean", at);
  if (ratio < 1.15) return finding("fuel-as-warm", at);
  return finding("fuel-more", { ...at, ratio, too_much: ratio > OFFERED_MOST });
}
