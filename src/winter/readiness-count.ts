import { type Criterion, isGating, isOfLine, marginOf } from "../readiness/index.js";
import { blockOf, type Groups, middleOf, withoutMiddle } from "./groups.js";

/** Who is ready in one group, counted without the bands of a verdict: winters judge hundreds of departures. */
export interface Readiness {
  /** Whether each member may be started (the line of the least), and is warm through as well; the middle one first. */
  readonly ready: Uint8Array;
  readonly warm: Uint8Array;
  /** Shares of the drawn members that are. */
  readonly chance: number;
  readonly warmChance: number;
  /** Ids of criteria of the least that each fail in so many of the drawn members. */
  readonly failing: ReadonlyMap<string, number>;
  /** A ceiling is broken in the middle aircraft. */
  readonly tooHot: boolean;
}

/** @param atStart [K] all members at departure; `atUnplug` when the heaters were last on */
export function readinessOf(
  criteria: readonly Criterion[],
  groups: Groups,
  g: number,
  atStart: Float64Array,
  atUnplug: Float64Array,
): Readiness {
  const { parts, draws } = groups;
  const start = blockOf(atStart, g, groups);
  const middle = { temps: middleOf(start, groups), parts, members: 1 };
  const unplugged = { temps: middleOf(blockOf(atUnplug, g, groups), groups), parts, members: 1 };
  const drawn = { temps: withoutMiddle(start, groups), parts, members: draws - 1 };
  const ready = new Uint8Array(draws).fill(1);
  const warm = new Uint8Array(draws).fill(1);
  const failing = new Map<string, number>();
  const values = new Float64Array(draws);
  let tooHot = false;
  for (const criterion of criteria) {
    if (criterion.judged === "while-heating") {
      criterion.values(unplugged, values.subarray(0, 1));
      if (marginOf(criterion, values[0]!) < 0) tooHot = true;
      continue;
    }
    const isLeast = isGating(criterion);
    if (!isLeast && !isOfLine(criterion, "warm-through")) continue;
    // Apart: what is drawn within a criterion belongs to a member's place, and the middle one has none.
    criterion.values(middle, values.subarray(0, 1));
    if (draws > 1) criterion.values(drawn, values.subarray(1));
    let fails = 0;
    for (let d = 0; d < draws; d++) {
      if (marginOf(criterion, values[d]!) >= 0) continue;
      warm[d] = 0;
      if (isLeast) ready[d] = 0;
      if (d > 0) fails++;
    }
    if (isLeast && fails > 0) failing.set(criterion.id, fails);
  }
  return { ready, warm, chance: shareOf(ready), warmChance: shareOf(warm), failing, tooHot };
}

/** Of the drawn members, or the middle one where none is drawn. */
function shareOf(flags: Uint8Array): number {
  if (flags.length === 1) return flags[0]!;
  let count = 0;
  for (let d = 1; d < flags.length; d++) count += flags[d]!;
  return count / (flags.length - 1);
}
