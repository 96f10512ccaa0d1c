import { celsiusFromKelvin, kelvinFromCelsius } from "../units/index.js";
import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";

/** How readily a gasoline evaporates: what AP-42 needs for its vapour pressure. */
export interface FuelVolatility {
  /** [Pa] Reid vapour pressure at 37.8 °C, from the delivery note or the specification. */
  readonly reidVapourPressure: number;
  /** [°F per volume %] slope of the ASTM D86 distillation curve at 10 % evaporated. */
  readonly distillationSlope: number;
}

/** [°F per volume %] of avgas and mogas (EPA AP-42 ch. 7.1, average slopes, from memory). */
export const DISTILLATION_SLOPE_AVGAS = 2.0;
export const DISTILLATION_SLOPE_MOGAS = 3.0;

/** [1] volume fractions of gasoline vapour in air between which a flame runs (IEC 60079-20-1:2010, NFPA 497:2008). */
export const FLAMMABILITY_GASOLINE = { lean: 0.014, rich: 0.076 } as const;

export const RANGE_DENSITY_AVGAS: ValidityRange = {
  quantity: "fuel temperature [K]",
  min: kelvinFromCelsius(-55),
  max: kelvinFromCelsius(40),
  source: "CAN 2-3.25-M82 gives -40 and 15 °C; run straight beyond (project judgement)",
};

/**
 * [kg/m3] of avgas at `temp` [K]: straight through 721 at 15 °C and 769 at -40 °C (CAN 2-3.25-M82 in a public article on
 * avgas). A batch differs by a few percent.
 * @example densityAvgas(288.15) // 721
 */
export function densityAvgas(temp: number): number {
  requireInRange("temp", temp, RANGE_DENSITY_AVGAS);
  return 721 + ((769 - 721) / (15 - -40)) * (15 - celsiusFromKelvin(temp));
}
