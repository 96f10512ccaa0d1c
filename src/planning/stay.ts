import { type Criterion, type EnsembleState, isGating, marginOf } from "../readiness/index.js";
import type { Trajectory } from "../simulation/index.js";
import type { StayWarm } from "./plan.js";

/**
 * How long each member stays ready from the sample at `from` [s] on: the first time any gating criterion fails,
 * interpolated linearly in the margin between samples; 0 when it is not ready at first, the horizon when it never fails.
 */
export function readyTimes(course: Trajectory, criteria: readonly Criterion[], from: number): Float64Array {
  const { time, members } = course;
  const first = time.indexOf(from);
  if (first < 0) throw new RangeError(`invalid from: ${from} s (expected a sample time of the course)`);
  const times = new Float64Array(members).fill(time[time.length - 1] - from);
  const gone = new Uint8Array(members);
  const before = new Float64Array(members);
  const now = new Float64Array(members);
  const starts = criteria.filter(isGating);
  for (let s = first; s < time.length; s++) {
    tightestAt(course, starts, s, now);
    for (let m = 0; m < members; m++) {
      if (gone[m] === 1 || now[m] >= 0) continue;
      gone[m] = 1;
      if (s === first) times[m] = 0;
      else times[m] = time[s - 1] - from + ((time[s] - time[s - 1]) * before[m]) / (before[m] - now[m]);
    }
    before.set(now);
  }
  return times;
}

/**
 * How long it stays ready, of each member's own time [s]: the time that the wanted share of all members outlasts, and the
 * median. A member that is not ready at first stays so for no time at all.
 */
export function stayOf(ready: Float64Array, chance: number, horizon: number): StayWarm {
  return { sure: outlasted(ready, chance), median: outlasted(ready, 0.5), horizon };
}

/** The longest time [s] that at least a share of all members outlasts: one member's own, never between two. */
export function outlasted(times: Float64Array, share: number): number {
  return -reachedBy(
    times.map((t) => -t),
    share,
  );
}

/** The earliest time [s] by which at least a share of all members has got there: one member's own, never between two. */
export function reachedBy(times: Float64Array, share: number): number {
  const sorted = times.slice().sort();
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length - 1e-9) - 1))];
}

/**
 * When each member is first ready, and stays so until the sample at `until` [s]: the crossing into the last ready
 * stretch before it, linear in the margin between samples. Infinity for members that are not ready at `until`.
 */
export function readySince(course: Trajectory, criteria: readonly Criterion[], until: number): Float64Array {
  const { time, members } = course;
  const last = time.indexOf(until);
  if (last < 0) throw new RangeError(`invalid until: ${until} s (expected a sample time of the course)`);
  const starts = criteria.filter(isGating);
  const since = new Float64Array(members).fill(time[0]);
  const found = new Uint8Array(members);
  const now = new Float64Array(members);
  const after = new Float64Array(members);
  let left = members;
  for (let s = last; s >= 0 && left > 0; s--) {
    tightestAt(course, starts, s, now);
    for (let m = 0; m < members; m++) {
      if (found[m] === 1 || now[m] >= 0) continue;
      found[m] = 1;
      left--;
      if (s === last) since[m] = Number.POSITIVE_INFINITY;
      else since[m] = time[s] + ((time[s + 1] - time[s]) * now[m]) / (now[m] - after[m]);
    }
    after.set(now);
  }
  return since;
}

/** Writes each member's tightest margin over some criteria. */
export function tightestMargins(
  criteria: readonly Criterion[],
  state: EnsembleState,
  out: Float64Array,
): void {
  const values = new Float64Array(state.members);
  out.fill(Number.POSITIVE_INFINITY);
  for (const criterion of criteria) {
    criterion.values(state, values);
    for (let m = 0; m < values.length; m++) out[m] = Math.min(out[m], marginOf(criterion, values[m]));
  }
}

function tightestAt(course: Trajectory, criteria: readonly Criterion[], s: number, out: Float64Array): void {
  const { parts, members, temps } = course;
  const size = parts.length * members;
  tightestMargins(criteria, { temps: temps.subarray(s * size, (s + 1) * size), parts, members }, out);
}
