import type { Said } from "../findings/index.js";
import type { Site } from "../simulation/index.js";
import { kelvinFromCelsius } from "../units/index.js";

/** [m] snow-covered fields, pack ice, beach: smoother ground than most, so more wind at the cowl (properties/wind). */
const USUAL_ROUGHNESS = 0.005;
/** [°C] a hangar of which nothing is known, for trying it as a way out; project judgement. */
const USUAL_HANGAR = 5;

/** Ground and hangar where the aircraft stands; what is not known of them is taken, and noted. */
export function siteOf(
  { hangarC, roughness }: { readonly hangarC: number | undefined; readonly roughness: number | undefined },
  assumptions: Said[],
): Site {
  if (hangarC === undefined) {
    assumptions.push(
      `No hangar is described: where one is tried as a way out, its air is taken at ${USUAL_HANGAR} °C.`,
    );
  }
  if (roughness === undefined) {
    assumptions.push(
      `Ground upwind is taken as snow-covered fields (roughness length ${USUAL_ROUGHNESS} m), where much of the wind reaches the cowl.`,
    );
  }
  return {
    tempHangar: kelvinFromCelsius(hangarC ?? USUAL_HANGAR),
    roughness: roughness ?? USUAL_ROUGHNESS,
  };
}
