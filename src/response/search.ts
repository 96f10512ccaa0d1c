import type { Steps } from "./steps.js";

/** What a search asks; answers are kept by whoever gives them, so that asking twice costs nothing. */
export interface PlugInChances {
  /** [s] plug-in times that may be tried are whole steps. */
  readonly step: number;
  /** Chance of the plug-in at a grid index, as far as it may be planned: one that overheats something counts as none. */
  plannable(index: number): number;
}

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
export function* latestPlugIn(
  chances: PlugInChances,
  wanted: number,
  range: SearchRange,
  resolution = 1,
): Steps<SearchResult> {
  let failing = range.last + 1;
  let best = range.first;
  let bestChance = -1;
  for (const index of growingLeads(chances.step, range)) {
    const chance = chances.plannable(index);
    yield;
    if (chance >= wanted) {
      return { index: yield* narrowPlugIn(chances, wanted, index, failing, resolution), reached: true };
    }
    // Among equals the longer lead: when nothing is enough, heating longer comes closest.
    if (chance >= bestChance) [best, bestChance] = [index, chance];
    failing = index;
  }
  return { index: best, reached: false };
}

/**
 * Carries a result found otherwise (with few members, by interpolation) over to chances that decide: steps away from it,
 * growing, until the wanted chance lies between two neighbours tried, then halves.
 * @param reach grid steps that the result may be off by
 */
export function* refinePlugIn(
  chances: PlugInChances,
  wanted: number,
  range: SearchRange,
  near: number,
  reach = SCOUT_RESOLUTION - 1,
): Steps<SearchResult> {
  let good = near;
  let bad = near;
  let stride = reach;
  const enough = chances.plannable(near) >= wanted;
  yield;
  if (enough) {
    for (;;) {
      bad = Math.min(good + stride, range.last + 1);
      if (bad > range.last) break;
      const chance = chances.plannable(bad);
      yield;
      if (chance < wanted) break;
      good = bad;
      stride *= 2;
    }
  } else {
    for (;;) {
      good = Math.max(bad - stride, range.first);
      if (good === bad) return yield* latestPlugIn(chances, wanted, range);
      const chance = chances.plannable(good);
      yield;
      if (chance >= wanted) break;
      bad = good;
      stride *= 2;
    }
  }
  return { index: yield* narrowPlugIn(chances, wanted, good, bad), reached: true };
}

/** Grid steps within which few members tell plug-in times apart anyway. */
export const SCOUT_RESOLUTION = 3;

/** Shortfall of the best chance that few members have, over three of its standard errors, at which all need not try. */
const HOPELESS_GAP = 0.15;

export interface FoundPlugIn extends SearchResult {
  /** Chance of that plug-in. */
  readonly chance: number;
}

/**
 * What few members, or a look-up, found, settled with all of them.
 * @param reach grid steps that the result may be off by
 */
export function* settlePlugIn(
  all: PlugInChances,
  wanted: number,
  range: SearchRange,
  found: FoundPlugIn,
  reach = SCOUT_RESOLUTION - 1,
): Steps<FoundPlugIn> {
  if (!found.reached && found.chance < wanted - HOPELESS_GAP) {
    // Among equals the longer lead, as a search over all of them has it.
    const isLongest = all.plannable(range.first) >= all.plannable(found.index);
    return isLongest ? { ...found, index: range.first } : found;
  }
  const settled = yield* refinePlugIn(all, wanted, range, found.index, reach);
  return { ...settled, chance: all.plannable(settled.index) };
}

/** Grid indices from the last one backwards, each lead 1.6 times the one before, ending with the first one. */
function* growingLeads(step: number, { first, last }: SearchRange): Generator<number> {
  let lead = Math.max(1, Math.round(SHORTEST_LEAD / step));
  for (; last + 1 - lead > first; lead = Math.ceil(lead * LEAD_GROWTH)) yield last + 1 - lead;
  yield first;
}

/** [s] */
const SHORTEST_LEAD = 2700;
const LEAD_GROWTH = 1.6;

/** The latest enough between a plug-in that is enough and one that is not. */
export function* narrowPlugIn(
  chances: PlugInChances,
  wanted: number,
  good: number,
  bad: number,
  resolution = 1,
): Steps<number> {
  let from = good;
  let to = bad;
  while (Math.abs(to - from) > resolution) {
    const middle = (from + to) >> 1;
    if (chances.plannable(middle) >= wanted) from = middle;
    else to = middle;
    yield;
  }
  return from;
}
