import type { CheckedPlan, CheckedReading } from "../learning/index.js";
import type { PlainEvent } from "./corrections.js";
import type { DerivingContext } from "./derive-aircraft.js";
import type { EventOf } from "./events.js";
import type { BaseAircraft } from "./set-up.js";

const MINUTE = 60_000;
/** [ms] A plan was acted on where it was plugged in so much sooner or later than planned at most. Project judgement. */
const SOONER = 45 * MINUTE;
const LATER = 20 * MINUTE;
/** [ms] around the planned departure: a start there is the planned one, an earlier or later one tells of another engine. */
const EARLY_START = 30 * MINUTE;
const LATE_START = 90 * MINUTE;
/** [ms] A reading sooner after the plan shows only what the plan began with. */
const FORESEEN = 60 * MINUTE;
/** Half width of the 90 % band of a normal distribution. */
const NINETY_PERCENT = 1.6448536269514722;
/** [K] No band is narrower than what a thermometer in the hand is off by. */
const HAND_SD = 1.5;

type Issued = EventOf<"plan-issued">;

/**
 * What came of the plans that were acted on: of each departure the plan that stood when it was plugged in, or when it was to
 * be started where nothing was to be plugged in, with the start near the departure and what was read while it ran. A hard
 * start counts as one that did not hold.
 */
export function checkedPlans(
  setUp: BaseAircraft,
  events: readonly PlainEvent[],
  { nameNow }: Pick<DerivingContext, "nameNow">,
): readonly CheckedPlan[] {
  const withdrawn = new Map(
    events.flatMap((e) => (e.kind === "plan-withdrawn" ? [[nameNow(e.of), Date.parse(e.at)] as const] : [])),
  );
  const byDeparture = new Map<string, Issued[]>();
  for (const event of events) {
    if (event.kind !== "plan-issued") continue;
    byDeparture.set(event.of, [...(byDeparture.get(event.of) ?? []), event]);
  }
  const dropped = new Set(events.flatMap((e) => (e.kind === "departure-dropped" ? [nameNow(e.of)] : [])));
  return [...byDeparture].flatMap(([of, plans]): CheckedPlan[] => {
    if (dropped.has(of)) return [];
    const plan = actedOn(plans, withdrawn, setUp, events);
    return plan === undefined ? [] : [checked(plan, setUp, events)];
  });
}

/** The last plan that stood when the engine was plugged in as it said, or left alone as it said. */
function actedOn(
  plans: readonly Issued[],
  withdrawn: ReadonlyMap<string, number>,
  setUp: BaseAircraft,
  events: readonly PlainEvent[],
): Issued | undefined {
  const last = plans[plans.length - 1];
  const departure = Date.parse(last.departure);
  const on = pluggedIn(setUp, events, Date.parse(plans[0].at) - SOONER, departure);
  const acted = on[0] ?? departure;
  const plan = plans.findLast(({ at }) => Date.parse(at) <= acted);
  if (plan === undefined || plan.departure !== last.departure) return undefined;
  if ((withdrawn.get(plan.id) ?? Number.POSITIVE_INFINITY) <= acted) return undefined;
  if (plan.plug_in === null) return on.length === 0 && plan.status === "ready" ? plan : undefined;
  const wanted = Date.parse(plan.plug_in);
  return on.length > 0 && acted >= wanted - SOONER && acted <= wanted + LATER ? plan : undefined;
}

/** [ms] when heaters were plugged in, or confirmed on by their switch, in a time. */
function pluggedIn(
  { switches }: BaseAircraft,
  events: readonly PlainEvent[],
  from: number,
  to: number,
): readonly number[] {
  return events.flatMap((event) => {
    const isOn =
      event.kind === "plugged-in" ||
      (event.kind === "switch-confirmed" &&
        event.is === "on" &&
        switches.some(({ id }) => id === event.switch));
    const at = Date.parse(event.at);
    return isOn && at >= from && at < to ? [at] : [];
  });
}

function checked(plan: Issued, setUp: BaseAircraft, events: readonly PlainEvent[]): CheckedPlan {
  const departure = Date.parse(plan.departure);
  const start = events.find(
    (event): event is EventOf<"started"> =>
      event.kind === "started" &&
      Date.parse(event.at) >= departure - EARLY_START &&
      Date.parse(event.at) <= departure + LATE_START,
  );
  const { corrected } = plan;
  return {
    chance: plan.chance,
    ...(start === undefined ? {} : { held: start.how === "easy" }),
    readings: readingsUnder(plan, events, start === undefined ? departure : Date.parse(start.at)),
    place: placeAt(setUp, events, departure),
    ...(corrected === undefined
      ? {}
      : { corrected: { airShift: corrected.air_k, spread: corrected.spread } }),
  };
}

/** Readings by hand of parts that the plan says something of, up to the start. */
function readingsUnder(
  { at: issued, bands }: Issued,
  events: readonly PlainEvent[],
  until: number,
): readonly CheckedReading[] {
  if (bands === undefined) return [];
  const times = bands.at.map((at) => Date.parse(at));
  return events.flatMap((event): CheckedReading[] => {
    if (event.kind !== "reading") return [];
    const at = Date.parse(event.at);
    const band = bands.parts[event.part];
    if (band === undefined || at < Date.parse(issued) + FORESEEN || at > until) return [];
    if (at < times[0] || at > times[times.length - 1]) return [];
    const [low, mid, high] = [band.p05_c, band.p50_c, band.p95_c].map((values) => between(times, values, at));
    const sd = Math.hypot(HAND_SD, (high - low) / (2 * NINETY_PERCENT));
    return [{ at, part: event.part, off: event.temp_c - mid, sd }];
  });
}

function between(times: readonly number[], values: readonly number[], at: number): number {
  const next = Math.max(
    1,
    times.findIndex((time) => time >= at),
  );
  if (times.length === 1) return values[0];
  const share = (at - times[next - 1]) / (times[next] - times[next - 1]);
  return values[next - 1] + share * (values[next] - values[next - 1]);
}

/** Where it stood, moved or as the set-up has it. */
function placeAt({ known }: BaseAircraft, events: readonly PlainEvent[], at: number): CheckedPlan["place"] {
  const moved = events.findLast((event) => event.kind === "moved" && Date.parse(event.at) <= at);
  return moved?.kind === "moved" ? moved.to : known.place;
}
