import { quantile } from "../numerics/index.js";
import { type Criterion, marginOf } from "../readiness/index.js";
import type { Trajectory } from "../simulation/index.js";
import type { StayWarm } from "./plan.js";

/**
 * How long each member stays ready from the trajectory's first sample on: the first time any at-start criterion fails,
 * interpolated linearly in the margin between samples; 0 when it is not ready at first, the horizon when it never fails.
 */
export function readyTimes(course: Trajectory, criteria: readonly Criterion[]): Float64Array {
  const { time, members } = course;
  const horizon = time[time.length - 1] - time[0];
  const times = new Float64Array(members).fill(horizon);
  const gone = new Uint8Array(members);
  const before = new Float64Array(members);
  const now = new Float64Array(members);
  const starts = criteria.filter((c) => c.judged === "at-start");
  for (let s = 0; s < time.length; s++) {
    worstMargins(course, starts, s, now);
    for (let m = 0; m < members; m++) {
      if (gone[m] === 1 || now[m] >= 0) continue;
      gone[m] = 1;
      times[m] =
        s === 0 ? 0 : time[s - 1] - time[0] + ((time[s] - time[s - 1]) * before[m]) / (before[m] - now[m]);
    }
    before.set(now);
  }
  return times;
}

/** The time that the wanted share of members outlasts, and the median. */
export function stayWarm(course: Trajectory, criteria: readonly Criterion[], chance: number): StayWarm {
  const times = readyTimes(course, criteria);
  const { time } = course;
  return {
    sure: quantile(times, 1 - chance),
    median: quantile(times, 0.5),
    horizon: time[time.length - 1] - time[0],
  };
}

/** Share of members at sample s in which every at-start criterion holds. */
export function readyShare(course: Trajectory, criteria: readonly Criterion[], s: number): number {
  const margins = new Float64Array(course.members);
  worstMargins(
    course,
    criteria.filter((c) => c.judged === "at-start"),
    s,
    margins,
  );
  return margins.reduce((n, v) => n + (v >= 0 ? 1 : 0), 0) / course.members;
}

function worstMargins(
  course: Trajectory,
  criteria: readonly Criterion[],
  s: number,
  out: Float64Array,
): void {
  const { parts, members, temps } = course;
  const size = parts.length * members;
  const state = { temps: temps.subarray(s * size, (s + 1) * size), parts, members };
  const values = new Float64Array(members);
  out.fill(Number.POSITIVE_INFINITY);
  for (const criterion of criteria) {
    criterion.values(state, values);
    for (let m = 0; m < members; m++) out[m] = Math.min(out[m], marginOf(criterion, values[m]));
  }
}
