import type { Installation } from "../../description.js";
import { usualClearances } from "../fits.js";
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
    compression_ratio: 9.5,
    oil: { quantity_l: 2.8, oil_id: "sae-15w-50" },
    propeller: COMPOSITE_TWO_BLADE,
    battery: LIGHT_LITHIUM,
    cranking: {
      system_v: 12,
      stall_torque_nm: 160,
      no_load_rpm: 400,
      starter_resistance_ohm: 0.016,
      speed_min_rpm: 120,
    },
    clearances: usualClearances(105, 50),
    fuel: { grade: "mogas", reid_kpa: 55 },
    shut_down: { oil_rise_k: 60, oil_most_c: 90, heads_rise_k: 100, barrels_rise_k: 80 },
    limits: { no_preheat_c: -7, oil_max_c: 110 },
    limitOrigins: {
      "battery.cold_cranking_a":
        "usual of light lithium packs, from memory; makers print more, by tests of their own",
      "cranking.speed_min_rpm":
        "120 rpm, upper end of 30 to 120 rpm (SAE J2438, second-hand): electronic ignition of unknown threshold; project judgement",
      fuel: "motor gasoline of summer grade left in the tank, 8 psi: lower end of a public article's 8 to 14 psi",
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
