import type { Installation } from "../../description.js";
import { forgedPiston } from "../fits.js";
import { scaledInstallation } from "../scaled.js";
import { AFT_LEAD_ACID_LARGE, CONSTANT_SPEED_TWO_BLADE } from "./propellers-batteries.js";

const SCALED = scaledInstallation(
  {
    massRatio: 215 / 120,
    cylinders: 9,
    cowlRatio: 1.6,
    origin: "dry mass about 214 kg of the nine-cylinder 360 hp class, from memory",
  },
  {
    id: "radial-nine-360",
    name: "nine-cylinder radial, 260-400 hp, oil tank, constant-speed propeller",
    displacement_l: 10.2,
    compression_ratio: 6.3,
    oil: { quantity_l: 16, oil_id: "sae-50" },
    propeller: CONSTANT_SPEED_TWO_BLADE,
    battery: AFT_LEAD_ACID_LARGE,
    cranking: {
      system_v: 24,
      stall_torque_nm: 760,
      no_load_rpm: 160,
      starter_resistance_ohm: 0.028,
      speed_min_rpm: 60,
    },
    clearances: { piston: forgedPiston(105) },
    fuel: { grade: "avgas", reid_kpa: 38 },
    shut_down: { oil_rise_k: 60, oil_most_c: 65, heads_rise_k: 110, barrels_rise_k: 80 },
    limits: { no_preheat_c: 5, oil_max_c: 85, hub_c: -25 },
    limitOrigins: {
      "limits.no_preheat_c":
        "An-2 flight manual (1984), ASz-62IR: preheat at +5 °C and below; taken for radials on straight-grade oil",
      "limits.oil_max_c": "project judgement, ask the engine's maker",
      "limits.hub_c":
        "An-2 flight manual (1984): below -25 °C the propeller hub is heated by a duct of its own",
    },
  },
);

/** Oil in a tank behind the engine; wide open cowl front. */
export const RADIAL_NINE_360: Installation = {
  ...SCALED,
  lubrication: "dry-tank",
  cowl: { ...SCALED.cowl, inlet_area_m2: 0.35, outlet_area_m2: 0.2 },
  contacts: {
    ...SCALED.contacts,
    sump_crankcase_w_per_k: 0.3,
    oil_crankcase_w_per_k: 0.2,
    oil_crankshaft_w_per_k: 0.1,
  },
  origins: {
    ...SCALED.origins,
    "shut_down.oil_most_c": "upper end of 40 to 65 °C oil-in of the M-14P manual p. 31",
    cowl: `${SCALED.origins.cowl}; front opening with closed shutters, project judgement`,
    contacts: `${SCALED.origins.contacts}; oil tank: project judgement`,
  },
};
