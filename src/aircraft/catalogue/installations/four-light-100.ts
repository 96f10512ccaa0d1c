import type { Installation } from "../../description.js";
import { usualClearances } from "../fits.js";
import { scaledInstallation } from "../scaled.js";
import { FIREWALL_LEAD_ACID, METAL_TWO_BLADE } from "./propellers-batteries.js";

export const FOUR_LIGHT_100: Installation = scaledInstallation(
  {
    massRatio: 85 / 120,
    cylinders: 4,
    cowlRatio: 0.85,
    origin: "dry mass 77-86 kg of the 100 hp class, type certificates, from memory",
  },
  {
    id: "four-light-100",
    name: "four-cylinder opposed, 65-115 hp, carburettor, fixed-pitch propeller",
    displacement_l: 3.3,
    compression_ratio: 7.0,
    oil: { quantity_l: 5.0, oil_id: "sae-15w-50" },
    propeller: METAL_TWO_BLADE,
    battery: FIREWALL_LEAD_ACID,
    cranking: {
      system_v: 12,
      stall_torque_nm: 330,
      no_load_rpm: 255,
      starter_resistance_ohm: 0.012,
      speed_min_rpm: 60,
    },
    clearances: usualClearances(103, 50),
    fuel: { grade: "avgas", reid_kpa: 38 },
    shut_down: { oil_rise_k: 67, oil_most_c: 85, heads_rise_k: 120, barrels_rise_k: 85 },
    limits: { no_preheat_c: -7, oil_max_c: 107 },
    limitOrigins: {
      "limits.no_preheat_c":
        "Continental SIL 03-1 and IO-240 manual 4-5.1.1.1: preheat if exposed at or below 20 °F (-7 °C) for two hours",
      "limits.oil_max_c": "225 °F (107 °C), maker's figure of the class, from memory",
    },
  },
);
