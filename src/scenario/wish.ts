import type { Kit } from "../aircraft/index.js";
import { type Finding, finding } from "../findings/index.js";
import { SECONDS_OF_MINUTE } from "../units/index.js";
import type { WishWithHeaters } from "./aircraft-scenario.js";

/** Chance of being ready where none is asked for; project judgement. */
export const USUAL_CHANCE = 0.9;
/** [min] to coil the lead, take the covers off, walk round and get in; project judgement. */
const USUAL_UNPLUG_BEFORE = 15;
const USUAL_COVER_OFF_BEFORE = 10;

/** What somebody says of a departure; what is left out is taken as usual. */
export interface GivenWish {
  /** [s] since the scenario's start */
  readonly departure: number;
  readonly chance: number | undefined;
  readonly heaters: readonly string[] | undefined;
  /** [min] before the departure */
  readonly unplugBefore: number | undefined;
  readonly coverOffBefore: number | undefined;
  readonly pulledOut: boolean | undefined;
}

export function wishOf(given: GivenWish, kit: Kit, assumptions: Finding[]): WishWithHeaters {
  const { departure, pulledOut = false } = given;
  const heaters = given.heaters ?? kit.heaters.map((h) => h.id);
  if (given.heaters === undefined && heaters.length > 1) {
    assumptions.push(finding("heaters-together", { heaters }));
  }
  const chance = given.chance ?? USUAL_CHANCE;
  if (given.chance === undefined) assumptions.push(finding("chance-taken", { chance }));
  const bounds = { most: Math.floor(Math.max(0, departure) / 120), isHeated: heaters.length > 0 };
  const { unplug, coverOff } = handlingOf(given, bounds, assumptions);
  return {
    wish: {
      departure,
      chance,
      unplugBefore: unplug * SECONDS_OF_MINUTE,
      coverOffBefore: coverOff * SECONDS_OF_MINUTE,
      pulledOut,
    },
    heaters,
  };
}

/** [min] before a departure at which heaters are unplugged and covers come off; usual values are at most `most`. */
export function handlingOf(
  { unplugBefore, coverOffBefore }: Pick<GivenWish, "unplugBefore" | "coverOffBefore">,
  { most, isHeated }: { readonly most: number; readonly isHeated: boolean },
  assumptions: Finding[],
): { readonly unplug: number; readonly coverOff: number } {
  const unplug = unplugBefore ?? Math.min(USUAL_UNPLUG_BEFORE, most);
  const coverOff = coverOffBefore ?? Math.min(USUAL_COVER_OFF_BEFORE, unplug, most);
  if (unplugBefore === undefined && isHeated) {
    assumptions.push(finding("unplugged-before", { minutes: unplug }));
  }
  if (coverOffBefore === undefined) assumptions.push(finding("covers-off-before", { minutes: coverOff }));
  return { unplug, coverOff };
}
