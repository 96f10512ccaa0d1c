import type { Installation } from "../../description.js";
import { scaledInstallation } from "../scaled.js";
import { COMPOSITE_TWO_BLADE, LIGHT_LITHIUM } from "./propellers-batteries.js";

const SCALED = scaledInstallation(
  {
    massRatio: 48 / 120,
    cylinders: 2,
    cowlRatio: 0.5,
    origin: "dry mass about 45-55 kg of two-cylinder four-strokes, from memory",
  },
  {
    id: "two-light-60",
    name: "two-cylinder opposed four-stroke, 45-80 hp, oil tank, fixed-pitch propeller",
    displacement_l: 2.0,
    oil: { quantity_l: 2.8, oil_id: "sae-15w-50" },
    propeller: COMPOSITE_TWO_BLADE,
    battery: LIGHT_LITHIUM,
    limits: { no_preheat_c: -7, oil_max_c: 110 },
    limitOrigins: {
      "limits.no_preheat_c":
        "no figure of a maker of this class known: Continental SIL 03-1 (20 °F, -7 °C) taken; ask the engine's maker",
      "limits.oil_max_c": "project judgement, ask the engine's maker",
    },
  },
);

/** Two cylinders with the oil in a tank on the firewall: heat under the tank hardly reaches the engine. */
export const TWO_LIGHT_60: Installation = {
  ...SCALED,
  lubrication: "dry-tank",
  contacts: {
    ...SCALED.contacts,
    sump_crankcase_w_per_k: 0.2,
    oil_crankcase_w_per_k: 0.1,
    oil_crankshaft_w_per_k: 0.05,
  },
  origins: {
    ...SCALED.origins,
    "contacts.sump_crankcase_w_per_k": "project judgement: hoses and bracket only",
    "contacts.oil_crankcase_w_per_k": "project judgement: residual oil only",
    "contacts.oil_crankshaft_w_per_k": "project judgement: residual oil only",
  },
};
