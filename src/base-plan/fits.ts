import type { Heater, Installation } from "../aircraft/index.js";
import { isTooSmall } from "../planning/index.js";

/** Whether a heater can be used on an engine: its number of cylinders and size, and coolant where it heats that. */
export function heaterFits(heater: Heater, installation: Installation): boolean {
  const { cylinders, elements } = heater;
  if (cylinders !== undefined && cylinders !== installation.cylinders) return false;
  if (isTooSmall(installation, heater)) return false;
  if (installation.bodies.coolant !== undefined) return true;
  return elements.every((e) => e.target !== "coolant" && e.limiter?.senses !== "coolant");
}
