import type { PlainEvent } from "./corrections.js";
import type { DerivingContext } from "./derive-aircraft.js";
import type { EventOf } from "./events.js";
import type { WantedDeparture } from "./state.js";

/**
 * [ms] A start belongs to the wanted departure nearest to it, no further than this before or after; project judgement:
 * a morning's delay, but not the next day's flight.
 */
const NEAR = 6 * 3_600_000;

interface Want {
  readonly wanted: number;
  readonly departure: WantedDeparture;
}

/**
 * Departures still wanted, soonest first, and the newest plan for one of them. A start that was easy or hard closes the
 * departure that it belongs to; a second start of the same flight closes no other.
 */
export function foldDepartures(
  events: readonly PlainEvent[],
  heaters: readonly string[],
  { nameNow, lost }: DerivingContext,
): { readonly departures: readonly WantedDeparture[]; readonly plan?: EventOf<"plan-issued"> } {
  const wants = wantsIn(events, heaters, lost);
  const dropped = new Set<string>();
  const flown = new Set<string>();
  const withdrawn = new Set<string>();
  const plans = new Map(events.filter((e) => e.kind === "plan-issued").map((plan) => [plan.id, plan]));
  for (const event of events) {
    switch (event.kind) {
      case "departure-dropped": {
        const id = nameNow(event.of);
        if (wants.has(id)) dropped.add(id);
        else lost(event.id, `no departure ${event.of} is wanted`);
        break;
      }
      case "started": {
        const near = event.how === "failed" ? undefined : nearestTo(Date.parse(event.at), wants, dropped);
        if (near !== undefined) flown.add(near);
        break;
      }
      case "plan-issued":
      case "probes-read":
        if (!wants.has(nameNow(event.of))) lost(event.id, `no departure ${event.of} is wanted`);
        break;
      case "plan-withdrawn": {
        const id = nameNow(event.of);
        if (plans.has(id)) withdrawn.add(id);
        else lost(event.id, `no plan ${event.of} is known`);
      }
    }
  }
  const open = [...wants]
    .filter(([id]) => !dropped.has(id) && !flown.has(id))
    .map(([, want]) => want.departure);
  const stillWanted = new Set(open.map(({ id }) => id));
  // By the id as it was written: a plan for what a departure was before its correction is no plan for it now.
  const plan = [...plans.values()].filter(({ id, of }) => stillWanted.has(of) && !withdrawn.has(id)).at(-1);
  return {
    departures: open.sort((a, b) => a.departure - b.departure || (a.id < b.id ? -1 : 1)),
    ...(plan === undefined ? {} : { plan }),
  };
}

function wantsIn(
  events: readonly PlainEvent[],
  kit: readonly string[],
  lost: DerivingContext["lost"],
): ReadonlyMap<string, Want> {
  const wants = new Map<string, Want>();
  for (const event of events) {
    if (event.kind !== "departure-wanted") continue;
    const { id, at, departure, chance, pulled_out, heaters } = event;
    for (const heater of heaters ?? []) {
      if (!kit.includes(heater)) lost(id, `${event.aircraft} has no heater ${heater}`);
    }
    wants.set(id, {
      wanted: Date.parse(at),
      departure: {
        id,
        departure: Date.parse(departure),
        ...(chance === undefined ? {} : { chance }),
        pulledOut: pulled_out ?? false,
        ...(heaters === undefined ? {} : { heaters: heaters.filter((heater) => kit.includes(heater)) }),
      },
    });
  }
  return wants;
}

/** Among those wanted before the start and not dropped by then, flown or not. */
function nearestTo(
  start: number,
  wants: ReadonlyMap<string, Want>,
  dropped: ReadonlySet<string>,
): string | undefined {
  let nearest: string | undefined;
  let least = NEAR;
  for (const [id, { wanted, departure }] of wants) {
    const distance = Math.abs(departure.departure - start);
    if (wanted > start || dropped.has(id) || distance > least) continue;
    if (nearest !== undefined && distance === least) continue;
    nearest = id;
    least = distance;
  }
  return nearest;
}
