import { CAUTIONS } from "../../cautions.js";
import type { Heater } from "../../kit.js";
import { SHORTEST_TOLD } from "./shortest-told.js";

/** Small fan heater standing in the cowl opening. */
export const IN_COWL_400: Heater = {
  id: "in-cowl-400",
  name: "small electric heater in the cowl, 400 W",
  basis: { kind: "estimated" },
  elements: [
    {
      name: "heater",
      power_w: 400,
      target: "cowl_air",
      contact_w_per_k: 4,
      back_w_per_k: 0,
      heat_capacity_j_per_k: 800,
      area_cm2: 400,
      surface_max_c: 200,
      limiter: { senses: "cowl_air", set_c: 60, width_k: 3 },
    },
  ],
  stirring: 1.3,
  least_on_h: 0.5,
  longest_on_h: 2,
  attended: true,
  runs: "anywhere",
  rejected: CAUTIONS.inCowlRejected,
  cautions: [
    CAUTIONS.inCowlRejected,
    CAUTIONS.superficial,
    CAUTIONS.inspectDaily,
    CAUTIONS.hangarVapour,
    CAUTIONS.cords,
  ],
  origins: {
    elements: "common practice, no published source",
    "elements.0.surface_max_c": "project judgement: hoses and covers may touch it",
    stirring: "project judgement, small fan",
    least_on_h: SHORTEST_TOLD,
    longest_on_h: "project judgement: somebody has to stay beside it",
  },
};
