import type { Clearances, Fit } from "../description.js";

/** Clearance over diameter at 20 °C [1]: the tight end of new main bearings, 0.0025 in on 2.4 in. */
const BEARING_RATIO = 0.00105;
/** The same of a forged piston's skirt. */
const PISTON_RATIO = 0.0023;

export const CLEARANCES_ORIGIN =
  "bearing: tight end of 0.0025 to 0.0055 in new on about 60 mm, from memory of an overhaul table of limits; piston: " +
  "0.23 % of the bore for forged pistons, project judgement; bore and journal of the class, from memory; alloys: usual " +
  "for the part, not one maker's";

/** Plain main bearings in an aluminium case on a steel shaft, forged piston in a nitrided steel barrel. */
export function usualClearances(boreMm: number, journalMm: number): Clearances {
  return {
    bearing: {
      diameter_mm: journalMm,
      clearance_mm: micrometres(journalMm * BEARING_RATIO),
      outer_metal: "aluminium-a356-t6",
      inner_metal: "steel-4340",
    },
    piston: forgedPiston(boreMm),
  };
}

/** For engines whose main bearings are rolling ones. */
export function forgedPiston(boreMm: number): Fit {
  return {
    diameter_mm: boreMm,
    clearance_mm: micrometres(boreMm * PISTON_RATIO),
    outer_metal: "steel-nitriding",
    inner_metal: "aluminium-4032-t6",
  };
}

function micrometres(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}
