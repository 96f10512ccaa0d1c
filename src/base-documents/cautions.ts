import type { Caution } from "../aircraft/index.js";
import { sourced } from "../findings/index.js";

/** What can hurt when a base shares its power, its hangar and its people. */
export const BASE_CAUTIONS = {
  circuit: sourced(
    "circuit-shared",
    {},
    "common practice, no published source; local electrical code decides",
  ),
  generator: sourced(
    "generator-outside",
    {},
    "common practice, no published source; the maker's instructions decide",
  ),
  moving: sourced(
    "moving-aircraft",
    {},
    "common practice, no published source; the handbook and hangar rules decide",
  ),
} as const satisfies Record<string, Caution>;
