import type { Installation } from "../../description.js";
import { scaledInstallation } from "../scaled.js";
import { COMPOSITE_THREE_BLADE, LIGHT_LITHIUM } from "./propellers-batteries.js";

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
    oil: { quantity_l: 3.0, oil_id: "sae-15w-50" },
    propeller: COMPOSITE_THREE_BLADE,
    battery: LIGHT_LITHIUM,
    limits: { no_preheat_c: -10, oil_max_c: 130 },
    limitOrigins: {
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
