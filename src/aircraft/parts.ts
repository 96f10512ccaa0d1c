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

/** Plain words for a part, for sentences. */
export const PART_LABELS: Readonly<Record<PartName, string>> = {
  sump: "oil sump",
  oil: "oil",
  crankcase: "crankcase",
  crankshaft: "crankshaft and bearings",
  barrels: "cylinder barrels",
  heads_front: "front cylinder heads",
  heads_rear: "rear cylinder heads",
  accessories: "accessories",
  hub: "propeller hub",
  cowl_air: "air under the cowl",
  cowl_skin: "cowl skin",
  battery: "battery",
  coolant: "coolant",
};
