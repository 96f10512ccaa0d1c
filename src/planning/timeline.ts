import type { TimedChange, Timeline } from "../simulation/index.js";
import { timelineOf } from "../simulation/index.js";
import type { PlanRequest } from "./request.js";

/**
 * The planned course: the scenario's own events, plug in at `plugIn` (never when undefined), unplug, covers off and out
 * before departure.
 */
export function plannedTimeline(request: PlanRequest, plugIn: number | undefined): Timeline {
  const { scenario, wish } = request;
  const off = coverOffTime(request);
  const handling: TimedChange[] = [
    { at: off, change: { do: "cover-off", covers: scenario.kit.covers.map((c) => c.id) } },
  ];
  if (wish.pulledOut) handling.push({ at: off, change: { do: "move", to: "ramp" } });
  return timelineOf(scenario.initial.configuration, [
    ...scenario.events,
    ...heating(request, plugIn),
    ...handling,
  ]);
}

/** Unplugged as planned, but covers stay on and the aircraft stays where it is. */
export function coveredTimeline(request: PlanRequest, plugIn: number | undefined): Timeline {
  const { scenario } = request;
  return timelineOf(scenario.initial.configuration, [...scenario.events, ...heating(request, plugIn)]);
}

export function unplugTime({ wish }: PlanRequest): number {
  return wish.departure - wish.unplugBefore;
}

export function coverOffTime({ wish }: PlanRequest): number {
  return wish.departure - wish.coverOffBefore;
}

function heating(request: PlanRequest, plugIn: number | undefined): TimedChange[] {
  const { heaters } = request;
  const unplug: TimedChange = { at: unplugTime(request), change: { do: "unplug", heaters } };
  return plugIn === undefined ? [unplug] : [{ at: plugIn, change: { do: "plug-in", heaters } }, unplug];
}
