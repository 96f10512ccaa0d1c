import type { Installation, PartName } from "../aircraft/index.js";
import { type Finding, finding } from "../findings/index.js";
import { GROUND_RUN_DOUBT } from "../planning/index.js";
import { GROUND_RUN_PARTS, groundRun } from "../starting/index.js";
import { celsiusFromKelvin, SECONDS_OF_MINUTE } from "../units/index.js";

export interface AfterGroundRun {
  /** [K] of the parts that were given and of those the run warms. */
  readonly temps: ReadonlyMap<string, number>;
  /** [K] standard deviation that the run alone brings. */
  readonly sd: number;
  /** What was assumed, with the caution that belongs to it. */
  readonly said: Finding;
}

/**
 * The engine after `duration` [s] of idling that ends at the start.
 * @param temps [K] before it; parts without one are at `tempOthers` [K]
 * @param tempAir [K] outside
 */
export function afterGroundRun(
  duration: number,
  installation: Installation,
  temps: ReadonlyMap<string, number>,
  tempOthers: number,
  tempAir: number,
): AfterGroundRun {
  const before = new Map<PartName, number>(temps as ReadonlyMap<PartName, number>);
  for (const part of GROUND_RUN_PARTS) {
    if (part === "coolant" && installation.bodies.coolant === undefined) continue;
    if (!before.has(part)) before.set(part, tempOthers);
  }
  const after = groundRun(before, tempAir, duration);
  const gains = [...after].map(([part, temp]) => temp - (before.get(part) ?? temp));
  const celsius = (part: PartName) => celsiusFromKelvin(after.get(part) ?? tempOthers);
  return {
    temps: after,
    sd: GROUND_RUN_DOUBT * Math.max(...gains),
    said: finding("idled-before-start", {
      minutes: duration / SECONDS_OF_MINUTE,
      air_c: celsiusFromKelvin(tempAir),
      oil_c: celsius("oil"),
      heads_c: celsius("heads_front"),
      caution: finding("short-ground-run", {}),
    }),
  };
}
