import type { Battery, Propeller } from "../../description.js";

const METAL_BLADE = { blade_perimeter_m: 0.26, blade_section_m2: 0.0032, blade_conductivity_w_per_m_k: 170 };

/** Wood or composite blades hardly conduct: k about 0.3 W/mK. */
export const COMPOSITE_TWO_BLADE: Propeller = {
  constant_speed: false,
  hub_heat_capacity_j_per_k: 2500,
  hub_area_m2: 0.08,
  blades: 2,
  blade_perimeter_m: 0.24,
  blade_section_m2: 0.003,
  blade_conductivity_w_per_m_k: 0.3,
};

export const COMPOSITE_THREE_BLADE: Propeller = { ...COMPOSITE_TWO_BLADE, blades: 3 };

export const CONSTANT_SPEED_TWO_BLADE: Propeller = {
  constant_speed: true,
  hub_heat_capacity_j_per_k: 14_000,
  hub_area_m2: 0.2,
  blades: 2,
  ...METAL_BLADE,
};

export const CONSTANT_SPEED_THREE_BLADE: Propeller = {
  ...CONSTANT_SPEED_TWO_BLADE,
  hub_heat_capacity_j_per_k: 20_000,
  hub_area_m2: 0.25,
  blades: 3,
};

export const METAL_TWO_BLADE: Propeller = {
  constant_speed: false,
  hub_heat_capacity_j_per_k: 4600,
  hub_area_m2: 0.14,
  blades: 2,
  ...METAL_BLADE,
};

export const FIREWALL_LEAD_ACID: Battery = {
  chemistry: "lead-acid",
  place: "firewall",
  heat_capacity_j_per_k: 8800,
  cowl_w_per_k: 0.8,
  outside_w_per_k: 0.9,
  sealed: false,
  capacity_ah: 25,
  cold_cranking_a: 300,
  assumed_charge: 0.9,
};

/** 12 V for six cylinders. */
export const FIREWALL_LEAD_ACID_LARGE: Battery = {
  ...FIREWALL_LEAD_ACID,
  heat_capacity_j_per_k: 11_000,
  capacity_ah: 35,
  cold_cranking_a: 400,
};

/** 24 V, behind the baggage bay: no heat from the engine. */
export const AFT_LEAD_ACID: Battery = {
  ...FIREWALL_LEAD_ACID,
  place: "aft",
  cowl_w_per_k: 0,
  outside_w_per_k: 1.2,
  sealed: true,
  capacity_ah: 17,
  cold_cranking_a: 260,
};

/** 24 V for large engines. */
export const AFT_LEAD_ACID_LARGE: Battery = {
  ...AFT_LEAD_ACID,
  heat_capacity_j_per_k: 16_000,
  capacity_ah: 28,
  cold_cranking_a: 400,
};

export const LIGHT_LITHIUM: Battery = {
  chemistry: "lithium-iron-phosphate",
  place: "firewall",
  heat_capacity_j_per_k: 2500,
  cowl_w_per_k: 0.4,
  outside_w_per_k: 0.4,
  sealed: true,
  capacity_ah: 8,
  cold_cranking_a: 300,
  assumed_charge: 0.9,
};
