import type { KitChoice, Prices } from "../documents/index.js";
import type { HabitResult } from "./piece.js";

const JOULES_OF_KWH = 3.6e6;

/** What one drawn aircraft's winter cost; undefined where a price is missing. */
export interface WinterCost {
  readonly energy: number;
  /** Energy, departures missed and yearly costs. */
  readonly all: number;
}

/** @param d member, 0 the middle aircraft */
export function costOf(
  result: HabitResult,
  d: number,
  departures: number,
  { yearlyCost }: KitChoice,
  { electricity, fuel, missedDeparture }: Prices,
): WinterCost | undefined {
  const electric = result.energy[d]! / JOULES_OF_KWH;
  const burnt = result.fuel[d]! / JOULES_OF_KWH;
  if ((electric > 0 && electricity === undefined) || (burnt > 0 && fuel === undefined)) return undefined;
  const energy = electric * (electricity ?? 0) + burnt * (fuel ?? 0);
  return { energy, all: energy + (departures - result.ready[d]!) * missedDeparture + yearlyCost };
}

/**
 * Winters after which a dearer kit has paid for itself: the difference of prices over what it saves a winter. 0 where it is
 * no dearer and costs no more, infinite where it never does.
 */
export function paybackOf(extra: number, saving: number): number {
  if (extra <= 0) return saving >= 0 ? 0 : Number.POSITIVE_INFINITY;
  return saving > 0 ? extra / saving : Number.POSITIVE_INFINITY;
}
