import type { TimedChange, Timeline } from "../simulation/index.js";
import { timelineOf } from "../simulation/index.js";
import { unplugBeforeOf } from "./heater-use.js";
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

/** [s] end of heating: as wished, or earlier where makers ask for a pause before cranking. */
export function unplugTime(request: PlanRequest): number {
  return request.wish.departure - unplugBeforeOf(request);
}

export function coverOffTime({ wish }: PlanRequest): number {
  return wish.departure - wish.coverOffBefore;
}

function heating(request: PlanRequest, plugIn: number | undefined): TimedChange[] {
  const { heaters, scenario } = request;
  // Whatever is on goes off, also what nobody planned: nothing is left on at the start of an engine.
  const all = scenario.kit.heaters.map(({ id }) => id);
  const unplug: TimedChange = { at: unplugTime(request), change: { do: "unplug", heaters: all } };
  return plugIn === undefined ? [unplug] : [{ at: plugIn, change: { do: "plug-in", heaters } }, unplug];
}
