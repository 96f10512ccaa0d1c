import type { Installation } from "../../description.js";
import { usualClearances } from "../fits.js";
import { scaledInstallation } from "../scaled.js";
import { CONSTANT_SPEED_TWO_BLADE, FIREWALL_LEAD_ACID_LARGE } from "./propellers-batteries.js";

export const SIX_CARBURETTOR_230: Installation = scaledInstallation(
  {
    massRatio: 190 / 120,
    cylinders: 6,
    cowlRatio: 1.25,
    origin: "dry mass about 193 kg of the 230 hp class, type certificates, from memory",
  },
  {
    id: "six-carburettor-230",
    name: "six-cylinder opposed, 210-250 hp, carburettor, constant-speed propeller",
    displacement_l: 7.7,
    compression_ratio: 7.0,
    oil: { quantity_l: 11.0, oil_id: "sae-15w-50" },
    propeller: CONSTANT_SPEED_TWO_BLADE,
    battery: FIREWALL_LEAD_ACID_LARGE,
    cranking: {
      system_v: 12,
      stall_torque_nm: 580,
      no_load_rpm: 195,
      starter_resistance_ohm: 0.009,
      speed_min_rpm: 60,
    },
    clearances: usualClearances(127, 57),
    fuel: { grade: "avgas", reid_kpa: 38 },
    shut_down: { oil_rise_k: 67, oil_most_c: 85, heads_rise_k: 120, barrels_rise_k: 85 },
    limits: { no_preheat_c: -7, oil_max_c: 107, hub_c: -25 },
    limitOrigins: {
      "limits.no_preheat_c":
        "Continental SIL 03-1 and IO-240 manual 4-5.1.1.1: preheat if exposed at or below 20 °F (-7 °C) for two hours",
      "limits.oil_max_c": "225 °F (107 °C), maker's figure of the class, from memory",
      "limits.hub_c":
        "An-2 flight manual (1984): below -25 °C the propeller hub is heated by a duct of its own",
    },
  },
);
