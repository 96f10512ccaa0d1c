import type { KitChoice, Prices } from "../documents/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import type { HabitResult } from "./piece.js";

const JOULES_OF_KWH = 3.6e6;

/** Money for heat; undefined where its price is missing. @param electric [J], `burnt` [J] */
export function energyCost(
  electric: number,
  burnt: number,
  { electricity, fuel }: Prices,
): number | undefined {
  if ((electric > 0 && electricity === undefined) || (burnt > 0 && fuel === undefined)) return undefined;
  return (electric * (electricity ?? 0) + burnt * (fuel ?? 0)) / JOULES_OF_KWH;
}

/** Money for somebody's time. @param time [s] */
export function attendedCost(time: number, { attended }: Prices): number {
  return (time / SECONDS_OF_HOUR) * attended;
}

/** What one drawn aircraft's winter cost; undefined where a price is missing. */
export interface WinterCost {
  readonly energy: number;
  /** Energy, somebody's time, departures missed and yearly costs. */
  readonly all: number;
}

/** @param d member, 0 the middle aircraft */
export function costOf(
  result: HabitResult,
  d: number,
  departures: number,
  { yearlyCost }: KitChoice,
  prices: Prices,
): WinterCost | undefined {
  const energy = energyCost(result.energy[d]!, result.fuel[d]!, prices);
  if (energy === undefined) return undefined;
  const missed = (departures - result.ready[d]!) * prices.missedDeparture;
  return { energy, all: energy + attendedCost(result.attendedTime, prices) + missed + yearlyCost };
}

/**
 * Winters after which a dearer kit has paid for itself: the difference of prices over what it saves a winter. 0 where it is
 * no dearer and costs no more, infinite where it never does.
 */
export function paybackOf(extra: number, saving: number): number {
  if (extra <= 0) return saving >= 0 ? 0 : Number.POSITIVE_INFINITY;
  return saving > 0 ? extra / saving : Number.POSITIVE_INFINITY;
}
