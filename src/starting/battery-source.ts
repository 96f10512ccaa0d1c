import type { Battery, Cranking } from "../aircraft/index.js";
import {
  BATTERIES,
  type BatteryKind,
  COLD_CRANKING_TEST,
  capacityFraction,
  crankingPowerFraction,
  openCircuitVoltage,
  RANGE_TEMP_BATTERY,
  specificGravityFromStateOfCharge,
} from "../properties/index.js";
import { COULOMB_OF_AMPERE_HOUR, requireInside } from "../units/index.js";

/** [V] rested pack of four lithium iron phosphate cells, level over most of the charge; from memory. */
const VOLTAGE_LITHIUM_FOUR_CELLS = 13.2;
/** [1] least state of charge that is reckoned with: below, the battery is empty. */
const CHARGE_LEAST = 0.05;

/** A battery as an ideal voltage behind a resistance. */
export interface BatterySource {
  /** [V] */
  readonly openVoltage: number;
  /** [Ohm] Infinity when it gives nothing: cut off or frozen through. */
  readonly resistance: number;
}

export function batteryKind({ chemistry, sealed }: Battery): BatteryKind {
  if (chemistry === "lithium-iron-phosphate") return BATTERIES["lithium-iron-phosphate"];
  return BATTERIES[sealed ? "lead-acid-sealed" : "lead-acid-flooded"];
}

/**
 * [Ohm] of a full battery in the cold cranking test: what leaves 1.2 V a lead-acid cell at the rated current.
 * @example
 * const { battery, cranking } = installationById("four-carburettor-160");
 * testResistance(battery, cranking) // 0.0181: (12.63 - 7.2) V/300 A
 */
function testResistance(battery: Battery, { system_v }: Pick<Cranking, "system_v">): number {
  const cells = system_v / 2;
  return (
    (openVoltageAt(battery, system_v, 1) - COLD_CRANKING_TEST.voltagePerCell * cells) /
    battery.cold_cranking_a
  );
}

/**
 * The battery at `temp` [K] and `charge` [0..1]. Its resistance is that of the cold cranking test at full charge and
 * 0 °F; with temperature it changes so that the greatest power, V^2/4R, follows the published cranking power
 * ({@link crankingPowerFraction}); with charge it rises as 1/charge, which halves the power of a half-charged battery
 * (workshop charts give 46, 32 and 21 % at 80, 32 and 0 °F, from memory).
 */
export function batterySource(
  battery: Battery,
  cranking: Pick<Cranking, "system_v">,
  temp: number,
  charge: number,
): BatterySource {
  requireInside("charge", charge, 0, 1, "[1]");
  const kind = batteryKind(battery);
  const power = crankingPowerFraction(kind, temp) / crankingPowerFraction(kind, COLD_CRANKING_TEST.temp);
  const resistance = testResistance(battery, cranking) / (power * Math.max(charge, CHARGE_LEAST));
  return { openVoltage: openVoltageAt(battery, cranking.system_v, charge), resistance };
}

/**
 * [C] charge to be counted on at cranking currents: what the cold cranking test itself draws, 30 s of the rated
 * current, scaled from 0 °F by the capacity at `temp` [K] and by `charge` [0..1]. A battery gives more than this when it
 * may rest between tries.
 */
export function crankingCharge(battery: Battery, temp: number, charge: number): number {
  requireInside("charge", charge, 0, 1, "[1]");
  const kind = batteryKind(battery);
  const capacity = capacityFraction(kind, temp) / capacityFraction(kind, COLD_CRANKING_TEST.temp);
  const most = battery.capacity_ah * COULOMB_OF_AMPERE_HOUR * capacityFraction(kind, temp);
  return charge * Math.min(most, battery.cold_cranking_a * COLD_CRANKING_TEST.duration * capacity);
}

/** [K] within the range of the battery tables. */
export function clampedBattery(temp: number): number {
  return Math.min(RANGE_TEMP_BATTERY.max, Math.max(RANGE_TEMP_BATTERY.min, temp));
}

/** [V] rested. */
function openVoltageAt({ chemistry }: Battery, systemVolts: number, charge: number): number {
  if (chemistry === "lithium-iron-phosphate") return VOLTAGE_LITHIUM_FOUR_CELLS * (systemVolts / 12);
  return openCircuitVoltage(specificGravityFromStateOfCharge(charge), systemVolts / 2);
}
