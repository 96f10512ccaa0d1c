import type { Caution, Fuel } from "../aircraft/index.js";
import {
  DISTILLATION_SLOPE_AVGAS,
  DISTILLATION_SLOPE_MOGAS,
  FLAMMABILITY_GASOLINE,
  type FuelVolatility,
  RANGE_TEMP_FUEL_AP42,
  startingMixture,
  tempOfFuelVapourFraction,
} from "../properties/index.js";
import { celsiusFromKelvin, kelvinFromCelsius } from "../units/index.js";
import { START_CAUTIONS } from "./cautions.js";

/** [Pa] sea level: higher up the same vapour is a larger share, so this is the cautious side. */
export const PRESSURE_INTAKE = 101325;
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
  /** "too-lean": no amount of priming helps; "hard": more fuel than primers give; "ignitable". */
  readonly status: "ignitable" | "hard" | "too-lean";
  /** [K] intake below which even saturated air is too lean. */
  readonly tempLeanLimit: number;
  readonly text: string;
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
 * liquid fuel: real vapour in the few tenths of a second of an intake stroke is less.
 */
export function fuelStart(fuel: Fuel, tempIntake: number): FuelStart {
  const volatility = fuelVolatility(fuel);
  const { vapourFraction, offeredRatio, status } = startingMixture(
    volatility,
    clampedFuel(tempIntake),
    PRESSURE_INTAKE,
    TEMP_WARM_START,
  );
  const hard = status === "ignitable" && offeredRatio > OFFERED_MOST;
  return {
    vapourFraction,
    offeredRatio,
    status: hard ? "hard" : status,
    tempLeanLimit: tempOfFuelVapourFraction(volatility, FLAMMABILITY_GASOLINE.lean, PRESSURE_INTAKE),
    text: primingText(tempIntake, offeredRatio, status),
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

function primingText(tempIntake: number, ratio: number, status: "ignitable" | "too-lean"): string {
  const at = `At ${celsiusFromKelvin(tempIntake).toFixed(0)} °C`;
  if (status === "too-lean") return `${at} no priming gives a mixture that burns: warm cylinders and intake.`;
  if (ratio < 1.15) return `${at} the fuel evaporates as on a warm day: prime by the handbook.`;
  const amount = `${at} about ${ratio.toFixed(1)} times as much fuel must be offered as at 15 °C`;
  return ratio > OFFERED_MOST
    ? `${amount}, more than primers are made for: warm cylinders and intake first.`
    : `${amount} for the same vapour; how to prime is the handbook's to say.`;
}
