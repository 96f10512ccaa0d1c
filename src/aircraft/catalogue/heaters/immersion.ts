import { CAUTIONS } from "../../cautions.js";
import type { Heater } from "../../kit.js";
import { SHORTEST_TOLD } from "./shortest-told.js";

/** Element screwed into the sump, bathed in oil. */
export const IMMERSION_250: Heater = {
  id: "immersion-250",
  name: "oil-sump immersion element, 250 W",
  basis: { kind: "estimated" },
  elements: [
    {
      name: "element",
      power_w: 250,
      target: "oil",
      contact_w_per_k: 4,
      back_w_per_k: 0,
      heat_capacity_j_per_k: 120,
      area_cm2: 160,
      in_oil: true,
      surface_max_c: 180,
      limiter: { senses: "oil", set_c: 75, width_k: 3 },
    },
  ],
  least_on_h: 0.5,
  longest_on_h: 24,
  attended: false,
  runs: "anywhere",
  cautions: [CAUTIONS.immersion, CAUTIONS.sumpOnly, CAUTIONS.inspectDaily, CAUTIONS.cords],
  origins: {
    elements:
      "US Army TM 1-1500-204-23-3: 250 W for tanks under 20 gal; area from 1.6 W/cm² (10 W/in²), the still-oil limit of Machinery Lubrication Nov-Dec 2016 p. 47",
    "elements.0.contact_w_per_k":
      "horizontal cylinder in warm oil, 250 W/m²K on 160 cm² (McAdams/Churchill-Chu), rounded; project judgement",
    "elements.0.heat_capacity_j_per_k": "project judgement, 0.25 kg of steel sheath",
    "elements.0.surface_max_c": "film coking above 200-230 °C, tribology texts, from memory; 20 K kept",
    "elements.0.limiter": "MIL-T-26025E 3.6: oil heater thermostat 170 °F (77 °C)",
    least_on_h: SHORTEST_TOLD,
    longest_on_h: "Continental SIL 03-1: not more than 24 h before flight; from memory",
  },
};
