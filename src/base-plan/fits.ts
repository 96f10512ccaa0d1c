import type { Heater, Installation } from "../aircraft/index.js";

/** Whether a heater can be used on an engine: its number of cylinders, and coolant where it heats that. */
export function heaterFits({ cylinders, elements }: Heater, installation: Installation): boolean {
  if (cylinders !== undefined && cylinders !== installation.cylinders) return false;
  if (installation.bodies.coolant !== undefined) return true;
  return elements.every((e) => e.target !== "coolant" && e.limiter?.senses !== "coolant");
}
