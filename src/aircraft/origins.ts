import type { Origins } from "./description.js";

/** Origin of a number by the longest matching path. */
export function originOf(origins: Origins, path: string): string {
  for (let key = path; key !== ""; key = key.slice(0, Math.max(0, key.lastIndexOf(".")))) {
    if (origins[key] !== undefined) return origins[key];
  }
  return origins[""] ?? "no origin given";
}
