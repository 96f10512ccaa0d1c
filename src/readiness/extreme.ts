import { type Criterion, type EnsembleState, rowOf } from "./criterion.js";

/** The coldest of some parts must be at least `limit` [K] at the start. */
export function lowest(
  id: string,
  title: string,
  parts: readonly string[],
  limit: number,
  reason: string,
  source: string,
): Criterion {
  return {
    ...{ id, title, limit, reason, source },
    quantity: "temperature",
    direction: "at-least",
    judged: "at-start",
    values: (state, out) => extreme(state, parts, Math.min, out),
  };
}

/** The hottest of some parts must be at most `limit` [K] while heating. */
export function highest(
  id: string,
  title: string,
  parts: readonly string[],
  limit: number,
  reason: string,
  source: string,
): Criterion {
  return {
    ...{ id, title, limit, reason, source },
    quantity: "temperature",
    direction: "at-most",
    judged: "while-heating",
    values: (state, out) => extreme(state, parts, Math.max, out),
  };
}

/** Writes the coldest or hottest [K] of some parts, per member. */
export function extreme(
  state: EnsembleState,
  parts: readonly string[],
  pick: (a: number, b: number) => number,
  out: Float64Array,
): void {
  const { temps, members } = state;
  for (let k = 0; k < parts.length; k++) {
    const o = rowOf(state, parts[k]) * members;
    for (let m = 0; m < members; m++) out[m] = k === 0 ? temps[o + m] : pick(out[m], temps[o + m]);
  }
}
