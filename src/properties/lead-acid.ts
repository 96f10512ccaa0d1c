import { celsiusFromFahrenheit, kelvinFromCelsius, requireInside } from "../units/index.js";
import { interpolateTable, type Table } from "./piecewise-linear.js";
import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";

// Lead-acid batteries by specific gravity at 80 °F, rested. Tables of different publishers agree on freezing against
// specific gravity but not on specific gravity against charge: decide about freezing on specific gravity. Do not charge
// or jump-start a battery that may be frozen: it can burst. Acid burns: eye protection and gloves.

const RANGE_SPECIFIC_GRAVITY: ValidityRange = {
  quantity: "specific gravity of the electrolyte at 80 °F [1]",
  min: 1.0,
  max: 1.3,
  source: "water to strong starter-battery acid",
};

/** State of charge [1] against specific gravity, and six-cell voltage: table of the Battery Council International, 80 °F. */
const CHARGE_OF_SPECIFIC_GRAVITY: Table = [
  [1.12, 0],
  [1.155, 0.25],
  [1.19, 0.5],
  [1.225, 0.75],
  [1.265, 1],
];

/**
 * Freezing point [°F] against specific gravity: at every node the warmest of the published tables keyed on specific
 * gravity (US Army TM 5-4210-230-14&P-1 Table 2, TM 5-1185 Table III, TM 10-6140-200-14 Table 1-1; an owner's manual;
 * volvo850.ru; logwell.com through the charge table above), water at 1.000. The printed "BCI" column (-16 °F at 1.155)
 * is left out: it is far too cold against all others. Above 1.280 the last value holds.
 */
const FREEZING: Table = [
  [1.0, 32],
  [1.05, 27],
  [1.1, 19.4],
  [1.12, 15],
  [1.15, 5],
  [1.155, 5],
  [1.16, 1],
  [1.2, -16],
  [1.22, -31],
  [1.225, -33],
  [1.25, -62],
  [1.265, -71],
  [1.28, -85],
];

/**
 * [K] at which electrolyte of `specificGravity` [1] starts to freeze, on the warm side of all tables.
 * @example tempFreezingElectrolyte(1.15) // 258.15: -15 °C
 */
export function tempFreezingElectrolyte(specificGravity: number): number {
  requireInRange("specificGravity", specificGravity, RANGE_SPECIFIC_GRAVITY);
  return kelvinFromCelsius(celsiusFromFahrenheit(interpolateTable(FREEZING, specificGravity)));
}

/** [1] specific gravity at 80 °F from state of charge [1]. */
export function specificGravityFromStateOfCharge(stateOfCharge: number): number {
  requireInside("stateOfCharge", stateOfCharge, 0, 1, "[1]");
  return interpolateTable(
    CHARGE_OF_SPECIFIC_GRAVITY.map(([gravity, charge]) => [charge, gravity] as const),
    stateOfCharge,
  );
}

/** [V] rested open-circuit voltage of `cells` cells at 80 °F: specific gravity + 0.84 a cell (electrapk.com). @example openCircuitVoltage(1.265, 6) // 12.63 */
export function openCircuitVoltage(specificGravity: number, cells: number): number {
  requireInRange("specificGravity", specificGravity, RANGE_SPECIFIC_GRAVITY);
  requireInside("cells", cells, 1, 24, "cells");
  return cells * (specificGravity + 0.84);
}
