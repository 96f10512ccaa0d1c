import { kelvinFromCelsius, requirePositive } from "../units/index.js";
import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";

/** Mean coefficients of linear expansion [1/K], as handbooks print them: over ranges that all start at 20 °C. */
export interface ThermalExpansion {
  /**
   * Mean from -50 to 20 °C. Where no source lists one, the first warm range serves below 20 °C too; for aluminium that
   * overstates the shrinking by 7 to 8 %.
   */
  readonly cold?: number;
  /** Means from 20 °C to `to` [K], `to` ascending. */
  readonly warm: readonly { readonly to: number; readonly mean: number }[];
}

/** A round part of a fit. */
export interface FitPart {
  /** [m] at 20 °C. */
  readonly diameter: number;
  readonly expansion: ThermalExpansion;
  /** [K] */
  readonly temp: number;
}

/** [K] at which handbooks give lengths, 20 °C (ISO 1). */
export const TEMP_REFERENCE_LENGTH = kelvinFromCelsius(20);

export const RANGE_THERMAL_EXPANSION: ValidityRange = {
  quantity: "temperature of the part [K]",
  min: kelvinFromCelsius(-60),
  max: kelvinFromCelsius(300),
  source: "handbook ranges -50 to 300 °C, the last mean held beyond its range (project judgement)",
};

/**
 * [1] (L(T) - L(20 °C))/L(20 °C) at `temp` [K] 213.15 to 573.15. The means fix the strain at the end of each range;
 * between those points it runs straight, so the strain between any two temperatures is the sum over the ranges crossed.
 * @example thermalStrain({ warm: [{ to: 373.15, mean: 12.3e-6 }] }, 253.15) // -492e-6
 */
export function thermalStrain(expansion: ThermalExpansion, temp: number): number {
  requireInRange("temp", temp, RANGE_THERMAL_EXPANSION);
  const first = expansion.warm[0];
  if (first === undefined) throw new RangeError("missing warm: no range (expected at least one)");
  if (temp <= TEMP_REFERENCE_LENGTH) return (expansion.cold ?? first.mean) * (temp - TEMP_REFERENCE_LENGTH);
  let low = TEMP_REFERENCE_LENGTH;
  let strainLow = 0;
  let slope = first.mean;
  for (const { to, mean } of expansion.warm) {
    const strainHigh = mean * (to - TEMP_REFERENCE_LENGTH);
    slope = (strainHigh - strainLow) / (to - low);
    if (temp <= to) break;
    low = to;
    strainLow = strainHigh;
    slope = mean;
  }
  return strainLow + slope * (temp - low);
}

/**
 * [m] clearance on the diameter between a bore and what turns or slides in it (bearing and shaft, barrel and piston),
 * each at its own temperature; negative is interference. Of two bare rings: a steel-backed shell, a stud or a flange
 * holds the bore back, so show it as an index beside the engine maker's table of limits, never as a pass or fail.
 * @example
 * const bore = { diameter: 0.06, expansion: { warm: [{ to: 373.15, mean: 21.4e-6 }] }, temp: 253.15 };
 * const shaft = { diameter: 0.05994, expansion: { warm: [{ to: 373.15, mean: 12.3e-6 }] }, temp: 253.15 };
 * diametralClearance(bore, shaft) // 38.1e-6: of 60 micrometres at 20 °C
 */
export function diametralClearance(bore: FitPart, shaft: FitPart): number {
  return diameterAt("bore", bore) - diameterAt("shaft", shaft);
}

function diameterAt(name: string, part: FitPart): number {
  requirePositive(`${name}.diameter`, part.diameter, "m");
  return part.diameter * (1 + thermalStrain(part.expansion, part.temp));
}
