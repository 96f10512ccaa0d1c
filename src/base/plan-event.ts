import type { PlanDocument } from "../documents/index.js";
import { type Finding, finding } from "../findings/index.js";
import type { AircraftState, EventOf } from "../logbook/index.js";
import type { DrawCorrection } from "../simulation/index.js";
import { isoOf } from "./forecast.js";
import { heatingSince } from "./standing.js";

interface PlanIssue {
  /** [ms] since 1970 UTC. */
  readonly now: number;
  /** Id of the event, made by the caller. */
  readonly id: string;
  /** Id of the departure-wanted event it answers. */
  readonly of: string;
  /** What the base's own record had changed in it. */
  readonly correction?: DrawCorrection | undefined;
}

/** A plan as an event of the logbook. */
export function planIssued(
  aircraft: AircraftState,
  plan: PlanDocument,
  { now, id, of, correction }: PlanIssue,
): EventOf<"plan-issued"> {
  const heaters = plan.heaters.map((heater) => heater.id);
  const since = heatingSince(aircraft, heaters);
  // On too long: it goes off now, and on again when the plan says so.
  const goesOff = plan.heating?.stays_on === false;
  return {
    ...{ kind: "plan-issued", id, at: isoOf(now), aircraft: aircraft.setUp.id, of },
    status: plan.status === "ready" || plan.status === "not-required" ? "ready" : "not-reachable",
    plug_in: since === undefined || goesOff ? plannedPlugIn(plan) : keptPlugIn(aircraft, { since, now, of }),
    unplug: isoOf(Date.parse(plan.unplug.time)),
    departure: isoOf(Date.parse(plan.departure.time)),
    heaters,
    chance: plan.chance,
    weakest: plan.weakest,
    message: messageOf(plan),
    energy_kwh: plan.energy_kwh.p50,
    bands: bandsOf(plan),
    ...(correction === undefined
      ? {}
      : { corrected: { air_k: correction.airShift, spread: correction.spread } }),
  };
}

/** Parts that people and probes read, as set-ups name them. */
const BANDED = ["oil", "sump", "crankcase", "cylinders", "heads", "battery", "coolant"];
/** Times between now and the departure that are kept: a logbook is no place for every minute. */
const BANDED_TIMES = 10;

/** What the plan expects of parts up to the departure. */
function bandsOf({ course, departure, start }: PlanDocument): NonNullable<EventOf<"plan-issued">["bands"]> {
  const upTo = course.time_h.filter((h) => h <= departure.at_h);
  const last = Math.max(0, upTo.length - 1);
  const kept = new Set(
    Array.from({ length: BANDED_TIMES + 1 }, (_, i) => Math.round((i * last) / BANDED_TIMES)),
  );
  const some = (values: readonly number[]) =>
    values.filter((_, k) => kept.has(k)).map((v) => Math.round(10 * v) / 10);
  const from = Date.parse(start.time);
  const parts = BANDED.flatMap((name) => {
    const band = course.parts[name];
    if (band === undefined) return [];
    return [[name, { p05_c: some(band.p05_c), p50_c: some(band.p50_c), p95_c: some(band.p95_c) }] as const];
  });
  return {
    at: upTo.filter((_, k) => kept.has(k)).map((h) => isoOf(from + h * 3_600_000)),
    parts: Object.fromEntries(parts),
  };
}

function messageOf({ status, message, look_first }: PlanDocument): Finding {
  if (look_first.length > 0)
    return finding("verdict-look-first", { what: look_first.map(({ text }) => text) });
  if (status === "not-required") return finding("plan-not-required", {});
  return message ?? finding("plan-ready", {});
}

/** What would overheat something is not to be plugged in, whatever it brings. */
function plannedPlugIn({ plug_in, too_hot }: PlanDocument): string | null {
  if (too_hot.length > 0) return null;
  return plug_in === null ? null : isoOf(Date.parse(plug_in.time));
}

/**
 * A heater that is on stays on until it is to be unplugged: then the plug-in is when it was plugged in, not a later one,
 * so that no heater is switched off and on again for a forecast that changed a little.
 */
function keptPlugIn(
  { plan: standing }: AircraftState,
  { since, now, of }: { readonly since: number; readonly now: number; readonly of: string },
): string {
  const planned = standing?.of === of && standing.plug_in !== null ? Date.parse(standing.plug_in) : undefined;
  return isoOf(planned !== undefined && planned <= now ? planned : since);
}

/** [ms] by which the plug-in, or the unplugging, has to move; two steps of the plan's own grid. Project judgement. */
const PLUG_IN_MOVED = 10 * 60_000;
const UNPLUG_MOVED = 60_000;
/** [0..1] by which the chance has to change; about what few members tell apart. Project judgement. */
const CHANCE_MOVED = 0.05;

/** Whether a plan says enough that the standing one does not, so that people are not told of every breath of wind. */
export function isNews(standing: EventOf<"plan-issued"> | undefined, plan: EventOf<"plan-issued">): boolean {
  if (standing === undefined || standing.of !== plan.of) return true;
  if (standing.status !== plan.status && !isOnTheEdge(standing, plan)) return true;
  if (standing.departure !== plan.departure || standing.heaters.join() !== plan.heaters.join()) return true;
  if ((standing.plug_in === null) !== (plan.plug_in === null)) return true;
  const moved = (a: string | null, b: string | null) => Math.abs(Date.parse(a ?? "") - Date.parse(b ?? ""));
  return (
    moved(standing.plug_in, plan.plug_in) >= PLUG_IN_MOVED ||
    moved(standing.unplug, plan.unplug) >= UNPLUG_MOVED ||
    Math.abs(standing.chance - plan.chance) >= CHANCE_MOVED
  );
}

/**
 * On the edge of the wanted chance every breath of wind turns ready into not ready and back: while it heats, a change
 * smaller than that is no news. What is written down says what was counted all the same.
 */
function isOnTheEdge(standing: EventOf<"plan-issued">, plan: EventOf<"plan-issued">): boolean {
  const isHeating = standing.plug_in !== null && Date.parse(standing.plug_in) <= Date.parse(plan.at);
  return isHeating && Math.abs(standing.chance - plan.chance) < CHANCE_MOVED;
}
