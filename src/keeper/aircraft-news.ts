import { nextDeparture } from "../base/index.js";
import type { NowDocument, PlanDocument } from "../index.js";
import type { AircraftState, BaseState } from "../logbook/index.js";

/** [K] by which a part may leave what its plan foresaw before it is planned anew; project judgement, the size of a probe's error. */
const STRAY = 2;
/** Parts by which a plan is followed. */
const FOLLOWED = ["oil", "crankcase", "heads_front"] as const;

/** [ms] an estimate looks back at most; the base's scenarios begin no earlier. */
export const LONGEST_PAST = 100 * 3_600_000;

/** Whether there is a departure to plan for. */
export function isWanted(aircraft: AircraftState, now: number): boolean {
  return nextDeparture(aircraft, now) !== undefined && !aircraft.running;
}

/** What one aircraft's numbers hang on, so that not the whole logbook is copied into the planning thread. */
export function slim(state: BaseState, id: string, now: number): BaseState {
  const aircraft = state.aircraft.get(id);
  const old = state.forecasts.findIndex(({ at }) => Date.parse(at) < now - LONGEST_PAST);
  return {
    setUp: {
      ...state.setUp,
      aircraft: state.setUp.aircraft.filter((one) => one.id === id || one.learned !== undefined),
    },
    aircraft: new Map(aircraft === undefined ? [] : [[id, aircraft]]),
    forecasts: old < 0 ? state.forecasts : state.forecasts.slice(0, old + 1),
    faults: [],
    record: state.record,
    withoutEffect: [],
  };
}

/** Whether a part has left what its plan foresaw for now. */
export function strays({ parts }: NowDocument, { start, course }: PlanDocument, now: number): boolean {
  const hours = (now - Date.parse(start.time)) / 3_600_000;
  const after = course.time_h.findIndex((t) => t >= hours);
  if (after <= 0) return false;
  const share = (hours - course.time_h[after - 1]) / (course.time_h[after] - course.time_h[after - 1]);
  return FOLLOWED.some((part) => {
    const planned = course.parts[part]?.p50_c;
    const seen = parts[part]?.p50_c;
    if (planned === undefined || seen === undefined) return false;
    const foreseen = planned[after - 1] + share * (planned[after] - planned[after - 1]);
    return Math.abs(seen - foreseen) > STRAY;
  });
}
