import { type Finding, finding } from "../findings/index.js";
import type { Site } from "../simulation/index.js";
import { kelvinFromCelsius } from "../units/index.js";

/** [m] snow-covered fields, pack ice, beach: smoother ground than most, so more wind at the cowl (properties/wind). */
const USUAL_ROUGHNESS = 0.005;
/** [°C] a hangar of which nothing is known, for trying it as a way out; project judgement. */
const USUAL_HANGAR = 5;

/** Ground and hangar where the aircraft stands; what is not known of them is taken, and noted. */
export function siteOf(
  { hangarC, roughness }: { readonly hangarC: number | undefined; readonly roughness: number | undefined },
  assumptions: Finding[],
): Site {
  if (hangarC === undefined) {
    assumptions.push(finding("hangar-taken", { air_c: USUAL_HANGAR }));
  }
  if (roughness === undefined) {
    assumptions.push(finding("ground-taken", { roughness_m: USUAL_ROUGHNESS }));
  }
  return {
    tempHangar: kelvinFromCelsius(hangarC ?? USUAL_HANGAR),
    roughness: roughness ?? USUAL_ROUGHNESS,
  };
}
