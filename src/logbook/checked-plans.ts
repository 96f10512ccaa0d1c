import { type CheckedPlan, type CheckedReading, USUAL_SENSOR } from "../learning/index.js";
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
/** [K] the same of a probe: its lasting error with its scatter. */
const PROBE_SD = Math.hypot(USUAL_SENSOR.noise, USUAL_SENSOR.offsetSd);

type Issued = EventOf<"plan-issued">;

/** A plan that was acted on, and of which departure it was. */
export interface FollowedPlan extends CheckedPlan {
  /** Id of the departure-wanted event. */
  readonly departure: string;
  /** Whether it is written down what the probes read when it was through. */
  readonly probesRead: boolean;
}

/**
 * What came of the plans that were acted on: of each departure the plan that stood when it was plugged in, or when it was to
 * be started where nothing was to be plugged in, with the start near the departure and what was read while it ran. A hard
 * start counts as one that did not hold.
 */
export function checkedPlans(
  setUp: BaseAircraft,
  events: readonly PlainEvent[],
  { nameNow }: Pick<DerivingContext, "nameNow">,
): readonly FollowedPlan[] {
  const withdrawn = new Map(
    events.flatMap((e) => (e.kind === "plan-withdrawn" ? [[nameNow(e.of), Date.parse(e.at)] as const] : [])),
  );
  const byDeparture = new Map<string, Issued[]>();
  for (const event of events) {
    if (event.kind !== "plan-issued") continue;
    byDeparture.set(event.of, [...(byDeparture.get(event.of) ?? []), event]);
  }
  const dropped = new Set(events.flatMap((e) => (e.kind === "departure-dropped" ? [nameNow(e.of)] : [])));
  return [...byDeparture].flatMap(([of, plans]): FollowedPlan[] => {
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

function checked(plan: Issued, setUp: BaseAircraft, events: readonly PlainEvent[]): FollowedPlan {
  const departure = Date.parse(plan.departure);
  const start = events.find(
    (event): event is EventOf<"started"> =>
      event.kind === "started" &&
      Date.parse(event.at) >= departure - EARLY_START &&
      Date.parse(event.at) <= departure + LATE_START,
  );
  const { corrected } = plan;
  return {
    departure: plan.of,
    probesRead: events.some((event) => event.kind === "probes-read" && event.of === plan.of),
    chance: plan.chance,
    ...(start === undefined ? {} : { held: start.how === "easy" }),
    readings: readingsUnder(plan, events, start === undefined ? departure : Date.parse(start.at)),
    place: placeAt(setUp, events, departure),
    ...(corrected === undefined
      ? {}
      : { corrected: { airShift: corrected.air_k, spread: corrected.spread } }),
  };
}

/** What was read of parts that the plan says something of, by hand or by its probes, up to the start. */
function readingsUnder(
  { at: issued, of, bands }: Issued,
  events: readonly PlainEvent[],
  until: number,
): readonly CheckedReading[] {
  if (bands === undefined) return [];
  const times = bands.at.map((at) => Date.parse(at));
  const from = Math.max(Date.parse(issued) + FORESEEN, times[0]);
  const to = Math.min(until, times[times.length - 1]);
  return events
    .flatMap((event) => readIn(event, of))
    .flatMap(({ at, part, tempC, error }): CheckedReading[] => {
      const band = bands.parts[part];
      if (band === undefined || at < from || at > to) return [];
      const [low, mid, high] = [band.p05_c, band.p50_c, band.p95_c].map((values) =>
        between(times, values, at),
      );
      return [{ at, part, off: tempC - mid, sd: Math.hypot(error, (high - low) / (2 * NINETY_PERCENT)) }];
    });
}

/** What an event says was read, with the standard deviation of its error [K]. */
function readIn(event: PlainEvent, departure: string) {
  if (event.kind === "reading")
    return [{ at: Date.parse(event.at), part: event.part, tempC: event.temp_c, error: HAND_SD }];
  if (event.kind !== "probes-read" || event.of !== departure) return [];
  const at = Date.parse(event.at);
  return event.readings.map(({ part, temp_c }) => ({ at, part, tempC: temp_c, error: PROBE_SD }));
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
