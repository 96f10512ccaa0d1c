import { type Costs, compareCosts } from "./costs.js";
import { SLACK } from "./rows.js";

// A program is made smaller before it is solved, and again whenever a sum of costs is settled: what cannot be part of any
// best choice goes, and so does what cannot be overfilled. Which choice is best does not change.

/** One option of an aircraft, in the numbers that the choice hangs on. */
export interface Term {
  /** Into the aircraft's list. */
  readonly index: number;
  readonly costs: Costs;
  /** What it takes, by row. */
  readonly amounts: Float64Array;
}

/** What can be chosen, and the rows that can be overfilled by it. */
export interface Reduced {
  readonly terms: readonly (readonly Term[])[];
  readonly rows: readonly number[];
}

/**
 * @param room what is left in each row
 * @param bounds sums of costs that are settled: the first, the second and so on
 */
export function reduced(
  terms: readonly (readonly Term[])[],
  rows: readonly number[],
  room: Float64Array,
  bounds: readonly number[],
): Reduced {
  const within = affordable(terms, bounds);
  const telling = tellingRows(within, overfillable(within, rows, room), room);
  return { terms: within.map((list) => worthwhile(list, telling)), rows: telling };
}

/** Without options that cost more than is left when all others take what costs them least. */
function affordable(terms: readonly (readonly Term[])[], bounds: readonly number[]): (readonly Term[])[] {
  return bounds.reduce<(readonly Term[])[]>(
    (lists, bound, stage) => {
      const least = lists.map((list) => Math.min(...list.map(({ costs }) => costs[stage])));
      const spare = bound - least.reduce((sum, cost) => sum + cost, 0);
      return lists.map((list, a) => list.filter(({ costs }) => costs[stage] - least[a] <= spare));
    },
    [...terms],
  );
}

/** Rows that some choice would overfill. */
function overfillable(
  terms: readonly (readonly Term[])[],
  rows: readonly number[],
  room: Float64Array,
): number[] {
  const most = new Float64Array(room.length);
  for (const list of terms) {
    const own = new Float64Array(room.length);
    for (const { amounts } of list) for (const r of rows) own[r] = Math.max(own[r], amounts[r]);
    for (const r of rows) most[r] += own[r];
  }
  return rows.filter((r) => most[r] > room[r] + SLACK);
}

/** Without rows in which every option takes no more than in another one that has no more room. */
function tellingRows(
  terms: readonly (readonly Term[])[],
  rows: readonly number[],
  room: Float64Array,
): number[] {
  const options = terms.flat();
  const takers = new Map(rows.map((r) => [r, options.filter(({ amounts }) => amounts[r] > 0)]));
  const impliedBy = (r: number, other: number) =>
    room[other] <= room[r] && (takers.get(r) ?? []).every(({ amounts }) => amounts[r] <= amounts[other]);
  const kept: number[] = [];
  for (const r of rows) {
    if (kept.some((other) => impliedBy(r, other))) continue;
    const still = kept.filter((other) => !impliedBy(other, r));
    kept.splice(0, kept.length, ...still, r);
  }
  return kept;
}

/** Without options that cost no less, and take no less of anything, than another one: its place in any choice is better. */
function worthwhile(terms: readonly Term[], rows: readonly number[]): Term[] {
  const ordered = [...terms].sort((a, b) => compareCosts(a.costs, b.costs) || a.index - b.index);
  const kept: Term[] = [];
  for (const term of ordered) {
    const beaten = kept.some((other) => rows.every((r) => other.amounts[r] <= term.amounts[r]));
    if (!beaten) kept.push(term);
  }
  return kept;
}
