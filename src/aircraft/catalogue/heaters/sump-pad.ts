import { CAUTIONS } from "../../cautions.js";
import type { Heater, HeaterBasis } from "../../kit.js";
import { MEASURED_RUNS } from "./measured-runs.js";
import { SHORTEST_TOLD } from "./shortest-told.js";

/** Silicone pad glued under the oil sump. */
function sumpPad(power: number, area: number, basis: HeaterBasis): Heater {
  return {
    id: `sump-pad-${power}`,
    name: `silicone sump pad, ${power} W`,
    basis,
    elements: [
      {
        name: "pad",
        power_w: power,
        target: "sump",
        contact_w_per_k: 1.1 * (area / 160),
        back_w_per_k: 6 * (area / 10_000),
        heat_capacity_j_per_k: 1.1 * area,
        area_cm2: area,
        surface_max_c: 260,
      },
    ],
    least_on_h: 0.5,
    longest_on_h: 24,
    attended: false,
    runs: "anywhere",
    cautions: [CAUTIONS.sumpOnly, CAUTIONS.inspectDaily, CAUTIONS.cords],
    origins: {
      ...(basis.kind === "measured" ? { basis: MEASURED_RUNS } : {}),
      elements:
        "contact fitted to heating runs from common practice (220 W pad), scaled by area; back loss and heat capacity: project judgement (2 mm silicone rubber)",
      "elements.0.power_w": "definition of the class",
      "elements.0.area_cm2": "typical pad of the class, from memory",
      "elements.0.surface_max_c":
        "about 45 K below the lowest hot-surface ignition of lubricating oil, 580 °F (304 °C), University of Washington vehicle-fire project; project judgement",
      least_on_h: SHORTEST_TOLD,
      longest_on_h: "Continental SIL 03-1: not more than 24 h before flight; from memory",
    },
  };
}

const SCALED: HeaterBasis = { kind: "scaled", from: "sump-pad-220" };

export const SUMP_PADS: readonly Heater[] = [
  sumpPad(100, 90, SCALED),
  sumpPad(220, 160, { kind: "measured", runs: 2 }),
  sumpPad(300, 220, SCALED),
];
