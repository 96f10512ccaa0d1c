import { CLEARANCES_ORIGIN } from "./fits.js";

/** Origins that every class shares for what decides a start. */
export const START_ORIGINS = {
  "battery.capacity_ah": "usual of the class, from memory",
  "battery.cold_cranking_a": "usual of the class, from memory; replace it with the figure on the battery",
  "battery.assumed_charge": "project judgement: a battery that has stood for some days",
  cranking:
    "project judgement: geared permanent-magnet starter, about 0.03 N m/A at the pinion and 5 mΩ (car starter data: 9 to " +
    "10 N m at 300 A and 7.7 V, locked 780 A at 4 V), ring gear and pinion of aircraft, 4 mΩ or more of cables",
  "cranking.speed_min_rpm":
    "60 rpm, geometric middle of the 30 to 120 rpm of petrol engines in cranking tests (SAE J2438, second-hand): below, " +
    "compression leaks past the rings and the engine rocks between compressions; project judgement",
  clearances: CLEARANCES_ORIGIN,
  fuel: "avgas at the least volatile that ASTM D910 lets through, 38 kPa (from memory; 5.5 psi in a public article)",
  shut_down:
    "oil about 120 °F above outside air in cruise, 140 °F reached at 10 °F (trade article); heads 120 °C or more in the " +
    "glide and 165 °F to 200 °F oil for water to leave (makers' texts): rises after descent and taxi are project judgement",
} as const;
