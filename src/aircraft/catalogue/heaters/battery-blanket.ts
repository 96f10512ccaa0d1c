import { CAUTIONS } from "../../cautions.js";
import type { Heater } from "../../kit.js";
import { SHORTEST_TOLD } from "./shortest-told.js";

/** Heating blanket or plate on the battery. */
export const BATTERY_BLANKET_60: Heater = {
  id: "battery-blanket-60",
  name: "battery blanket, 60 W",
  basis: { kind: "estimated" },
  elements: [
    {
      name: "blanket",
      power_w: 60,
      target: "battery",
      contact_w_per_k: 4,
      back_w_per_k: 0.3,
      heat_capacity_j_per_k: 500,
      area_cm2: 800,
      surface_max_c: 60,
      limiter: { senses: "battery", set_c: 20, width_k: 2 },
    },
  ],
  least_on_h: 0.5,
  longest_on_h: 24,
  attended: false,
  runs: "anywhere",
  cautions: [CAUTIONS.batteryHeat, CAUTIONS.cords],
  origins: {
    elements: "common practice, no published source",
    "elements.0.surface_max_c": "project judgement: plastic battery case",
    least_on_h: SHORTEST_TOLD,
    longest_on_h: "project judgement",
  },
};
