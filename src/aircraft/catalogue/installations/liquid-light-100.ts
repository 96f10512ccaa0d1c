import type { Clearances, Installation } from "../../description.js";
import { scaledInstallation } from "../scaled.js";
import { COMPOSITE_THREE_BLADE, LIGHT_LITHIUM } from "./propellers-batteries.js";

/** Short pistons in coated light-alloy barrels: both sides shrink, so the clearance is small and changes little. */
const ALUMINIUM_BARRELS: Clearances = {
  bearing: {
    diameter_mm: 46,
    clearance_mm: 0.05,
    outer_metal: "aluminium-a356-t6",
    inner_metal: "steel-4340",
  },
  piston: {
    diameter_mm: 84,
    clearance_mm: 0.06,
    outer_metal: "aluminium-a356-t6",
    inner_metal: "aluminium-4032-t6",
  },
};

const SCALED = scaledInstallation(
  {
    massRatio: 62 / 120,
    cylinders: 4,
    cowlRatio: 0.7,
    origin: "dry mass about 60 kg of the liquid-cooled 100 hp class, from memory",
  },
  {
    id: "liquid-light-100",
    name: "four-cylinder, liquid-cooled heads, geared, 80-115 hp, oil tank",
    displacement_l: 1.3,
    compression_ratio: 9.5,
    oil: { quantity_l: 3.0, oil_id: "sae-15w-50" },
    propeller: COMPOSITE_THREE_BLADE,
    battery: LIGHT_LITHIUM,
    cranking: {
      system_v: 12,
      stall_torque_nm: 100,
      no_load_rpm: 520,
      starter_resistance_ohm: 0.018,
      speed_min_rpm: 220,
    },
    clearances: ALUMINIUM_BARRELS,
    fuel: { grade: "mogas", reid_kpa: 55 },
    shut_down: { oil_rise_k: 60, oil_most_c: 95, heads_rise_k: 90, barrels_rise_k: 75, coolant_c: 80 },
    limits: { no_preheat_c: -10, oil_max_c: 130 },
    limitOrigins: {
      "battery.cold_cranking_a":
        "usual of light lithium packs, from memory; makers print more, by tests of their own",
      "cranking.speed_min_rpm": "220 rpm, capacitor ignition of this class, from memory",
      clearances: "light alloy barrels with a hard coat; bore, journal and clearances project judgement",
      fuel: "motor gasoline of summer grade left in the tank, 8 psi: lower end of a public article's 8 to 14 psi",
      "shut_down.coolant_c": "thermostat of the class, from memory",
      "limits.no_preheat_c":
        "makers of this class allow starts to -25 °C (from memory of a Rotax 912 operator's manual, chapter 10); project judgement keeps 15 K",
      "limits.oil_max_c": "130 °C, Rotax 912 operator's manual, from memory",
    },
  },
);

/** Liquid-cooled heads, air-cooled barrels, oil in a tank. */
export const LIQUID_LIGHT_100: Installation = {
  ...SCALED,
  cooling: "liquid",
  lubrication: "dry-tank",
  bodies: { ...SCALED.bodies, coolant: { heat_capacity_j_per_k: 11_000, area_m2: 0.6, height_m: 0.2 } },
  contacts: {
    ...SCALED.contacts,
    sump_crankcase_w_per_k: 0.2,
    oil_crankcase_w_per_k: 0.1,
    oil_crankshaft_w_per_k: 0.05,
    coolant_heads_w_per_k: 40,
    coolant_barrels_w_per_k: 0,
  },
  origins: {
    ...SCALED.origins,
    "bodies.coolant": "3 l of half glycol, half water (3.4 kJ/kgK) and a light radiator; project judgement",
    contacts: `${SCALED.origins.contacts}; oil tank and coolant jackets: project judgement`,
  },
};
