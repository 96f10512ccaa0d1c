import { trackRecord } from "../learning/index.js";
import { type PlainEvent, standingEvents } from "./corrections.js";
import { deriveAircraft } from "./derive-aircraft.js";
import { clearedFaults, openFaults } from "./derive-faults.js";
import type { LogbookEvent } from "./events.js";
import type { AircraftState, BaseState } from "./state.js";

/**
 * What stands at a base. The same events give the same state, in whatever order and however often they come: they are
 * taken by `at`, then id, after corrections. Undefined as long as there is no set-up.
 */
export function deriveBase(events: Iterable<LogbookEvent>): BaseState | undefined {
  const { events: standing, nameNow, withoutEffect: uncorrecting } = standingEvents(events);
  const setUp = standing.filter((e) => e.kind === "set-up").at(-1)?.base;
  if (setUp === undefined) return undefined;
  const withoutEffect = [...uncorrecting];
  const lost = (id: string, reason: string) => withoutEffect.push({ id, reason });

  const cleared = clearedFaults(standing, nameNow, lost);
  const byAircraft = new Map<string, PlainEvent[]>(setUp.aircraft.map(({ id }) => [id, []]));
  for (const event of standing) {
    if (!("aircraft" in event) || event.aircraft === undefined) continue;
    const list = byAircraft.get(event.aircraft);
    if (list === undefined) lost(event.id, `no aircraft ${event.aircraft} is in the set-up`);
    else list.push(event);
  }
  const aircraft = new Map<string, AircraftState>();
  for (const one of setUp.aircraft) {
    const own = byAircraft.get(one.id) ?? [];
    aircraft.set(one.id, deriveAircraft(one, own, { cleared, nameNow, lost }));
  }
  return {
    setUp,
    aircraft,
    forecasts: standing.filter((e) => e.kind === "forecast").reverse(),
    faults: openFaults(standing, cleared).filter((fault) => fault.aircraft === undefined),
    record: trackRecord([...aircraft.values()].flatMap(({ checked }) => checked).slice(-MOST_CHECKED)),
    withoutEffect: withoutEffect.sort((a, b) => compared(a.id, b.id) || compared(a.reason, b.reason)),
  };
}

/** Plans that a record is made of; older ones were of another program, or another kit. */
const MOST_CHECKED = 300;

function compared(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}
