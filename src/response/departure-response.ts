import { quantile } from "../numerics/index.js";
import type { Timeline } from "../simulation/index.js";
import type { HeatResponse } from "./heat-response.js";
import { createLeadCurve } from "./lead-curve.js";
import { playOn } from "./play.js";

// The state at departure after heat in one or more blocks, put together from the response to heat from a time on, as if the
// engine were linear, and corrected by what a few such courses really bring. That is near enough to choose among courses;
// what is chosen is played as it is.

/** A time with the heaters on [s]. */
export interface Block {
  readonly from: number;
  readonly to: number;
}

/** How an aircraft is at its departure after heat where it stands. */
export interface DepartureResponse {
  /** [K] nothing heated, parts x members. */
  readonly cold: Float64Array;
  /** [K] parts x members */
  after(blocks: readonly Block[]): Float64Array;
  /** [K] when a block ends. */
  heated(block: Block): Float64Array;
  /** [J] middle of the members. */
  energy(blocks: readonly Block[]): number;
}

export interface DepartureRequest {
  readonly response: HeatResponse;
  /** [s] heat ends then at the latest. */
  readonly end: number;
  readonly departure: number;
  /** All that is done when the aircraft is heated in some blocks, up to its departure. */
  timeline(blocks: readonly Block[]): Timeline;
  /** [s] about the lead that is needed: courses with pauses are played near to it. */
  readonly usualLead: () => number;
}

/**
 * [s] before the end of heating: where heat stops in the courses that are played. Heaters with thermostats and air that
 * rises by itself do not add up. A pause between heating and departure, or between two blocks, is therefore played a few
 * times for each kind of course, and the difference from what adds up is carried over to other pauses of that kind in
 * proportion: without a pause there is none.
 */
const STOPS = [1800, 5400, 14_400];
/** [s] a pause between two blocks is played where it is nearest to this. */
const PAUSE_BETWEEN = 7200;
/** Times the usual lead that courses with a pause are heated. */
const LONGER_WITH_PAUSE = 1.3;

interface Difference {
  readonly pause: number;
  /** [K] really less added up. */
  readonly temps: Float64Array;
}

export function createDepartureResponse(request: DepartureRequest): DepartureResponse {
  const { response, end, departure, timeline, usualLead } = request;
  const size = response.parts.length * response.members;
  const unheated = stateAt(undefined, end);
  const cold = goOn([], end, unheated);
  const known = new Map<number, readonly Difference[]>();
  const rises = new Map<number, Float64Array>();
  /** What happens from the end of heating to the departure, beside what happens to a cold engine. */
  const lastMinutes = createLeadCurve(end, (lead) => {
    const hot = stateAt(end - lead, end);
    const started = goOn([{ from: end - lead, to: end }], end, hot);
    return started.map((temp, k) => temp - cold[k] - (hot[k] - unheated[k]));
  });

  function stateAt(plugIn: number | undefined, t: number): Float64Array {
    const temps = new Float64Array(size);
    response.temps(plugIn, t, temps);
    return temps;
  }

  function goOn(blocks: readonly Block[], from: number, state: Float64Array): Float64Array {
    return playOn(response.run, state, [from, departure], timeline(blocks));
  }

  /** [K] at departure after heat from a time until the end, less what it is without. */
  function rise(from: number): Float64Array {
    const found = rises.get(from) ?? readRise(from);
    rises.set(from, found);
    return found;
  }

  function readRise(from: number): Float64Array {
    const temps = stateAt(from, end);
    for (let k = 0; k < size; k++) temps[k] -= unheated[k];
    lastMinutes.add(end - from, temps);
    return temps;
  }

  function addedUp(blocks: readonly Block[]): Float64Array {
    const temps = Float64Array.from(cold);
    const add = (t: number, sign: number) => {
      if (t >= end) return;
      const more = rise(t);
      for (let k = 0; k < size; k++) temps[k] += sign * more[k];
    };
    for (const { from, to } of blocks) {
      add(from, 1);
      add(to, -1);
    }
    return temps;
  }

  function differences(topUp: number): readonly Difference[] {
    const found = known.get(topUp) ?? stopsFor(topUp).flatMap((stop) => playedStop(topUp, stop));
    known.set(topUp, found);
    return found;
  }

  function playedStop(topUp: number, stop: number): Difference[] {
    const lead = Math.min(end, LONGER_WITH_PAUSE * usualLead() + stop);
    if (lead <= stop) return [];
    const to = end - stop;
    const blocks = [{ from: end - lead, to }, ...(topUp === 0 ? [] : [{ from: end - topUp, to: end }])];
    const added = addedUp(blocks);
    const real = goOn(blocks, to, stateAt(end - lead, to));
    return [{ pause: stop - topUp, temps: real.map((temp, k) => temp - added[k]) }];
  }

  return {
    cold,
    after(blocks) {
      const temps = addedUp(blocks);
      const last = blocks.at(-1);
      if (last === undefined) return temps;
      const topUp = blocks.length > 1 ? last.to - last.from : 0;
      const pause = blocks.length > 1 ? last.from - blocks[0].to : end - last.to;
      if (pause > 0) addDifference(differences(topUp), pause, temps);
      return temps;
    },
    heated: ({ from, to }) => stateAt(from, to),
    energy(blocks) {
      const all = new Float64Array(response.members);
      const own = new Float64Array(response.members);
      for (const { from, to } of blocks) {
        response.energy(from, to, own);
        for (let m = 0; m < all.length; m++) all[m] += own[m];
      }
      return quantile(all, 0.5);
    },
  };
}

/** Adds what a pause makes of what adds up, between the pauses that were played. */
function addDifference(points: readonly Difference[], pause: number, temps: Float64Array): void {
  const i = points.findIndex((p) => p.pause >= pause);
  const after = points[i < 0 ? points.length - 1 : i];
  if (after === undefined) return;
  const before = i < 0 ? undefined : points[i - 1];
  const start = before?.pause ?? 0;
  const weight = Math.min(1, (pause - start) / (after.pause - start));
  for (let k = 0; k < temps.length; k++) {
    temps[k] += weight * after.temps[k] + (1 - weight) * (before?.temps[k] ?? 0);
  }
}

function stopsFor(topUp: number): number[] {
  if (topUp === 0) return STOPS;
  const off = (stop: number) => Math.abs(stop - topUp - PAUSE_BETWEEN);
  return [STOPS.reduce((best, stop) => (off(stop) < off(best) ? stop : best))];
}
