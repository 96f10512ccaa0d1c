import type { Cover, Heater, Installation } from "../../src/aircraft/index.js";
import { installationById } from "../../src/aircraft/index.js";

/**
 * A liquid-cooled car engine of about 1.5 l and 100 kg in its bay, described as far as the published runs describe
 * theirs. It is not in the catalogue; it shows that another engine is a change of description, not of code.
 */
export const CAR_ENGINE: Installation = {
  ...installationById("liquid-light-100"),
  id: "car-engine-1500",
  name: "car engine, 1.5 l, aluminium block",
  lubrication: "wet-sump",
  bodies: {
    sump: { heat_capacity_j_per_k: 2000, area_m2: 0.2, height_m: 0.15 },
    crankcase: { heat_capacity_j_per_k: 14_000, area_m2: 0.5, height_m: 0.25 },
    crankshaft: { heat_capacity_j_per_k: 8000, area_m2: 0, height_m: 0.1 },
    barrels: { heat_capacity_j_per_k: 6000, area_m2: 0.25, height_m: 0.2 },
    heads: { heat_capacity_j_per_k: 9000, area_m2: 0.35, height_m: 0.15 },
    accessories: { heat_capacity_j_per_k: 20_000, area_m2: 0.5, height_m: 0.25 },
    coolant: { heat_capacity_j_per_k: 14_000, area_m2: 0.15, height_m: 0.3 },
  },
  oil: { quantity_l: 3.5, oil_id: "sae-15w-50" },
  contacts: {
    ...installationById("liquid-light-100").contacts,
    sump_crankcase_w_per_k: 4,
    oil_crankcase_w_per_k: 3,
    oil_crankshaft_w_per_k: 1,
    crankcase_crankshaft_w_per_k: 10,
    crankcase_barrels_w_per_k: 60,
    barrels_heads_w_per_k: 60,
    crankcase_accessories_w_per_k: 8,
    crankshaft_hub_w_per_k: 0.01,
    coolant_heads_w_per_k: 60,
    coolant_barrels_w_per_k: 60,
  },
  shut_down: { oil_rise_k: 100, oil_most_c: 95, heads_rise_k: 60, barrels_rise_k: 60, coolant_c: 88 },
  cowl: {
    skin_area_m2: 3.5,
    skin_heat_capacity_j_per_k: 12_000,
    length_m: 1,
    inlet_area_m2: 0.17,
    outlet_area_m2: 0.35,
    stack_height_m: 0.5,
    emissivity: 0.9,
  },
};

export function coolantHeater(power: number): Heater {
  return {
    id: "coolant",
    name: `block heater, ${power} W`,
    basis: { kind: "measured", runs: 1 },
    elements: [
      {
        name: "element",
        power_w: power,
        target: "coolant",
        contact_w_per_k: 60,
        back_w_per_k: 0,
        heat_capacity_j_per_k: 100,
        area_cm2: 60,
        surface_max_c: 150,
      },
    ],
    least_on_h: 0,
    runs: "anywhere",
    longest_on_h: 24,
    attended: false,
    cautions: [],
    origins: { "": "description of the published runs" },
  };
}

/** 30 mm of foam all round, nothing left open. */
export const FOAM_30_MM: Cover = {
  id: "foam",
  name: "30 mm polyurethane foam boards all round",
  resistance_m2k_per_w: 0.03 / 0.025,
  skin_share: 1,
  inlet_left: 0.002,
  outlet_left: 0.002,
  hub_left: 1,
  cautions: [],
  origins: { "": "thickness from the published run; k = 0.025 W/mK of PU foam, from memory" },
};
