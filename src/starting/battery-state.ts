import type { Battery, Caution } from "../aircraft/index.js";
import {
  chargeRateLimit,
  crankingPowerFraction,
  specificGravityFromStateOfCharge,
  tempFreezingElectrolyte,
} from "../properties/index.js";
import { kelvinFromCelsius, requireInside } from "../units/index.js";
import { batteryKind, clampedBattery } from "./battery-source.js";
import { START_CAUTIONS } from "./cautions.js";

/** [K] outside air below which batteries are taken out (Cessna 172S NAV III POH Supplement 8). */
const TEMP_REMOVE_BATTERY = kelvinFromCelsius(-34);

/** What the cold does to a battery. */
export interface BatteryState {
  /** "frozen": the acid may be ice; "cut-off": the pack gives nothing; "usable": neither. */
  readonly status: "usable" | "frozen" | "cut-off";
  /** [1] cranking power over that of a full battery at 27 °C, at this charge's best. */
  readonly crankingPower: number;
  readonly mayCharge: boolean;
  readonly cautions: readonly Caution[];
}

/**
 * [K] below which the battery must be left alone: the freezing point of its acid at `charge` [0..1], on the warm side of
 * all published tables, or the cut-off of a lithium pack.
 * @example tempBatteryLeast(installationById("four-carburettor-160").battery, 0.25) // 258.15: SG 1.155 freezes at +5 °F
 */
export function tempBatteryLeast(battery: Battery, charge: number): number {
  requireInside("charge", charge, 0, 1, "[1]");
  if (battery.chemistry === "lithium-iron-phosphate") return batteryKind(battery).tempDischargeMin;
  return tempFreezingElectrolyte(specificGravityFromStateOfCharge(charge));
}

/** [K] below which the battery must not or cannot be charged: 40 °F for lead-acid, 0 °C for lithium packs. */
export function tempChargeLeast(battery: Battery): number {
  const steps = batteryKind(battery).chargeSteps;
  return Math.max(...steps.filter((step) => step.rate === 0).map((step) => step.below));
}

/**
 * @param temp [K] of the battery
 * @param tempAir [K] outside, for the caution about taking it out
 */
export function batteryState(
  battery: Battery,
  temp: number,
  tempAir: number,
  charge: number = battery.assumed_charge,
): BatteryState {
  const kind = batteryKind(battery);
  const within = clampedBattery(temp);
  const cold = temp < tempBatteryLeast(battery, charge);
  const frozen = cold && battery.chemistry === "lead-acid";
  const takesCharge = chargeRateLimit(kind, within) > 0;
  const cautions: Caution[] = [];
  if (frozen) cautions.push(START_CAUTIONS.frozenBattery);
  if (!takesCharge) cautions.push(START_CAUTIONS.coldCharging);
  if (tempAir < TEMP_REMOVE_BATTERY) cautions.push(START_CAUTIONS.removeBattery);
  return {
    status: frozen ? "frozen" : cold ? "cut-off" : "usable",
    crankingPower: cold ? 0 : crankingPowerFraction(kind, within),
    mayCharge: takesCharge && !cold,
    cautions,
  };
}
