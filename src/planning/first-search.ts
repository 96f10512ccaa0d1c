import type { Aim } from "../readiness/index.js";
import {
  finished,
  latestPlugIn,
  PLUG_IN_STEP,
  type PlugInChances,
  type PlugInGrid,
  refinePlugIn,
  type SearchRange,
  type SearchResult,
  timeOf,
} from "../response/index.js";
import type { FirstReading } from "./first-reading.js";

/** [s] lead at which the cooling after unplugging is first looked at. */
export const USUAL_LEAD = 7200;
/** Grid steps that a plug-in may move before that cooling is looked at again. */
const SAME_TAIL = 2;
const TAILS_MOST = 3;

export interface FirstSearch {
  readonly reading: FirstReading;
  readonly grid: PlugInGrid;
  readonly range: SearchRange;
  readonly aim: Aim;
  /** Chance [0..1]. */
  readonly wanted: number;
  /** Grid index near the answer, where one is known. */
  readonly near: number | undefined;
}

/** The latest plug-in, at the grid index `range.last` at the latest. The last minutes are played around where it is found. */
export function firstPlugIn(search: FirstSearch): SearchResult {
  const { reading, grid, range, near } = search;
  const usual = range.last - Math.round(USUAL_LEAD / PLUG_IN_STEP);
  let index = Math.min(range.last, Math.max(range.first, near ?? usual));
  let found: SearchResult | undefined;
  for (let tails = 0; tails < TAILS_MOST; tails++) {
    reading.readWithLastMinutes(timeOf(grid, index));
    found = searchedFrom(search, index, found !== undefined || near !== undefined);
    const moved = Math.abs(found.index - index);
    index = found.index;
    if (moved === 0) return found;
    if (moved <= SAME_TAIL) break;
  }
  return settledOn(search, found as SearchResult);
}

function searchedFrom(search: FirstSearch, index: number, isNear: boolean): SearchResult {
  const { reading, range, aim, wanted } = search;
  // Where the longest heating is not enough before it overheats anything, none is.
  if (isNear && index === range.first && !reading.isTooHot()) {
    if (reading.readyShare(reading.atStart(), aim) < wanted) return { index, reached: false };
  }
  const steps = isNear
    ? refinePlugIn(chancesOf(search), wanted, range, index, SAME_TAIL)
    : latestPlugIn(chancesOf(search), wanted, range);
  const found = finished(steps);
  if (found === undefined) throw new Error("a search that nobody stops ended without a result");
  return found;
}

/** The cooling was played for another plug-in near by: where it takes more with its own, a little earlier. */
function settledOn(search: FirstSearch, { index, reached }: SearchResult): SearchResult {
  const { reading, grid, range, wanted } = search;
  const earliest = Math.max(range.first, index - SAME_TAIL);
  for (let i = index; reached && i >= earliest; i--) {
    reading.readWithLastMinutes(timeOf(grid, i));
    if (chancesOf(search).plannable(i) >= wanted) return { index: i, reached };
  }
  return { index: reached ? earliest : index, reached: false };
}

function chancesOf({ reading, grid, aim }: FirstSearch): PlugInChances {
  return {
    step: PLUG_IN_STEP,
    plannable(index) {
      reading.read(timeOf(grid, index));
      return reading.isTooHot() ? 0 : reading.readyShare(reading.atStart(), aim);
    },
  };
}
