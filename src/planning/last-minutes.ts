import { type HeatResponse, playOn, type Steps } from "../response/index.js";
import type { EnsembleRun } from "../simulation/index.js";
import { unplugBeforeOf } from "./heater-use.js";
import type { PlanRequest } from "./request.js";
import { plannedTimeline, unplugTime } from "./timeline.js";

/**
 * What the minutes from unplugging to the start do to every member, played at a few moments and read between them: parts
 * that were heated cool by ten kelvins and more, each member's differently.
 */
export interface LastMinutes {
  /** Adds the change [K] from unplugging at `unplug` [s] to the start, parts x members, to `temps`. */
  add(isHeated: boolean, unplug: number, temps: Float64Array): void;
  fill(): Steps<void>;
  isFilled(): boolean;
}

/** [s] between the moments played. */
const SPACING = 3 * 3600;
/** [s] of heating before them. */
const LEAD = 9000;

interface Moment {
  readonly unplug: number;
  readonly heated: Float32Array;
  readonly cold: Float32Array;
}

/** @param request its wish says how long the last minutes are and what is done in them */
export function createLastMinutes(response: HeatResponse, request: PlanRequest): LastMinutes {
  const unplugBefore = unplugBeforeOf(request);
  const latest = request.scenario.duration - unplugBefore;
  const count = Math.max(1, Math.floor((latest - 1) / SPACING));
  const unplugs = Array.from({ length: count }, (_, i) => Math.min((i + 1) * SPACING, latest - 1));
  const moments: Moment[] = [];

  function changeAfter(plugIn: number | undefined, unplug: number): Float32Array {
    const before = new Float64Array(response.parts.length * response.members);
    response.temps(plugIn, unplug, before);
    const wish = { ...request.wish, departure: unplug + unplugBefore };
    return Float32Array.from(changeOfLastMinutes(response.run, before, { ...request, wish }));
  }

  return {
    add(isHeated, unplug, temps) {
      const after = moments.findIndex((m) => m.unplug >= unplug);
      const b = moments[after < 0 ? moments.length - 1 : after];
      const a = moments[Math.max(0, (after < 0 ? moments.length : after) - 1)];
      const w = a === b ? 0 : Math.min(1, (unplug - a.unplug) / (b.unplug - a.unplug));
      const [first, second] = isHeated ? [a.heated, b.heated] : [a.cold, b.cold];
      for (let k = 0; k < temps.length; k++) temps[k] += (1 - w) * first[k] + w * second[k];
    },
    *fill() {
      for (const unplug of unplugs.slice(moments.length)) {
        const cold = changeAfter(undefined, unplug);
        yield;
        const heated = changeAfter(Math.max(0, unplug - LEAD), unplug);
        moments.push({ unplug, heated, cold });
        yield;
      }
    },
    isFilled: () => moments.length === count,
  };
}

/**
 * [K] what the minutes from unplugging to the wish's departure change of an ensemble, parts x members.
 * @param before [K] at unplugging
 * @param tolerance [K] local error allowed per step
 */
export function changeOfLastMinutes(
  run: EnsembleRun,
  before: Float64Array,
  request: PlanRequest,
  tolerance?: number,
): Float64Array {
  const { departure } = request.wish;
  const timeline = plannedTimeline(request, undefined);
  const state = playOn(run, before, [unplugTime(request), departure], timeline, tolerance);
  return state.map((temp, k) => temp - before[k]);
}
