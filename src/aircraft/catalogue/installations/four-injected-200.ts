import type { Installation } from "../../description.js";
import { usualClearances } from "../fits.js";
import { scaledInstallation } from "../scaled.js";
import { AFT_LEAD_ACID, CONSTANT_SPEED_TWO_BLADE } from "./propellers-batteries.js";

export const FOUR_INJECTED_200: Installation = scaledInstallation(
  {
    massRatio: 133 / 120,
    cylinders: 4,
    cowlRatio: 1,
    origin: "dry mass 133 kg of the 200 hp class, type certificates, from memory",
  },
  {
    id: "four-injected-200",
    name: "four-cylinder opposed, 180-210 hp, injection, constant-speed propeller",
    displacement_l: 5.9,
    compression_ratio: 8.7,
    oil: { quantity_l: 7.0, oil_id: "sae-15w-50" },
    propeller: CONSTANT_SPEED_TWO_BLADE,
    battery: AFT_LEAD_ACID,
    cranking: {
      system_v: 24,
      stall_torque_nm: 440,
      no_load_rpm: 235,
      starter_resistance_ohm: 0.036,
      speed_min_rpm: 60,
    },
    clearances: usualClearances(130, 60),
    fuel: { grade: "avgas", reid_kpa: 38 },
    shut_down: { oil_rise_k: 67, oil_most_c: 85, heads_rise_k: 120, barrels_rise_k: 85 },
    limits: { no_preheat_c: -6, oil_max_c: 118, hub_c: -25 },
    limitOrigins: {
      "limits.no_preheat_c":
        "Lycoming Service Instruction 1505 (1 Jul 2002): +10 °F (-12 °C), +20 °F (-6 °C) for the -76 series; the stricter figure is taken for the whole class",
      "limits.oil_max_c": "245 °F (118 °C), maker's figure as carried by trade articles",
      "limits.hub_c":
        "An-2 flight manual (1984): below -25 °C the propeller hub is heated by a duct of its own",
    },
  },
);
