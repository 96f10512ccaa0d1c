import type { Installation } from "../../description.js";
import { usualClearances } from "../fits.js";
import { START_ORIGINS } from "../start-origins.js";
import { FIREWALL_LEAD_ACID } from "./propellers-batteries.js";

const FITTED = "fitted to heating runs from common practice, no published source";
const JUDGED = "project judgement";

/** The installation that the others are scaled from, because it is the one with heating runs to fit. */
export const FOUR_CARBURETTOR_160: Installation = {
  id: "four-carburettor-160",
  name: "four-cylinder opposed, 150-180 hp, carburettor, fixed-pitch propeller",
  cooling: "air",
  lubrication: "wet-sump",
  cylinders: 4,
  displacement_l: 5.5,
  compression_ratio: 8.5,
  bodies: {
    sump: { heat_capacity_j_per_k: 3500, area_m2: 0.22, height_m: 0.15 },
    crankcase: { heat_capacity_j_per_k: 17_600, area_m2: 1.15, height_m: 0.25 },
    crankshaft: { heat_capacity_j_per_k: 11_300, area_m2: 0, height_m: 0.1 },
    barrels: { heat_capacity_j_per_k: 12_300, area_m2: 0.7, height_m: 0.15 },
    heads: { heat_capacity_j_per_k: 23_000, area_m2: 1.4, height_m: 0.2 },
    accessories: { heat_capacity_j_per_k: 10_100, area_m2: 0.35, height_m: 0.15 },
  },
  oil: { quantity_l: 5.5, oil_id: "sae-15w-50" },
  contacts: {
    sump_oil_w_per_k: 37,
    sump_crankcase_w_per_k: 0.95,
    oil_crankcase_w_per_k: 1.9,
    oil_crankshaft_w_per_k: 1.15,
    crankcase_crankshaft_w_per_k: 8.4,
    crankcase_barrels_w_per_k: 8.3,
    barrels_heads_w_per_k: 35,
    crankcase_accessories_w_per_k: 5.4,
    crankshaft_hub_w_per_k: 3.0,
  },
  cowl: {
    skin_area_m2: 2.0,
    skin_heat_capacity_j_per_k: 5000,
    length_m: 1.0,
    inlet_area_m2: 0.09,
    outlet_area_m2: 0.1,
    stack_height_m: 0.5,
    emissivity: 0.9,
  },
  propeller: {
    constant_speed: false,
    hub_heat_capacity_j_per_k: 4600,
    hub_area_m2: 0.14,
    blades: 2,
    blade_perimeter_m: 0.26,
    blade_section_m2: 0.0032,
    blade_conductivity_w_per_m_k: 170,
  },
  battery: FIREWALL_LEAD_ACID,
  cranking: {
    system_v: 12,
    stall_torque_nm: 440,
    no_load_rpm: 220,
    starter_resistance_ohm: 0.011,
    speed_min_rpm: 60,
  },
  clearances: usualClearances(130, 60),
  fuel: { grade: "avgas", reid_kpa: 38 },
  shut_down: { oil_rise_k: 67, oil_most_c: 85, heads_rise_k: 120, barrels_rise_k: 85 },
  limits: { no_preheat_c: -6, oil_max_c: 118 },
  origins: {
    cylinders: "definition of the class",
    displacement_l: "definition of the class",
    compression_ratio: "usual of the class, from memory",
    bodies: `${FITTED}; heat stores in all by mass: 120 kg dry, half aluminium, half steel, 0.65 kJ/kgK`,
    oil: "typical sump of the class, from memory",
    contacts: FITTED,
    "contacts.barrels_heads_w_per_k": `${JUDGED}: screwed and shrunk joint, small against the flange below it`,
    "contacts.crankshaft_hub_w_per_k": `${JUDGED}: flange joint in series with the crank nose`,
    cowl: `${FITTED}; skin area and emissivity: ${JUDGED}`,
    propeller: `${JUDGED}, typical two-blade metal propeller`,
    battery: FITTED,
    ...START_ORIGINS,
    "limits.no_preheat_c":
      "Lycoming Service Instruction 1505 (1 Jul 2002): preheat required below +10 °F (-12 °C), +20 °F (-6 °C) for the -76 series; Cessna 172S NAV III POH Supplement 8: engine below -6 °C; the stricter figure is taken",
    "limits.oil_max_c": "245 °F (118 °C), maker's figure as carried by trade articles",
  },
};
