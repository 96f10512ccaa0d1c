import { type Caution, type Installation, oilById } from "../aircraft/index.js";
import { UniformTable } from "../numerics/index.js";
import { COLD_CRANKING_TEST, crankingPowerFraction, RANGE_TEMP_BATTERY } from "../properties/index.js";
import { RADIANS_PER_SECOND_OF_RPM, requireInside } from "../units/index.js";
import { batteryKind, batterySource, clampedBattery, crankingCharge } from "./battery-source.js";
import { START_CAUTIONS } from "./cautions.js";
import {
  CRANKING_REFERENCE_SPEED,
  CRANKING_REFERENCE_VISCOSITY,
  crankingDrag,
  FILM_SHARES,
} from "./cranking-drag.js";
import { clampedPart, logViscosityTable } from "./oil-table.js";
import { type CrankingSpread, USUAL_CRANKING } from "./spread.js";
import { starterOf } from "./starter.js";

/** [K] of what decides how fast it turns. */
export interface CrankingTemps {
  readonly barrels: number;
  readonly crankshaft: number;
  readonly oil: number;
  readonly battery: number;
}

/** One try. */
export interface CrankingTry {
  /** "turns": at least the installation's least speed; "too-slow": below it; "stalls": does not go round. */
  readonly status: "turns" | "too-slow" | "stalls";
  /** [rad/s] of the crankshaft; 0 when it stalls. */
  readonly speed: number;
  /** [A] */
  readonly current: number;
  /** [V] at the battery's posts while cranking. */
  readonly voltage: number;
  readonly cautions: readonly Caution[];
}

/** [s] of cranking at a time (Lycoming Service Instruction 1505: at most 5 s a try). */
const TRY_DURATION = 5;

/** Cranking of one installation. Numbers go in and out singly, so that ensembles can run it without making objects. */
export interface CrankingModel {
  /** [rad/s] least crankshaft speed that a start is counted on at. */
  readonly speedMin: number;
  /** [rad/s] steady speed, 0 when the starter cannot turn it. */
  speed(
    tempBarrels: number,
    tempCrankshaft: number,
    tempOil: number,
    tempBattery: number,
    spread: CrankingSpread,
  ): number;
  /** [A] drawn at that speed. */
  current(speed: number, tempBattery: number, spread: CrankingSpread): number;
  /** Tries of {@link TRY_DURATION} that the battery has in it at that current, not rounded. */
  tries(current: number, tempBattery: number): number;
}

/** @param charge state of charge of the battery [0..1]; what the description assumes when absent */
export function crankingModel(
  installation: Installation,
  charge: number = installation.battery.assumed_charge,
): CrankingModel {
  requireInside("charge", charge, 0, 1, "[1]");
  const { battery, cranking, oil } = installation;
  const logViscosity = logViscosityTable(oilById(oil.oil_id));
  const logReference = Math.log(CRANKING_REFERENCE_VISCOSITY);
  const { fixed, film } = crankingDrag(installation);
  const starter = starterOf(cranking);
  const kind = batteryKind(battery);
  const full = batterySource(battery, cranking, COLD_CRANKING_TEST.temp, charge);
  const powerAtTest = crankingPowerFraction(kind, COLD_CRANKING_TEST.temp);
  const power = batteryTable((temp) => crankingPowerFraction(kind, Math.max(temp, kind.tempDischargeMin)));
  const stored = batteryTable((temp) =>
    crankingCharge(battery, Math.max(temp, kind.tempDischargeMin), charge),
  );

  /** [Ohm] whole circuit. */
  function resistance(tempBattery: number, spread: CrankingSpread): number {
    if (tempBattery < kind.tempDischargeMin) return Number.POSITIVE_INFINITY;
    const fraction = Math.max(0, power.value(clampedBattery(tempBattery))) * spread.power;
    return starter.resistance + (full.resistance * powerAtTest) / fraction;
  }

  /** [1] (mu/mu_0)^n. */
  function filmLevel(temp: number, exponent: number): number {
    return Math.exp(exponent * (logViscosity.value(clampedPart(temp)) - logReference));
  }

  function speed(
    tempBarrels: number,
    tempCrankshaft: number,
    tempOil: number,
    tempBattery: number,
    spread: CrankingSpread,
  ): number {
    const { exponent } = spread;
    const films =
      FILM_SHARES.barrels * filmLevel(tempBarrels, exponent) +
      FILM_SHARES.crankshaft * filmLevel(tempCrankshaft, exponent) +
      FILM_SHARES.oil * filmLevel(tempOil, exponent);
    const ohms = resistance(tempBattery, spread);
    const stall = (starter.torquePerCurrent * full.openVoltage) / ohms;
    const slope = (starter.torquePerCurrent * starter.voltagePerSpeed) / ohms;
    return balanceSpeed(
      stall - spread.drag * fixed,
      slope,
      (spread.drag * film * films) / CRANKING_REFERENCE_SPEED ** exponent,
      exponent,
    );
  }

  function current(turning: number, tempBattery: number, spread: CrankingSpread): number {
    return (full.openVoltage - starter.voltagePerSpeed * turning) / resistance(tempBattery, spread);
  }

  return {
    speedMin: cranking.speed_min_rpm * RADIANS_PER_SECOND_OF_RPM,
    speed,
    current,
    tries(drawn, tempBattery) {
      if (!(drawn > 0) || tempBattery < kind.tempDischargeMin) return 0;
      return Math.max(0, stored.value(clampedBattery(tempBattery))) / (drawn * TRY_DURATION);
    },
  };
}

/** What one try at these temperatures comes to. */
export function crankingTry(
  installation: Installation,
  temps: CrankingTemps,
  charge: number = installation.battery.assumed_charge,
  spread: CrankingSpread = USUAL_CRANKING,
): CrankingTry {
  const model = crankingModel(installation, charge);
  const speed = model.speed(temps.barrels, temps.crankshaft, temps.oil, temps.battery, spread);
  const current = model.current(speed, temps.battery, spread);
  const { openVoltage, resistance } = batterySource(
    installation.battery,
    installation.cranking,
    clampedBattery(temps.battery),
    charge,
  );
  const voltage = current > 0 ? openVoltage - (current * resistance) / spread.power : 0;
  const turns = speed >= model.speedMin;
  return {
    status: turns ? "turns" : speed > 0 ? "too-slow" : "stalls",
    speed,
    current,
    voltage,
    cautions: turns
      ? [START_CAUTIONS.crankShort]
      : [START_CAUTIONS.crankShort, START_CAUTIONS.kickBack, START_CAUTIONS.handTurning],
  };
}

/**
 * Speed x at which torque left = slope x + film x^exponent; 0 when nothing is left at standstill. The difference is
 * convex and falls, so Newton's steps from a point below the root climb to it without passing it.
 */
function balanceSpeed(left: number, slope: number, film: number, exponent: number): number {
  if (!(left > 0)) return 0;
  let x = Math.min(left / (2 * slope), (left / (2 * film)) ** (1 / exponent));
  for (let k = 0; k < MOST_STEPS; k++) {
    const drag = film * x ** exponent;
    const step = (left - slope * x - drag) / (slope + (exponent * drag) / x);
    x += step;
    if (step < SPEED_TOLERANCE * x) break;
  }
  return x;
}

const MOST_STEPS = 12;
const SPEED_TOLERANCE = 1e-7;

function batteryTable(f: (temp: number) => number): UniformTable {
  return new UniformTable(f, RANGE_TEMP_BATTERY.min, RANGE_TEMP_BATTERY.max, 240);
}
