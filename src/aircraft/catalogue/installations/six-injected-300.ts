import type { Installation } from "../../description.js";
import { usualClearances } from "../fits.js";
import { scaledInstallation } from "../scaled.js";
import { AFT_LEAD_ACID, CONSTANT_SPEED_THREE_BLADE } from "./propellers-batteries.js";

export const SIX_INJECTED_300: Installation = scaledInstallation(
  {
    massRatio: 210 / 120,
    cylinders: 6,
    cowlRatio: 1.3,
    origin: "dry mass about 210 kg of the 300 hp class, type certificates, from memory",
  },
  {
    id: "six-injected-300",
    name: "six-cylinder opposed, 260-310 hp, injection, constant-speed propeller",
    displacement_l: 9.0,
    compression_ratio: 8.5,
    oil: { quantity_l: 11.5, oil_id: "sae-15w-50" },
    propeller: CONSTANT_SPEED_THREE_BLADE,
    battery: AFT_LEAD_ACID,
    cranking: {
      system_v: 24,
      stall_torque_nm: 640,
      no_load_rpm: 200,
      starter_resistance_ohm: 0.03,
      speed_min_rpm: 60,
    },
    clearances: usualClearances(133, 60),
    fuel: { grade: "avgas", reid_kpa: 38 },
    shut_down: { oil_rise_k: 67, oil_most_c: 85, heads_rise_k: 120, barrels_rise_k: 85 },
    limits: { no_preheat_c: -7, oil_max_c: 115, hub_c: -25 },
    limitOrigins: {
      "limits.no_preheat_c":
        "Continental SIL 03-1 and IO-240 manual 4-5.1.1.1: preheat if exposed at or below 20 °F (-7 °C) for two hours",
      "limits.oil_max_c": "240 °F (115 °C), maker's figure of the class, from memory",
      "limits.hub_c":
        "An-2 flight manual (1984): below -25 °C the propeller hub is heated by a duct of its own",
    },
  },
);
