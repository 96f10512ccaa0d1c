import type { Finding } from "./index.js";

/** Parts of an engine installation that have a name in words. */
type Part =
  | "sump"
  | "oil"
  | "crankcase"
  | "crankshaft"
  | "barrels"
  | "heads_front"
  | "heads_rear"
  | "accessories"
  | "hub"
  | "cowl_air"
  | "cowl_skin"
  | "battery"
  | "coolant";

/** Uncertain numbers of an installation, see PARAMETERS. */
type Parameter =
  | "heater_contact"
  | "heater_power"
  | "oil_film"
  | "sump_joint"
  | "oil_inside"
  | "journals"
  | "flanges"
  | "accessory_mounts"
  | "engine_to_cowl_air"
  | "cowl_skin_loss"
  | "ventilation"
  | "hub_loss"
  | "battery_links"
  | "heat_stores";

/** Questions of the teaching page. */
type Topic =
  | "oil-viscosity"
  | "oil-pressure"
  | "cranking-drag"
  | "cranking-power"
  | "cranking-speed"
  | "battery-freezing"
  | "fuel-vapour"
  | "bearing-clearance"
  | "piston-clearance"
  | "frost-point";

interface OilAt {
  oil: string;
  temp_c: number;
}
interface BatteryAt {
  temp_c: number;
  /** [0..1] */
  charge: number;
}
interface Turning {
  rpm: number;
  current_a: number;
  voltage_v: number;
}
type None = Record<never, never>;

/** Findings: cranking, battery, fuel, clearances and moisture before a start. Code to its values; keys carry their unit. */
export interface StartingFindings {
  part: { name: Part };
  parameter: { name: Parameter };
  /** A finding and where it comes from, in one sentence. */
  "with-source": { finding: Finding; source: string };
  "oil-below-pour-point": OilAt & { pour_point_c: number };
  "oil-not-pumped": OilAt & { limit_c: number };
  "oil-too-stiff": OilAt & { limit_c: number };
  "oil-fit": OilAt;
  "oil-pressure-never": None;
  "oil-pressure-delay": { least_s: number; most_s: number; limit_s: number };
  "oil-grade-listed": { grade: string; temp_c: number };
  "oil-grade-unlisted": { grade: string; temp_c: number; listed: readonly string[] };
  "propeller-clear": None;
  "starter-stalls": None;
  "starter-slow": Turning;
  "starter-turns": Turning;
  "battery-absent": None;
  "battery-frozen": BatteryAt;
  "battery-cut-off": BatteryAt;
  /** [0..1] cranking power over that of a full battery at 27 °C. */
  "battery-power": BatteryAt & { power: number; may_charge: boolean };
  "fuel-too-lean": { temp_c: number };
  "fuel-as-warm": { temp_c: number };
  "fuel-more": { temp_c: number; ratio: number; too_much: boolean };
  "breather-iced": None;
  "why-title": { topic: Topic };
  "why-oil-viscosity": OilAt & {
    viscosity_pa_s: number;
    ratio: number;
    cranking_c: number;
    pumping_c: number;
  };
  "why-oil-pressure": { temp_c: number; least_s: number; most_s: number };
  "why-cranking-drag": {
    temp_c: number;
    torque_nm: number;
    /** [1] over that at 27 °C. */
    ratio: number;
    mostly: "films" | "compression";
  };
  "why-cranking-power": { temp_c: number; battery: "flooded" | "sealed" | "lithium"; power: number };
  "why-cranking-speed": BatteryAt & { rpm: number; least_rpm: number };
  "why-battery-freezing": BatteryAt & {
    /** Above it; negative below. */
    margin_k: number;
    freezing_c: number;
    empty_c: number;
  };
  "why-battery-cut-off": { temp_c: number; margin_k: number; cut_off_c: number };
  "why-fuel-vapour": {
    temp_c: number;
    fuel: "avgas" | "mogas";
    /** [0..1] */
    vapour: number;
    lean: number;
    lean_c: number;
    ratio: number;
  };
  "why-bearing-clearance": { temp_c: number; left_mm: number; whole_mm: number };
  "why-piston-clearance": { temp_c: number; left_mm: number; warm_mm: number };
  "why-frost-point": { temp_c: number; frost_c: number };
  "why-dew-point": { temp_c: number };
}
