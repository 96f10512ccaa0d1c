import type { Heater, Installation } from "../aircraft/index.js";

/** Whether a heater can be used on an engine: its number of cylinders and size, and coolant where it heats that. */
export function heaterFits(
  { cylinders, displacement_least_l, elements }: Heater,
  installation: Installation,
): boolean {
  if (cylinders !== undefined && cylinders !== installation.cylinders) return false;
  if (displacement_least_l !== undefined && installation.displacement_l < displacement_least_l) return false;
  if (installation.bodies.coolant !== undefined) return true;
  return elements.every((e) => e.target !== "coolant" && e.limiter?.senses !== "coolant");
}
