import type { Cranking } from "../aircraft/index.js";
import { RADIANS_PER_SECOND_OF_RPM } from "../units/index.js";

/** A geared permanent-magnet starter seen from the crankshaft: I = (V - k omega)/R, T = k eta I. */
export interface Starter {
  /** [V s/rad] */
  readonly voltagePerSpeed: number;
  /** [N m/A] smaller than voltagePerSpeed by the losses in gears and brushes. */
  readonly torquePerCurrent: number;
  /** [Ohm] with contactors and cables. */
  readonly resistance: number;
}

/**
 * The starter of a description. Torque straight in current holds for permanent magnets; a series-wound starter has more
 * torque per ampere at high current and runs away less steeply, so it cranks a stiff engine a little better than this.
 */
export function starterOf({
  system_v,
  stall_torque_nm,
  no_load_rpm,
  starter_resistance_ohm,
}: Cranking): Starter {
  const voltagePerSpeed = system_v / (no_load_rpm * RADIANS_PER_SECOND_OF_RPM);
  const torquePerCurrent = (stall_torque_nm * starter_resistance_ohm) / system_v;
  if (!(torquePerCurrent > 0 && torquePerCurrent <= voltagePerSpeed)) {
    throw new RangeError(
      `invalid stall_torque_nm: ${stall_torque_nm} (expected at most ${(voltagePerSpeed * system_v) / starter_resistance_ohm}: ` +
        "more would give out more power than it takes in)",
    );
  }
  return { voltagePerSpeed, torquePerCurrent, resistance: starter_resistance_ohm };
}
