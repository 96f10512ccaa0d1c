import type { TimedChange, Timeline } from "../simulation/index.js";
import { timelineOf } from "../simulation/index.js";
import type { PlanRequest } from "./request.js";

/** The planned course: the scenario's own events, plug in at `plugIn`, unplug, covers off (and out) before departure. */
export function plannedTimeline(request: PlanRequest, plugIn: number): Timeline {
  return timeline(request, [
    { at: plugIn, change: { do: "plug-in", heaters: request.heaters } },
    ...handling(request),
  ]);
}

/** Nobody plugs in. */
export function coldTimeline(request: PlanRequest): Timeline {
  return timeline(request, handling(request));
}

/** Unplugged as planned, but covers stay on and the aircraft stays where it is. */
export function coveredTimeline(request: PlanRequest, plugIn: number): Timeline {
  return timeline(request, [
    { at: plugIn, change: { do: "plug-in", heaters: request.heaters } },
    { at: unplugTime(request), change: { do: "unplug", heaters: request.heaters } },
  ]);
}

/** Unplugged as planned and stripped and pulled out at once. */
export function strippedTimeline(request: PlanRequest, plugIn: number): Timeline {
  const at = unplugTime(request);
  return timeline(request, [
    { at: plugIn, change: { do: "plug-in", heaters: request.heaters } },
    { at, change: { do: "unplug", heaters: request.heaters } },
    { at, change: { do: "cover-off", covers: request.scenario.kit.covers.map((c) => c.id) } },
    { at, change: { do: "move", to: "ramp" } },
  ]);
}

export function unplugTime({ wish }: PlanRequest): number {
  return wish.departure - wish.unplugBefore;
}

function handling({ scenario, wish, heaters }: PlanRequest): TimedChange[] {
  const changes: TimedChange[] = [
    { at: wish.departure - wish.unplugBefore, change: { do: "unplug", heaters } },
  ];
  const off = wish.departure - wish.coverOffBefore;
  changes.push({ at: off, change: { do: "cover-off", covers: scenario.kit.covers.map((c) => c.id) } });
  if (wish.pulledOut) changes.push({ at: off, change: { do: "move", to: "ramp" } });
  return changes;
}

function timeline({ scenario }: PlanRequest, planned: readonly TimedChange[]): Timeline {
  return timelineOf(scenario.initial.configuration, [...scenario.events, ...planned]);
}
