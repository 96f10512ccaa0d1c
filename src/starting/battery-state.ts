import type { Battery, Caution } from "../aircraft/index.js";
import {
  chargeRateLimit,
  chargeVoltageLeadAcid,
  crankingPowerFraction,
  specificGravityFromStateOfCharge,
  tempFreezingElectrolyte,
} from "../properties/index.js";
import { kelvinFromCelsius, requireInside } from "../units/index.js";
import { batteryKind, clampedBattery } from "./battery-source.js";
import { START_CAUTIONS } from "./cautions.js";

/** [K] outside air below which batteries are taken out (Cessna 172S NAV III POH Supplement 8). */
export const TEMP_REMOVE_BATTERY = kelvinFromCelsius(-34);

/** What the cold does to a battery. */
export interface BatteryState {
  /** "frozen": the acid may be ice; "cut-off": the pack gives nothing; "usable": neither. */
  readonly status: "usable" | "frozen" | "cut-off";
  /** [K] below which it is frozen or cut off. */
  readonly tempLeast: number;
  /** [1] cranking power over that of a full battery at 27 °C, at this charge's best. */
  readonly crankingPower: number;
  /** Whether it may be charged now, and up to what rate [1/h] ("C"); Infinity: cold sets no limit. */
  readonly mayCharge: boolean;
  readonly chargeRate: number;
  /** [V] to charge a lead-acid battery with at this temperature; undefined for lithium packs, whose maker says. */
  readonly chargeVoltage: number | undefined;
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
 * @param systemVolts 12 or 24
 */
export function batteryState(
  battery: Battery,
  systemVolts: number,
  temp: number,
  tempAir: number,
  charge: number = battery.assumed_charge,
): BatteryState {
  const kind = batteryKind(battery);
  const tempLeast = tempBatteryLeast(battery, charge);
  const lithium = battery.chemistry === "lithium-iron-phosphate";
  const cold = temp < tempLeast;
  const within = clampedBattery(temp);
  const rate = chargeRateLimit(kind, within);
  const frozen = cold && !lithium;
  const cautions: Caution[] = [];
  if (frozen) cautions.push(START_CAUTIONS.frozenBattery);
  if (!(rate > 0)) cautions.push(START_CAUTIONS.coldCharging);
  if (tempAir < TEMP_REMOVE_BATTERY) cautions.push(START_CAUTIONS.removeBattery);
  return {
    status: frozen ? "frozen" : cold ? "cut-off" : "usable",
    tempLeast,
    crankingPower: cold ? 0 : crankingPowerFraction(kind, within),
    mayCharge: rate > 0 && !cold,
    chargeRate: cold ? 0 : rate,
    chargeVoltage: lithium
      ? undefined
      : chargeVoltageLeadAcid(battery.sealed ? "maintenance-free" : "conventional", within, systemVolts / 2),
    cautions,
  };
}
