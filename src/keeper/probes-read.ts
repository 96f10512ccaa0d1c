import { randomUUID } from "node:crypto";
import { isoOf, type KnownReading, MINUTE } from "../base/index.js";
import type { SavedEstimate } from "../index.js";
import { DISTRUSTED } from "../learning/index.js";
import type { AircraftState, EventOf } from "../logbook/index.js";
import type { Store } from "../store/index.js";
import { readingsSince } from "./readings-since.js";

/** [ms] A reading this old tells of another moment; project judgement, a few readings of a slow probe. */
const FRESH = 5 * MINUTE;
/** [s] A probe of which the live filter left something aside so lately is not to be trusted; project judgement. */
const LATELY = 30 * 60;

/**
 * What the probes read last of each part when a plan that was followed is through, from its unplugging to its departure:
 * once for each departure, since what the logbook has of it says so. Undefined while it is not due, while no fresh reading
 * has been through the live filter, and where the filter believes that something is not as told: such a night checks no plan.
 */
export async function probesRead(
  aircraft: AircraftState,
  saved: SavedEstimate,
  store: Pick<Store, "readings" | "rollUp">,
  now: number,
): Promise<EventOf<"probes-read"> | undefined> {
  const { setUp, plan, checked, running } = aircraft;
  if (plan?.bands === undefined || running || saved.state.belief.deviation !== undefined) return undefined;
  const followed = checked.find(({ departure }) => departure === plan.of);
  const departure = Date.parse(plan.departure);
  if (followed === undefined || followed.probesRead) return undefined;
  if (now < Date.parse(plan.unplug) || now > departure + FRESH) return undefined;
  const doubted = doubtedProbes(saved);
  const trusted = setUp.probes.filter(({ id }) => doubted.get(id) === false);
  // Up to the end of the last minute that the filter has judged.
  const judged = Math.min(saved.through + MINUTE / 2, departure, now);
  const rows = await readingsSince(store, aircraft, now - FRESH, judged);
  const temps = new Map<(typeof trusted)[number]["at"], number[]>();
  let last = Number.NEGATIVE_INFINITY;
  for (const { id, at } of trusted) {
    const own = rows.filter((row) => row.aircraft === setUp.id && row.probe === id);
    if (own.length === 0 || plan.bands.parts[at] === undefined) continue;
    const { time, tempC } = lastMinute(own);
    last = Math.max(last, time);
    temps.set(at, [...(temps.get(at) ?? []), tempC]);
  }
  if (temps.size === 0) return undefined;
  return {
    ...{ kind: "probes-read", id: randomUUID(), at: isoOf(last), by: "keeper" },
    ...{ aircraft: setUp.id, of: plan.of },
    readings: [...temps].map(([part, all]) => ({ part, temp_c: Math.round(10 * meanOf(all)) / 10 })),
  };
}

/** Of each probe that the live filter listens to whether it doubts it: thought to be out, or left aside lately. */
function doubtedProbes({ state, tallies }: SavedEstimate): ReadonlyMap<string, boolean> {
  return new Map(
    state.probes.map(({ name, out }, p) => {
      const against = tallies[p]?.against?.at ?? Number.NEGATIVE_INFINITY;
      return [name, out > DISTRUSTED || state.time - against < LATELY];
    }),
  );
}

/** Time [ms] of the last reading, and the mean [°C] of its minute, which is what the filter judged. */
function lastMinute(own: readonly KnownReading[]): { readonly time: number; readonly tempC: number } {
  const time = Math.max(...own.map((row) => row.time));
  const minute = Math.floor(time / MINUTE);
  const rows = own.filter((row) => Math.floor(row.time / MINUTE) === minute);
  return { time, tempC: meanOf(rows.map(({ tempC }) => tempC)) };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((a, b) => a + b, 0) / values.length;
}
