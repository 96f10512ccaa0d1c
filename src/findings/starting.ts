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
  readonly oil: string;
  readonly temp_c: number;
}
interface BatteryAt {
  readonly temp_c: number;
  /** [0..1] */
  readonly charge: number;
}
interface Turning {
  readonly rpm: number;
  readonly current_a: number;
  readonly voltage_v: number;
}
type None = Record<never, never>;

/** Findings: cranking, battery, fuel, clearances and moisture before a start. Code to its values; keys carry their unit. */
export interface StartingFindings {
  readonly part: { readonly name: Part };
  readonly parameter: { readonly name: Parameter };
  /** A finding and where it comes from, in one sentence. */
  readonly "with-source": { readonly finding: Finding; readonly source: string };
  readonly "oil-below-pour-point": OilAt & { readonly pour_point_c: number };
  readonly "oil-not-pumped": OilAt & { readonly limit_c: number };
  readonly "oil-too-stiff": OilAt & { readonly limit_c: number };
  readonly "oil-fit": OilAt;
  readonly "oil-pressure-never": None;
  readonly "oil-pressure-delay": {
    readonly least_s: number;
    readonly most_s: number;
    readonly limit_s: number;
  };
  readonly "oil-grade-listed": { readonly grade: string; readonly temp_c: number };
  readonly "oil-grade-unlisted": {
    readonly grade: string;
    readonly temp_c: number;
    readonly listed: readonly string[];
  };
  readonly "propeller-clear": None;
  readonly "starter-stalls": None;
  readonly "starter-slow": Turning;
  readonly "starter-turns": Turning;
  readonly "battery-absent": None;
  readonly "battery-frozen": BatteryAt;
  readonly "battery-cut-off": BatteryAt;
  /** [0..1] cranking power over that of a full battery at 27 °C. */
  readonly "battery-power": BatteryAt & { readonly power: number; readonly may_charge: boolean };
  readonly "fuel-too-lean": { readonly temp_c: number };
  readonly "fuel-as-warm": { readonly temp_c: number };
  readonly "fuel-more": { readonly temp_c: number; readonly ratio: number; readonly too_much: boolean };
  readonly "breather-iced": None;
  readonly "why-title": { readonly topic: Topic };
  readonly "why-oil-viscosity": OilAt & {
    readonly viscosity_pa_s: number;
    readonly ratio: number;
    readonly cranking_c: number;
    readonly pumping_c: number;
  };
  readonly "why-oil-pressure": { readonly temp_c: number; readonly least_s: number; readonly most_s: number };
  readonly "why-cranking-drag": {
    readonly temp_c: number;
    readonly torque_nm: number;
    /** [1] over that at 27 °C. */
    readonly ratio: number;
    readonly mostly: "films" | "compression";
  };
  readonly "why-cranking-power": {
    readonly temp_c: number;
    readonly battery: "flooded" | "sealed" | "lithium";
    readonly power: number;
  };
  readonly "why-cranking-speed": BatteryAt & { readonly rpm: number; readonly least_rpm: number };
  readonly "why-battery-freezing": BatteryAt & {
    /** Above it; negative below. */
    readonly margin_k: number;
    readonly freezing_c: number;
    readonly empty_c: number;
  };
  readonly "why-battery-cut-off": {
    readonly temp_c: number;
    readonly margin_k: number;
    readonly cut_off_c: number;
  };
  readonly "why-fuel-vapour": {
    readonly temp_c: number;
    readonly fuel: "avgas" | "mogas";
    /** [0..1] */
    readonly vapour: number;
    readonly lean: number;
    readonly lean_c: number;
    readonly ratio: number;
  };
  readonly "why-bearing-clearance": {
    readonly temp_c: number;
    readonly left_mm: number;
    readonly whole_mm: number;
  };
  readonly "why-piston-clearance": {
    readonly temp_c: number;
    readonly left_mm: number;
    readonly warm_mm: number;
  };
  readonly "why-frost-point": { readonly temp_c: number; readonly frost_c: number };
  readonly "why-dew-point": { readonly temp_c: number };
}
