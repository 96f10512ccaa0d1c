import type { Candidate, ChanceFinder } from "./chance.js";

export interface SearchResult {
  /** The latest candidate with the wanted chance; the best one tried when there is none. */
  readonly best: Candidate;
  readonly reached: boolean;
}

/**
 * The latest plug-in whose chance is at least `wanted`: leads grow from half an hour by a factor until one is
 * enough, then the last step is halved down to the grid. More heating can also hurt (hot surfaces), so a longer lead
 * that fails does not end the search before the whole range was tried.
 * @param lastIndex latest grid index allowed (just before unplugging)
 * @param firstIndex earliest grid index allowed (now, or the heater's longest-on limit)
 */
export function latestPlugIn(
  finder: ChanceFinder,
  wanted: number,
  firstIndex: number,
  lastIndex: number,
  onTry: () => void,
): SearchResult {
  const run = (index: number) => {
    const candidate = finder.candidate(index);
    onTry();
    return candidate;
  };
  let failing = lastIndex + 1;
  let best: Candidate | undefined;
  for (const index of growingLeads(finder.step, firstIndex, lastIndex)) {
    const candidate = run(index);
    if (best === undefined || candidate.verdict.chance > best.verdict.chance) best = candidate;
    if (candidate.verdict.chance >= wanted) {
      return { best: bisect(run, wanted, index, failing), reached: true };
    }
    failing = index;
  }
  if (best === undefined) throw new RangeError("invalid search range: no plug-in time allowed");
  return { best, reached: false };
}

/** Grid indices from the last one backwards, each lead 1.5 times the one before, ending with the first one. */
function* growingLeads(step: number, firstIndex: number, lastIndex: number): Generator<number> {
  let lead = Math.max(1, Math.round(SHORTEST_LEAD / step));
  for (; lastIndex + 1 - lead > firstIndex; lead = Math.ceil(lead * LEAD_GROWTH)) yield lastIndex + 1 - lead;
  yield firstIndex;
}

/** [s] */
const SHORTEST_LEAD = 1800;
const LEAD_GROWTH = 1.5;

function bisect(run: (index: number) => Candidate, wanted: number, good: number, bad: number): Candidate {
  let from = good;
  let to = bad;
  let best = run(from);
  while (to - from > 1) {
    const middle = (from + to) >> 1;
    const candidate = run(middle);
    if (candidate.verdict.chance >= wanted) {
      from = middle;
      best = candidate;
    } else {
      to = middle;
    }
  }
  return best;
}
