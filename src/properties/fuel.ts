import { celsiusFromKelvin, kelvinFromCelsius, PASCAL_OF_PSI } from "../units/index.js";
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

/** ASTM D910 limits for all leaded grades. */
export const AVGAS_D910 = {
  /** [Pa] 38.0 to 49.0 kPa (from memory); "5.5 to 7 psi" read in a public article on avgas. The lower limit assures starting. */
  reidVapourPressure: { min: 38.0e3, max: 49.0e3 },
  /** [K] freezing point at most -58 °C (read at aviation-fuel.com). */
  tempFreezing: kelvinFromCelsius(-58),
  /** [J/kg] net heat of combustion at least (from memory). */
  heatOfCombustion: 43.5e6,
} as const;

/** [Pa] span of Reid vapour pressures of motor gasoline, 8 to 14 psi (public article on avgas). */
export const REID_VAPOUR_PRESSURE_MOGAS = { min: 8 * PASCAL_OF_PSI, max: 14 * PASCAL_OF_PSI } as const;

/** Avgas at the lean end of its specification: the cautious assumption for starting. */
export const AVGAS_LEAST_VOLATILE: FuelVolatility = {
  reidVapourPressure: AVGAS_D910.reidVapourPressure.min,
  distillationSlope: DISTILLATION_SLOPE_AVGAS,
};

/** [1] volume fractions of gasoline vapour in air between which a flame runs (IEC 60079-20-1:2010, NFPA 497:2008). */
export const FLAMMABILITY_GASOLINE = { lean: 0.014, rich: 0.076 } as const;
/** [K] flash point of gasoline, -46 °C (IEC 60079-20-1:2010): vapour of it lights at any winter temperature met here. */
export const TEMP_FLASH_GASOLINE = 227.15;
/** [K] autoignition of gasoline, 280 °C (IEC 60079-20-1:2010). */
export const TEMP_AUTOIGNITION_GASOLINE = 553.15;
/** [J/kg] heat of vaporisation of gasoline, 305 to 350 (Heywood, Internal Combustion Engine Fundamentals, Table D.4, from memory). */
export const LATENT_HEAT_GASOLINE = { min: 305e3, max: 350e3 } as const;

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
