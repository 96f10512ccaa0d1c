import { findRoot } from "../numerics/index.js";
import type { CrossingEvent, Step } from "./system.js";

/** Fractions of a step at which events are looked at, so that a pair of crossings inside one step is not missed. */
const LOOKS = [1 / 3, 2 / 3, 1];
/** A crossing is located to this fraction of its step. */
const LOCATION = 1e-9;

/** Watches events along the steps and keeps the first crossing of every member. */
export interface EventWatch {
  readonly crossings: ReadonlyMap<string, Float64Array>;
  /** Looks at the state where a stretch begins. */
  begin(t: number, y: Float64Array): void;
  /** Looks through an accepted step. */
  pass(step: Step): void;
}

/**
 * A crossing goes from strictly before the zero to it or past it, so a start on or past the zero is none. One that
 * happens because g itself jumps between two stretches counts at the time of the jump.
 */
export function createEventWatch(
  events: readonly CrossingEvent[],
  size: number,
  members: number,
): EventWatch {
  const state = new Float64Array(size * members);
  const values = new Float64Array(members);
  const probeState = new Float64Array(size * members);
  const probe = new Float64Array(members);
  const watched = events.map((event) => ({
    event,
    sign: event.direction === "rising" ? 1 : -1,
    crossing: new Float64Array(members).fill(Number.NaN),
    /** Value at the last look, signed so that the wanted crossing rises; NaN before the first look. */
    last: new Float64Array(members).fill(Number.NaN),
  }));
  let step: Step | undefined;
  let sought = watched[0];
  let member = 0;

  return {
    crossings: new Map(watched.map(({ event, crossing }) => [event.name, crossing])),
    begin(t, y) {
      for (const one of watched) look(one, t, y, t);
    },
    pass(passed) {
      if (watched.length === 0) return;
      step = passed;
      const { start, end } = passed;
      let before = start;
      for (const fraction of LOOKS) {
        const t = fraction === 1 ? end : start + fraction * (end - start);
        passed.interpolate(t, state);
        for (const one of watched) look(one, t, state, before);
        before = t;
      }
    },
  };

  function look(one: (typeof watched)[number], t: number, y: Float64Array, before: number): void {
    const { event, sign, crossing, last } = one;
    event.value(t, y, values);
    for (let m = 0; m < members; m++) {
      const now = sign * values[m];
      if (last[m] < 0 && now >= 0 && Number.isNaN(crossing[m])) crossing[m] = locate(one, m, before, t);
      last[m] = now;
    }
  }

  function locate(one: (typeof watched)[number], m: number, before: number, after: number): number {
    if (step === undefined || before === after) return after;
    sought = one;
    member = m;
    return findRoot(soughtValue, before, after, LOCATION * (step.end - step.start)) ?? after;
  }

  function soughtValue(t: number): number {
    step?.interpolate(t, probeState);
    sought.event.value(t, probeState, probe);
    return probe[member];
  }
}
