import { celsiusFromFahrenheit, kelvinFromCelsius } from "../units/index.js";
import { interpolateTable, type Table } from "./piecewise-linear.js";
import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";

// What cold does to a starter battery. Never charge one that may be frozen or that is bulging: it can burst. The
// battery maker's and the aircraft's handbook decide limits of charging.

/** A kind of starter battery: tables of temperature [K] against a fraction [1], with their sources. */
export interface BatteryKind {
  /** Cranking power at full charge over that at 27 °C. */
  readonly crankingPower: Table;
  /** Charge that can be drawn slowly over that at 27 °C. */
  readonly capacity: Table;
  /** [K] below which nothing is counted on: the pack cuts off or has next to nothing left. */
  readonly tempDischargeMin: number;
  /** Highest charge rate at temperatures below each `below` [K], ascending; no limit by temperature above the last. */
  readonly chargeSteps: readonly ChargeStep[];
}

export interface ChargeStep {
  readonly below: number;
  /** [1/h] current over capacity, "C". 0: do not charge. */
  readonly rate: number;
}

export const RANGE_TEMP_BATTERY: ValidityRange = {
  quantity: "battery temperature [K]",
  min: kelvinFromCelsius(-60),
  max: kelvinFromCelsius(60),
  source: "project judgement; tables run from -40 to 27 °C and hold their ends",
};

/** Standard test behind the figure "CCA": current held for 30 s at 0 °F with at least 1.2 V a cell (BCI). */
export const COLD_CRANKING_TEST = { temp: fahrenheit(0), duration: 30, voltagePerCell: 1.2 } as const;

/** US Army TM 5-4210-230-14&P-1 Table 3 (a workshop chart gives 0.25 at -20 °F); near zero at -40 °F: US Army winterization class. */
const CRANKING_LEAD_ACID: Table = [
  [fahrenheit(-40), 0],
  [fahrenheit(-20), 0.2],
  [fahrenheit(0), 0.4],
  [fahrenheit(32), 0.65],
  [fahrenheit(80), 1],
];
/** SAE 430132 (1943): at least 40 °F, below that little is taken up; US Army winterization class: at least 35 °F. */
const CHARGE_LEAD_ACID: readonly ChargeStep[] = [{ below: fahrenheit(40), rate: 0 }];

export const BATTERIES = {
  /** Capacity: US Army TM 10-6140-200-14 para 1-9, 6 h rate; near zero at -40 °F: US Army winterization class. */
  "lead-acid-flooded": {
    crankingPower: CRANKING_LEAD_ACID,
    capacity: [
      [fahrenheit(-40), 0],
      [fahrenheit(0), 0.4],
      [fahrenheit(32), 0.75],
      [fahrenheit(80), 1],
    ],
    tempDischargeMin: fahrenheit(-40),
    chargeSteps: CHARGE_LEAD_ACID,
  },
  /**
   * Cranking power: flooded values (project judgement). Capacity: battery makers' articles, 45 % at 0 °F; near zero at
   * -40 °F: US Army winterization class.
   */
  "lead-acid-sealed": {
    crankingPower: CRANKING_LEAD_ACID,
    capacity: [
      [fahrenheit(-40), 0],
      [fahrenheit(0), 0.45],
      [fahrenheit(80), 1],
    ],
    tempDischargeMin: fahrenheit(-40),
    chargeSteps: CHARGE_LEAD_ACID,
  },
  /**
   * Cranking power: lead-acid values down to the cut-off (project judgement); Bauknecht et al., Batteries 9 (2023) 176, found
   * comparable cranking power to -18 °C, four of four packs passing at -10 °C, two at -18 °C, none at -30 °C. Capacity:
   * battery makers' articles, about 80 % at 0 °C, 70 % at -20 °C and 0 °F; charge cut-off 0 °C, discharge cut-off -20 °C.
   */
  "lithium-iron-phosphate": {
    crankingPower: CRANKING_LEAD_ACID,
    capacity: [
      [kelvinFromCelsius(-20), 0.7],
      [kelvinFromCelsius(0), 0.8],
      [fahrenheit(80), 1],
    ],
    tempDischargeMin: kelvinFromCelsius(-20),
    chargeSteps: [{ below: kelvinFromCelsius(0), rate: 0 }],
  },
} satisfies Record<string, BatteryKind>;

/**
 * [1] cranking power of a full battery at `temp` [K] over that at 27 °C.
 * @example crankingPowerFraction(BATTERIES["lead-acid-flooded"], COLD_CRANKING_TEST.temp) // 0.40
 */
export function crankingPowerFraction(kind: BatteryKind, temp: number): number {
  return fraction(kind, kind.crankingPower, temp);
}

/** [1] charge a full battery can give slowly at `temp` [K] over that at 27 °C. */
export function capacityFraction(kind: BatteryKind, temp: number): number {
  return fraction(kind, kind.capacity, temp);
}

/** [1/h] highest charge rate ("C") at `temp` [K]: 0 when it must not or cannot be charged, Infinity when cold sets no limit. */
export function chargeRateLimit(kind: BatteryKind, temp: number): number {
  requireInRange("temp", temp, RANGE_TEMP_BATTERY);
  return kind.chargeSteps.find((step) => temp < step.below)?.rate ?? Number.POSITIVE_INFINITY;
}

function fraction(kind: BatteryKind, table: Table, temp: number): number {
  requireInRange("temp", temp, RANGE_TEMP_BATTERY);
  return temp < kind.tempDischargeMin ? 0 : interpolateTable(table, temp);
}

/** [K] */
function fahrenheit(value: number): number {
  return kelvinFromCelsius(celsiusFromFahrenheit(value));
}
