import { sourced } from "../../findings/index.js";
import { CAUTIONS } from "../cautions.js";
import type { Cover } from "../kit.js";

const JUDGED = "project judgement";

export const COVERS: readonly Cover[] = [
  {
    id: "insulated-cover",
    name: "insulated cowl cover, fitted, with closed inlets",
    resistance_m2k_per_w: 0.35,
    skin_share: 0.9,
    inlet_left: 0.1,
    outlet_left: 0.4,
    hub_left: 1,
    cautions: [CAUTIONS.removeBeforeStart],
    origins: { "": `${JUDGED}: 12 mm of fibre fill, k about 0.035 W/mK` },
  },
  {
    id: "improvised-quilt",
    name: "improvised quilt over the cowl with inlets stuffed",
    resistance_m2k_per_w: 0.3,
    skin_share: 0.75,
    inlet_left: 0.18,
    outlet_left: 0.58,
    hub_left: 1,
    cautions: [
      sourced(
        "quilts-burn",
        {},
        "AC 91-13C (insulation must be fireproof and approved); wording from memory",
      ),
      CAUTIONS.removeBeforeStart,
    ],
    origins: { "": "fitted to heating runs from common practice, no published source" },
  },
  {
    id: "inlet-plugs",
    name: "inlet plugs",
    resistance_m2k_per_w: 0,
    skin_share: 0,
    inlet_left: 0.1,
    outlet_left: 1,
    hub_left: 1,
    cautions: [CAUTIONS.removeBeforeStart],
    origins: { "": JUDGED },
  },
  {
    id: "propeller-cover",
    name: "insulated propeller and spinner cover",
    resistance_m2k_per_w: 0,
    skin_share: 0,
    inlet_left: 1,
    outlet_left: 1,
    hub_left: 0.35,
    cautions: [CAUTIONS.removeBeforeStart],
    origins: { "": JUDGED },
  },
];
