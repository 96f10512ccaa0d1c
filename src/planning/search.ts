import type { ChanceFinder } from "./chance.js";

export interface SearchResult {
  /** Grid index of the latest plug-in with the wanted chance; the best one tried when there is none. */
  readonly index: number;
  readonly reached: boolean;
}

/** Plug-in times that may be used, as grid indices: now or the heater's longest-on limit, to just before unplugging. */
export interface SearchRange {
  readonly first: number;
  readonly last: number;
}

/**
 * The latest plug-in whose chance is at least `wanted`: leads grow from three quarters of an hour by a factor until one is
 * enough, then the last step is halved down to the grid. More heating can also hurt (hot surfaces), so a longer lead
 * that fails does not end the search before the whole range was tried.
 * @param resolution grid steps within which the answer need not be told apart
 */
export function latestPlugIn(
  finder: ChanceFinder,
  wanted: number,
  range: SearchRange,
  onTry: () => void,
  resolution = 1,
): SearchResult {
  let failing = range.last + 1;
  let best = range.first;
  let bestChance = -1;
  for (const index of growingLeads(finder.step, range)) {
    const chance = chanceAt(finder, index, onTry);
    if (chance >= wanted)
      return { index: bisect(finder, wanted, index, failing, onTry, resolution), reached: true };
    // Among equals the longer lead: when nothing is enough, heating longer comes closest.
    if (chance >= bestChance) [best, bestChance] = [index, chance];
    failing = index;
  }
  return { index: best, reached: false };
}

/**
 * Carries a result found with few members over to the finder with all of them: steps away from it, growing, until
 * the wanted chance lies between two neighbours tried, then halves.
 */
export function refinePlugIn(
  finder: ChanceFinder,
  wanted: number,
  range: SearchRange,
  near: number,
  onTry: () => void,
): SearchResult {
  let good = near;
  let bad = near;
  let stride = SCOUT_RESOLUTION - 1;
  if (chanceAt(finder, near, onTry) >= wanted) {
    for (;;) {
      bad = Math.min(good + stride, range.last + 1);
      if (bad > range.last || chanceAt(finder, bad, onTry) < wanted) break;
      good = bad;
      stride *= 2;
    }
  } else {
    for (;;) {
      good = Math.max(bad - stride, range.first);
      if (good === bad) return latestPlugIn(finder, wanted, range, onTry);
      if (chanceAt(finder, good, onTry) >= wanted) break;
      bad = good;
      stride *= 2;
    }
  }
  return { index: bisect(finder, wanted, good, bad, onTry), reached: true };
}

/** Grid steps within which few members tell plug-in times apart anyway. */
export const SCOUT_RESOLUTION = 3;

/** Grid indices from the last one backwards, each lead 1.6 times the one before, ending with the first one. */
function* growingLeads(step: number, { first, last }: SearchRange): Generator<number> {
  let lead = Math.max(1, Math.round(SHORTEST_LEAD / step));
  for (; last + 1 - lead > first; lead = Math.ceil(lead * LEAD_GROWTH)) yield last + 1 - lead;
  yield first;
}

/** [s] */
const SHORTEST_LEAD = 2700;
const LEAD_GROWTH = 1.6;

function bisect(
  finder: ChanceFinder,
  wanted: number,
  good: number,
  bad: number,
  onTry: () => void,
  resolution = 1,
): number {
  let from = good;
  let to = bad;
  while (to - from > resolution) {
    const middle = (from + to) >> 1;
    if (chanceAt(finder, middle, onTry) >= wanted) from = middle;
    else to = middle;
  }
  return from;
}

/** Chance of a plug-in that may be planned; one that overheats something counts as none. */
function chanceAt(finder: ChanceFinder, index: number, onTry: () => void): number {
  const { verdict } = finder.candidate(index);
  onTry();
  return verdict.tooHot.length > 0 ? 0 : verdict.chance;
}
