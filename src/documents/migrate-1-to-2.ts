import { isRecord } from "./issue.js";
import type { Migration } from "./migration.js";

/** [h] makers' shortest hot air, as in the catalogue's heaters. */
const LEAST_ON = 0.5;

/**
 * Version 2 names of each described heater the shortest time on and where it may run. What version 1 left open is taken
 * on the cautious side: half an hour, and a burner only outdoors with somebody beside it.
 */
export const FROM_1_TO_2: Migration = {
  from: 1,
  migrate: (document) => withHeaterLimits(document) as Record<string, unknown>,
};

/** Puts the limits of version 2 into every heater description within a stored value. */
export function withHeaterLimits(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withHeaterLimits);
  if (!isRecord(value)) return value;
  const inner = Object.fromEntries(
    Object.entries(value).map(([key, entry]) => [key, withHeaterLimits(entry)]),
  );
  const { elements, longest_on_h, attended, duct, origins } = inner;
  if (!Array.isArray(elements) || typeof longest_on_h !== "number") return inner;
  const burns = isRecord(duct) && duct.energy === "fuel";
  return {
    ...inner,
    least_on_h: Math.min(LEAST_ON, longest_on_h),
    runs: burns ? "outdoors" : "anywhere",
    attended: burns || attended,
    origins: {
      ...(isRecord(origins) ? origins : {}),
      least_on_h: "project judgement, put in when the description was brought to version 2",
    },
  };
}
