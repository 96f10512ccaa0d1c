import type { Installation, Kit } from "../aircraft/index.js";
import { type StricterLimits, temperatureCriteria } from "./criteria.js";
import type { Criterion } from "./criterion.js";
import { type StartOptions, startCriteria } from "./start-criteria.js";

/** Everything that must hold for a start: temperatures of parts, then what a start needs beyond them. */
export function allCriteria(
  installation: Installation,
  kit: Kit,
  stricter: StricterLimits = {},
  options: StartOptions = {},
): Criterion[] {
  return [...temperatureCriteria(installation, kit, stricter), ...startCriteria(installation, options)];
}
