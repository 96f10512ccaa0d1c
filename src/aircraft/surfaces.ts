import { freeConvectionCoefficient } from "../properties/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import type { Cowl } from "./description.js";

/** [K] at which the laminar free-convection law is anchored, see FluxLaw. */
const REFERENCE_DIFFERENCE = 10;
const REFERENCE_FILM_TEMP = kelvinFromCelsius(0);

/** [W/m2K] at 10 K between a body of this height [m] and the air under the cowl (Churchill & Chu 1975). */
export function coefficientOnBody(height: number): number {
  return freeConvectionCoefficient("vertical-plate", height, REFERENCE_DIFFERENCE, REFERENCE_FILM_TEMP);
}

/** [W/m2K] at 10 K between the air under the cowl and the inner side of the skin. */
export function coefficientInsideCowl(cowl: Cowl): number {
  return freeConvectionCoefficient(
    "vertical-plate",
    cowl.stack_height_m,
    REFERENCE_DIFFERENCE,
    REFERENCE_FILM_TEMP,
  );
}
