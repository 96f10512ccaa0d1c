import { CAUTIONS } from "../../cautions.js";
import type { Heater, HeaterBasis, HeaterElement } from "../../kit.js";
import { MEASURED_RUNS } from "./measured-runs.js";
import { SHORTEST_TOLD } from "./shortest-told.js";

/** Bands or probes on every cylinder with sump and case pads: the whole engine from several sides. */
function wholeEngine(cylinders: number, basis: HeaterBasis): Heater {
  return {
    id: `whole-engine-${cylinders}`,
    name: `whole-engine electric set for ${cylinders} cylinders: bands, sump and case pads`,
    basis,
    cylinders,
    elements: [
      element("bands", 50 * cylinders, "barrels", 1.2 * cylinders, 25 * cylinders),
      element("sump pad", 150, "sump", 1.0, 140),
      element("case pad", 50, "crankcase", 0.5, 60),
    ],
    least_on_h: 0.5,
    longest_on_h: 24,
    attended: false,
    runs: "anywhere",
    cautions: [CAUTIONS.inspectDaily, CAUTIONS.cords],
    origins: {
      ...(basis.kind === "measured" ? { basis: MEASURED_RUNS } : {}),
      cylinders: "definition of the set",
      elements:
        "powers: common practice, no published source; contacts: as the sump pad by area, bands clamped on metal; project judgement",
      least_on_h: SHORTEST_TOLD,
      longest_on_h: "Continental SIL 03-1: not more than 24 h before flight; from memory",
    },
  };
}

function element(
  name: string,
  power: number,
  target: HeaterElement["target"],
  contact: number,
  area: number,
): HeaterElement {
  return {
    name,
    power_w: power,
    target,
    contact_w_per_k: contact,
    back_w_per_k: 6 * (area / 10_000),
    heat_capacity_j_per_k: 1.3 * area,
    area_cm2: area,
    surface_max_c: 260,
  };
}

const SCALED: HeaterBasis = { kind: "scaled", from: "whole-engine-4" };

export const WHOLE_ENGINE_SETS: readonly Heater[] = [
  wholeEngine(2, SCALED),
  wholeEngine(4, { kind: "measured", runs: 1 }),
  wholeEngine(6, { kind: "measured", runs: 2 }),
  wholeEngine(9, SCALED),
];
