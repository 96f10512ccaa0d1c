/** Parts every engine installation has; heater elements come on top, one part each ("heater:NAME"). */
export const PART_NAMES = [
  "sump",
  "oil",
  "crankcase",
  "crankshaft",
  "barrels",
  "heads_front",
  "heads_rear",
  "accessories",
  "hub",
  "cowl_air",
  "cowl_skin",
  "battery",
  "coolant",
] as const;

export type PartName = (typeof PART_NAMES)[number];

/** Name of a heater element's own part. */
export function elementPart(heaterId: string, elementName: string): string {
  return `heater:${heaterId}:${elementName}`;
}

export function isElementPart(name: string): boolean {
  return name.startsWith("heater:");
}
