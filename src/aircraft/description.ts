import type { MetalId } from "../properties/index.js";

/**
 * An engine installation as data: what a network is built from. These records are stored and exchanged, so their keys
 * carry units. Every number's origin is named in `origins` (checked by a test).
 */
export interface Installation {
  readonly id: string;
  /** In trade terms: "four-cylinder opposed, 150-180 hp, carburettor, fixed-pitch propeller". */
  readonly name: string;
  readonly cooling: "air" | "liquid";
  /** Where the oil lives: under the crankcase, or in a tank of its own with only residual oil in the case. */
  readonly lubrication: "wet-sump" | "dry-tank";
  readonly cylinders: number;
  readonly displacement_l: number;
  readonly compression_ratio: number;
  readonly bodies: Bodies;
  readonly oil: { readonly quantity_l: number; readonly oil_id: string };
  readonly contacts: Contacts;
  readonly cowl: Cowl;
  readonly propeller: Propeller;
  readonly battery: Battery;
  readonly cranking: Cranking;
  readonly clearances: Clearances;
  readonly fuel: Fuel;
  readonly shut_down: ShutDown;
  readonly limits: StartLimits;
  readonly origins: Origins;
}

export interface Bodies {
  /** Oil sump, or the oil tank of a dry-tank engine. */
  readonly sump: Body;
  readonly crankcase: Body;
  /** Crankshaft with camshaft and connecting rods. */
  readonly crankshaft: Body;
  /** Cylinder barrels with the pistons in them. */
  readonly barrels: Body;
  readonly heads: Body;
  /** Magnetos, starter, alternator, carburettor or injector, pumps, oil cooler, filter, baffles. */
  readonly accessories: Body;
  /** Liquid-cooled engines: coolant with its pipes and radiator. */
  readonly coolant?: Body;
}

export interface Body {
  readonly heat_capacity_j_per_k: number;
  /** Effective area towards the air under the cowl: envelope and the share of the fins that free convection reaches. */
  readonly area_m2: number;
  /** Height over which air rises along it. */
  readonly height_m: number;
}

/** Conductances between parts [W/K]; names as the links they become. */
export interface Contacts {
  /** Warm oil (50 °C) against the sump wall at 10 K difference; falls as the oil thickens. */
  readonly sump_oil_w_per_k: number;
  readonly sump_crankcase_w_per_k: number;
  readonly oil_crankcase_w_per_k: number;
  readonly oil_crankshaft_w_per_k: number;
  readonly crankcase_crankshaft_w_per_k: number;
  readonly crankcase_barrels_w_per_k: number;
  readonly barrels_heads_w_per_k: number;
  readonly crankcase_accessories_w_per_k: number;
  readonly crankshaft_hub_w_per_k: number;
  readonly coolant_heads_w_per_k?: number;
  readonly coolant_barrels_w_per_k?: number;
}

export interface Cowl {
  readonly skin_area_m2: number;
  readonly skin_heat_capacity_j_per_k: number;
  readonly length_m: number;
  /** Free opening of the cooling-air inlets, all together. */
  readonly inlet_area_m2: number;
  /** Free opening of the outlet, cowl flaps and gaps. */
  readonly outlet_area_m2: number;
  /** Height of warm air that drives the stack effect. */
  readonly stack_height_m: number;
  /** Long-wave emissivity of the painted skin [1]. */
  readonly emissivity: number;
}

export interface Propeller {
  readonly constant_speed: boolean;
  readonly hub_heat_capacity_j_per_k: number;
  readonly hub_area_m2: number;
  readonly blades: number;
  /** Root section of one blade, taken as a long fin: perimeter, section area and conductivity. */
  readonly blade_perimeter_m: number;
  readonly blade_section_m2: number;
  readonly blade_conductivity_w_per_m_k: number;
}

export interface Battery {
  readonly chemistry: "lead-acid" | "lithium-iron-phosphate";
  readonly place: "firewall" | "aft";
  readonly heat_capacity_j_per_k: number;
  readonly cowl_w_per_k: number;
  readonly outside_w_per_k: number;
  /** Lead-acid: sealed (starved electrolyte or gel) or flooded with caps. Lithium packs are sealed. */
  readonly sealed: boolean;
  /** Charge it gives slowly when warm and full. */
  readonly capacity_ah: number;
  /** Current it holds for 30 s at 0 °F with 1.2 V a lead-acid cell left: 7.2 V of 12 V. */
  readonly cold_cranking_a: number;
  /** State of charge to count on when nobody has measured it [0..1]. */
  readonly assumed_charge: number;
}

/** What turns the engine over. Torque and speed are those of the crankshaft. */
export interface Cranking {
  /** Electrical system, 12 or 24 V. */
  readonly system_v: number;
  /** Torque when held at standstill with system_v at the battery's posts. */
  readonly stall_torque_nm: number;
  /** Speed that would be reached with nothing to turn, at system_v. */
  readonly no_load_rpm: number;
  /** Starter, contactors and cables up to the battery's posts. */
  readonly starter_resistance_ohm: number;
  /** Crankshaft speed below which a start is not counted on. */
  readonly speed_min_rpm: number;
}

/** Round fits that change with temperature. */
export interface Clearances {
  /** Main bearing in its saddle; absent where the mains are ball or roller bearings. */
  readonly bearing?: Fit;
  /** Piston skirt in the barrel. */
  readonly piston: Fit;
}

/** Clearance on the diameter at 20 °C, of bare parts of these metals. */
export interface Fit {
  readonly diameter_mm: number;
  readonly clearance_mm: number;
  readonly outer_metal: MetalId;
  readonly inner_metal: MetalId;
}

export interface Fuel {
  readonly grade: "avgas" | "mogas";
  /** Reid vapour pressure: the least to be counted on. */
  readonly reid_kpa: number;
}

/** How warm it is when it is shut down after a cruise, descent and taxi. */
export interface ShutDown {
  /** Oil above outside air, up to oil_most_c. */
  readonly oil_rise_k: number;
  readonly oil_most_c: number;
  readonly heads_rise_k: number;
  readonly barrels_rise_k: number;
  /** Liquid-cooled engines: what the thermostat holds. */
  readonly coolant_c?: number;
}

/** Limits for a start, each from a published source named in `origins`. */
export interface StartLimits {
  /** Engine temperature below which the maker requires preheat. */
  readonly no_preheat_c: number;
  /** Highest oil temperature. */
  readonly oil_max_c: number;
  /** Hub temperature below which it needs heat of its own; only for constant-speed propellers. */
  readonly hub_c?: number;
}

/**
 * Where each number comes from. A key is the path of a number or of a group above it ("bodies.crankcase", "cowl");
 * the nearest one counts.
 */
export type Origins = Readonly<Record<string, string>>;
