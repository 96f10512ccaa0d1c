import type { AircraftState, Change } from "../logbook/index.js";

/** How an aircraft stood at a time. */
export interface Standing {
  readonly place: "ramp" | "hangar";
  readonly coversOn: string[];
  readonly heatersOn: string[];
}

/** Where it stood, what was fitted and what heated at `at` [ms]: the anchor with every change up to then. */
export function standingAt({ anchor, changes }: AircraftState, at: number): Standing {
  let place = anchor.place;
  const covers = new Set(anchor.coversOn);
  const heaters = new Set(anchor.heatersOn);
  for (const change of changes) {
    if (change.at > at) break;
    if (change.do === "move") place = change.to;
    if (change.do === "plug_in") for (const id of change.heaters) heaters.add(id);
    if (change.do === "unplug") for (const id of change.heaters) heaters.delete(id);
    if (change.do === "cover_on") for (const id of change.covers) covers.add(id);
    if (change.do === "cover_off") for (const id of change.covers) covers.delete(id);
  }
  return { place, coversOn: [...covers], heatersOn: [...heaters] };
}

/** [ms] since when a heater of these has been on without a break; undefined where none is. */
export function heatingSince(
  { anchor, changes }: AircraftState,
  heaters: readonly string[],
): number | undefined {
  const on = new Map<string, number>(anchor.heatersOn.map((id) => [id, anchor.at]));
  for (const change of changes) {
    if (change.do === "plug_in") for (const id of change.heaters) if (!on.has(id)) on.set(id, change.at);
    if (change.do === "unplug") for (const id of change.heaters) on.delete(id);
  }
  const since = heaters.flatMap((id) => on.get(id) ?? []);
  return since.length === 0 ? undefined : Math.min(...since);
}

/** The changes after `from` up to `to` [ms]. */
export function changesBetween({ changes }: AircraftState, from: number, to: number): readonly Change[] {
  return changes.filter(({ at }) => at > from && at <= to);
}
