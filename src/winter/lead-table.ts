import type { Kit } from "../aircraft/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { type ColdCaseRequest, createColdCase, type SteadyCase } from "./cold-case.js";
import { leastOn, longestOn } from "./heater-limits.js";
import { type LeadFound, leastLead } from "./least-lead.js";

/** What a plan does on forecast weather, from a table worked out beforehand. */
export interface LeadTable {
  /**
   * [s] lead and the chance it brings; straight between the table's temperatures and winds, held beyond them. A lead of 0:
   * not required, the least holds without heat.
   */
  at(tempAir: number, windSpeed: number): { readonly lead: number; readonly chance: number };
  /** The tabulated cases, for showing. */
  readonly cases: readonly (SteadyCase & LeadFound)[];
}

export interface LeadTableRequest extends Omit<ColdCaseRequest, "leads"> {
  /** [K] coldest and warmest forecast that will be asked for. */
  readonly tempRange: readonly [number, number];
  readonly chance: number;
}

/** [h] of heating that are tried. */
const HEATING_HOURS = [0.5, 1, 1.5, 2, 3, 4, 5, 6.5, 8, 11, 16, 24] as const;
/** [K] between the table's temperatures, at most. */
const TEMP_STEP = 7;
/** [m/s] at 10 m: nearly calm and fresh. */
const WINDS = [1, 6] as const;

/**
 * The least leads for a wanted chance over a grid of air temperatures and winds, each held all night, of an aircraft
 * cold-soaked in it. Against plans on real nights' courses this is measured in docs/winter.md.
 */
export function createLeadTable(request: LeadTableRequest): LeadTable {
  const { tempRange, chance, ...rest } = request;
  const temps = spread(tempRange[0], tempRange[1]);
  const cases = temps.flatMap((tempAir) => WINDS.map((windSpeed) => ({ tempAir, windSpeed })));
  const leads = triedLeads(request.kit, request.unplugBefore);
  const [shortest] = leads;
  if (shortest === undefined) {
    const none = {
      status: "not-reached",
      aim: "least",
      lead: 0,
      index: -1,
      chance: 0,
      warmChance: 0,
    } as const;
    return { at: () => none, cases: cases.map((one) => ({ ...one, ...none, unheated: 0 })) };
  }
  const found = cases.map((one) => leastLead(createColdCase({ ...rest, leads }, one), leads, chance));
  return {
    cases: cases.map((one, c) => ({ ...one, ...found[c]! })),
    at(tempAir, windSpeed) {
      const t = placeIn(temps, tempAir);
      const w = placeIn(WINDS, windSpeed);
      const mixed = (pick: (one: LeadFound) => number) => {
        const at = (i: number, j: number) => pick(found[i * WINDS.length + j]!);
        const along = (j: number) => (1 - t.share) * at(t.below, j) + t.share * at(t.above, j);
        return (1 - w.share) * along(w.below) + w.share * along(w.above);
      };
      const unheated = mixed((one) => one.unheated);
      if (unheated >= chance) return { lead: 0, chance: unheated };
      // Between a case without heat and one with it nothing below the shortest lead is to be had.
      const lead = mixed((one) => (one.status === "not-required" ? shortest : one.lead));
      return { lead: Math.max(shortest, lead), chance: mixed((one) => one.chance) };
    },
  };
}

/** [s] leads that may be tried: no heater is on for less or longer than its record allows. */
export function triedLeads(
  kit: Kit,
  unplugBefore: number,
  heating: readonly number[] = HEATING_HOURS,
): number[] {
  const least = leastOn(kit) / SECONDS_OF_HOUR;
  const longest = Math.min(longestOn(kit) / SECONDS_OF_HOUR, heating.at(-1)!);
  if (kit.heaters.length === 0 || least > longest) return [];
  const hours = [least, ...heating.filter((h) => h > least && h < longest), longest];
  return [...new Set(hours)].map((h) => h * SECONDS_OF_HOUR + unplugBefore);
}

function spread(low: number, high: number): number[] {
  const count = Math.max(1, Math.ceil((high - low) / TEMP_STEP));
  return Array.from({ length: count + 1 }, (_, i) => low + (i * (high - low)) / count);
}

/** Neighbours of a value in an ascending list and how far it is towards the upper; held at the ends. */
function placeIn(values: readonly number[], value: number) {
  const last = values.length - 1;
  const held = Math.min(values[last]!, Math.max(values[0]!, value));
  const above = Math.max(
    values.findIndex((one) => one >= held),
    Math.min(1, last),
  );
  const below = Math.max(0, above - 1);
  const width = values[above]! - values[below]!;
  return { below, above, share: width > 0 ? (held - values[below]!) / width : 0 };
}
