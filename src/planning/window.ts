import type { Trajectory } from "../simulation/index.js";
import type { ReadyWindow } from "./plan.js";
import type { PlanRequest } from "./request.js";
import { readySince } from "./stay.js";
import { coverOffTime } from "./timeline.js";

/**
 * From when to when the engine may be started as planned, covers off and out of the hangar: over all cases, so that at any
 * moment of it the wanted share is ready. It cannot open before the covers are off.
 * @param course the planned one
 * @param lasting [s] that each member stays ready on it from the departure on
 */
export function plannedWindow(
  course: Trajectory,
  lasting: Float64Array,
  request: PlanRequest,
): ReadyWindow | undefined {
  return windowAround(course, lasting, request, coverOffTime(request));
}

/** The same should covers stay on and the aircraft stay where it is. */
export function coveredWindow(
  course: Trajectory,
  lasting: Float64Array,
  request: PlanRequest,
): ReadyWindow | undefined {
  return windowAround(course, lasting, request, 0);
}

function windowAround(
  course: Trajectory,
  lasting: Float64Array,
  { criteria, wish }: PlanRequest,
  earliest: number,
): ReadyWindow | undefined {
  const since = readySince(course, criteria, wish.departure);
  const opens = (share: number) => Math.max(earliest, sureQuantile(since, share));
  const closes = (share: number) =>
    wish.departure -
    sureQuantile(
      lasting.map((t) => -t),
      share,
    );
  if (!(sureQuantile(since, wish.chance) <= wish.departure) || !(closes(wish.chance) > wish.departure))
    return undefined;
  return {
    opens: { sure: opens(wish.chance), half: opens(Math.min(0.5, wish.chance)) },
    closes: { sure: closes(wish.chance), half: closes(Math.min(0.5, wish.chance)) },
  };
}

/** The smallest value that at least a share of all stays within: never between two of them. */
function sureQuantile(values: Float64Array, share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length - 1e-9) - 1)];
}
