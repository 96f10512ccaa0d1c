import {
  celsiusFromFahrenheit,
  celsiusFromKelvin,
  fahrenheitFromCelsius,
  kelvinFromCelsius,
  PASCAL_OF_PSI,
} from "../units/index.js";
import { FLAMMABILITY_GASOLINE, type FuelVolatility } from "./fuel.js";
import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";

// Vapour over liquid gasoline in equilibrium, after AP-42: US Environmental Protection Agency, Compilation of Air
// Pollutant Emission Factors, chapter 7.1. Gasoline vapour lights from any spark down to its flash point near -46 °C:
// what follows is about whether an engine can start, never about whether vapour is safe.

const RANGE_REID_VAPOUR_PRESSURE: ValidityRange = {
  quantity: "Reid vapour pressure [Pa], 3 to 15 psi",
  min: 3 * PASCAL_OF_PSI,
  max: 15 * PASCAL_OF_PSI,
  source: "project judgement around AP-42 Table 7.1-2 (7 to 13 psi) and ASTM D910 (5.5 to 7 psi)",
};
const RANGE_DISTILLATION_SLOPE: ValidityRange = {
  quantity: "distillation slope [°F per volume %]",
  min: 1,
  max: 4,
  source: "project judgement around AP-42 ch. 7.1 (2.0 to 3.5)",
};
export const RANGE_TEMP_FUEL_AP42: ValidityRange = {
  quantity: "fuel temperature [K]",
  min: kelvinFromCelsius(-60),
  max: kelvinFromCelsius(60),
  source: "AP-42 Table 7.1-2 runs from 40 to 100 °F; colder is a straight ln p over 1/T extrapolation",
};
const RANGE_PRESSURE_INTAKE: ValidityRange = {
  quantity: "air pressure [Pa]",
  min: 20000,
  max: 120000,
  source: "project judgement: aerodromes and flying altitudes",
};
/** °F to °R as AP-42 rounds it. */
const RANKINE_OF_ZERO_FAHRENHEIT = 459.6;

/** Offered fuel for a start, relative to a warm one. */
export interface StartingMixture {
  /** [1] fuel that must be offered over that of the warm start, for the same vapour; at least 1. */
  readonly offeredRatio: number;
  /** [1] most vapour the intake air can hold. */
  readonly vapourFraction: number;
  /** "too-lean": even air saturated with this fuel lies below the lean limit, so no priming helps; warm the intake. */
  readonly status: "ignitable" | "too-lean";
}

/**
 * [Pa] vapour pressure of gasoline at `temp` [K]: p = exp(A - B/(t + 459.6)) psi, t in °F, A = 15.64 - 1.854 sqrt(S) -
 * (0.8742 - 0.3280 sqrt(S)) ln R, B = 8742 - 1042 sqrt(S) - (1049 - 179.4 sqrt(S)) ln R, R in psi, S in °F/vol %.
 * AP-42 ch. 7.1 Figures 7.1-14b and 7.1-15. A missing Reid vapour pressure is refused: it decides a cold start.
 * @example
 * const mogas = { reidVapourPressure: 10 * PASCAL_OF_PSI, distillationSlope: 3 };
 * fuelVapourPressureAp42(mogas, kelvinFromCelsius(celsiusFromFahrenheit(60))) // 35.7e3: 5.2 psi in Table 7.1-2
 */
export function fuelVapourPressureAp42(volatility: FuelVolatility, temp: number): number {
  requireInRange("temp", temp, RANGE_TEMP_FUEL_AP42);
  const { a, b } = constants(volatility);
  const rankine = fahrenheitFromCelsius(celsiusFromKelvin(temp)) + RANKINE_OF_ZERO_FAHRENHEIT;
  return PASCAL_OF_PSI * Math.exp(a - b / rankine);
}

/** [1] volume fraction of vapour in air saturated over liquid fuel at `temp` [K] and `pressure` [Pa], at most 1. */
export function fuelVapourFraction(volatility: FuelVolatility, temp: number, pressure: number): number {
  requireInRange("pressure", pressure, RANGE_PRESSURE_INTAKE);
  return Math.min(1, fuelVapourPressureAp42(volatility, temp) / pressure);
}

/**
 * [K] temperature at which air at `pressure` [Pa] saturated over the fuel holds the volume fraction `fraction` [1]. With
 * the limits of {@link FLAMMABILITY_GASOLINE}: the coldest and warmest liquid whose vapour space can burn. May lie
 * outside the range of {@link fuelVapourPressureAp42}.
 * @example
 * const avgas = { reidVapourPressure: 7 * PASCAL_OF_PSI, distillationSlope: 2 };
 * tempOfFuelVapourFraction(avgas, FLAMMABILITY_GASOLINE.lean, 101325) // 230.4: -42.8 °C
 */
export function tempOfFuelVapourFraction(
  volatility: FuelVolatility,
  fraction: number,
  pressure: number,
): number {
  requireInRange("fraction", fraction, {
    quantity: "volume fraction [1]",
    min: 1e-4,
    max: 1,
    source: "by definition",
  });
  requireInRange("pressure", pressure, RANGE_PRESSURE_INTAKE);
  const { a, b } = constants(volatility);
  const rankine = b / (a - Math.log((fraction * pressure) / PASCAL_OF_PSI));
  return kelvinFromCelsius(celsiusFromFahrenheit(rankine - RANKINE_OF_ZERO_FAHRENHEIT));
}

/**
 * Fuel to offer at an intake of `tempIntake` [K] and `pressure` [Pa] so that as much of it evaporates as on a start at
 * `tempWarm` [K]. Project judgement in the spirit of equilibrium air distillation (Bridgeman, Natl. Bur. Stand. 1934,
 * from memory): the share of the offered fuel that evaporates is taken as proportional to its vapour pressure, and vapour
 * in the air is limited to vapour pressure over ambient pressure. Real blends give their light ends first, so the true
 * ratio is smaller; the handbook's priming strokes decide, and over-priming is a fire hazard.
 */
export function startingMixture(
  volatility: FuelVolatility,
  tempIntake: number,
  pressure: number,
  tempWarm: number,
): StartingMixture {
  const vapourFraction = fuelVapourFraction(volatility, tempIntake, pressure);
  const warm = fuelVapourPressureAp42(volatility, tempWarm);
  return {
    offeredRatio: Math.max(1, warm / fuelVapourPressureAp42(volatility, tempIntake)),
    vapourFraction,
    status: vapourFraction >= FLAMMABILITY_GASOLINE.lean ? "ignitable" : "too-lean",
  };
}

/** The constants A [1] and B [°R] of the fuel. */
function constants({ reidVapourPressure, distillationSlope }: FuelVolatility): { a: number; b: number } {
  requireInRange("reidVapourPressure", reidVapourPressure, RANGE_REID_VAPOUR_PRESSURE);
  requireInRange("distillationSlope", distillationSlope, RANGE_DISTILLATION_SLOPE);
  const s = Math.sqrt(distillationSlope);
  const lnR = Math.log(reidVapourPressure / PASCAL_OF_PSI);
  return {
    a: 15.64 - 1.854 * s - (0.8742 - 0.328 * s) * lnR,
    b: 8742 - 1042 * s - (1049 - 179.4 * s) * lnR,
  };
}
