import type { PlanDocument } from "../../../documents/index.js";
import { type KnownPlan, knownPlan, type PlanState } from "../../data/plan-state.js";
import { fullHour } from "../../units/times.js";
import type { AircraftView, CircuitView, FrostView } from "../../worker/protocol.js";

// Where things lie on the shared time axis. Times are [ms] since 1970 UTC, places on the axis are percent of it.

export const HOUR = 3_600_000;
export const AXIS_HOURS = 36;

export interface Axis {
  readonly from: number;
  readonly to: number;
}

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Soft edges: from none of the cases to 95 % of them, and back. */
export interface SoftSpan {
  readonly opens: number;
  readonly surelyOpen: number;
  readonly surelyStillOpen: number;
  readonly closes: number;
}

export interface LaneMarks {
  readonly heat?: Span & { readonly isOn: boolean };
  readonly window?: SoftSpan;
  readonly hangar?: Span;
  readonly departure?: number;
  readonly coverOff?: number;
}

/** The next 36 h in whole hours. */
export function axisAt(now: number, zone: string): Axis {
  const from = fullHour(now, zone);
  return { from, to: from + AXIS_HOURS * HOUR };
}

/** Place of a time on the axis [%], held within it. */
export function placeOn({ from, to }: Axis, at: number): number {
  return Math.min(100, Math.max(0, (100 * (at - from)) / (to - from)));
}

export function hoursOf({ from, to }: Axis): number[] {
  return Array.from({ length: Math.round((to - from) / HOUR) }, (_, i) => from + i * HOUR);
}

export function laneMarks(
  aircraft: AircraftView,
  state: PlanState | undefined,
  axis: Axis,
  now: number,
): LaneMarks {
  const plan = knownPlan(state);
  const unplug = plan === undefined ? undefined : timeOf(plan.unplug);
  const planned = plan?.plug_in ?? null;
  const isOn = aircraft.heatersOn.length > 0;
  const heatFrom = isOn ? (aircraft.heatingSince ?? now) : planned === null ? undefined : timeOf(planned);
  const heatTo = unplug ?? (isOn ? axis.to : undefined);
  return {
    ...(heatFrom === undefined || heatTo === undefined || heatTo <= heatFrom
      ? {}
      : { heat: { from: heatFrom, to: heatTo, isOn } }),
    ...(plan?.window ? { window: softSpan(plan.window) } : {}),
    ...hangarStay(aircraft, plan, axis),
    ...(plan === undefined ? {} : { departure: timeOf(plan.departure), coverOff: timeOf(plan.cover_off) }),
  };
}

export function timeOf({ time }: { readonly time: string }): number {
  return Date.parse(time);
}

function softSpan({ opens, closes }: NonNullable<PlanDocument["window"]>): SoftSpan {
  return {
    opens: timeOf(opens.p05),
    surelyOpen: timeOf(opens.p95),
    surelyStillOpen: timeOf(closes.p05),
    closes: timeOf(closes.p95),
  };
}

function hangarStay(
  { place, departures }: AircraftView,
  plan: KnownPlan | undefined,
  axis: Axis,
): { readonly hangar?: Span } {
  if (place !== "hangar") return {};
  const isPulledOut = departures[0]?.pulledOut === true;
  const leaves = plan === undefined ? axis.to : timeOf(isPulledOut ? plan.cover_off : plan.departure);
  return { hangar: { from: axis.from, to: Math.min(axis.to, leaves) } };
}

export interface LoadStep extends Span {
  readonly amps: number;
  /** Names of the aircraft that draw. */
  readonly who: readonly string[];
}

/** What a circuit carries over the axis, as the plans and the plugs stand: every heater at its full power. */
export function loadOf(
  circuit: CircuitView,
  aircraft: readonly AircraftView[],
  plans: Readonly<Record<string, PlanState>>,
  axis: Axis,
  now: number,
): LoadStep[] {
  const draws = aircraft.flatMap((each) => {
    if (each.circuit !== circuit.id) return [];
    const { heat } = laneMarks(each, plans[each.id], axis, now);
    if (heat === undefined || (!heat.isOn && isVain(knownPlan(plans[each.id])))) return [];
    const ids = heat.isOn ? each.heatersOn : (plans[each.id]?.plan?.heaters.map(({ id }) => id) ?? []);
    const power = each.heaters
      .filter(({ id, electric }) => electric && ids.includes(id))
      .reduce((sum, { powerW }) => sum + powerW, 0);
    return [{ from: heat.from, to: heat.to, amps: power / circuit.voltageV, name: each.name }];
  });
  const edges = [axis.from, axis.to, ...draws.flatMap(({ from, to }) => [from, to])]
    .filter((t) => t >= axis.from && t <= axis.to)
    .sort((a, b) => a - b);
  return edges.slice(1).flatMap((to, i) => {
    const from = edges[i];
    if (to <= from) return [];
    const on = draws.filter((d) => d.from < to && d.to > from);
    return [{ from, to, amps: on.reduce((sum, d) => sum + d.amps, 0), who: on.map(({ name }) => name) }];
  });
}

/** A plan that will not make it ready in most nights: shown, but not counted on. */
export function isVain(plan: KnownPlan | undefined): boolean {
  return plan !== undefined && plan.status === "not-reachable" && plan.chance < 0.5;
}

/** Steps in which more hang on the circuit than it has outlets for, or more than a continuous load may draw on its breaker. */
export function overloads({ continuousA, outlets }: CircuitView, steps: readonly LoadStep[]) {
  return {
    amps: steps.filter(({ amps }) => amps > continuousA),
    outlets: steps.filter(({ who }) => who.length > outlets),
  };
}

/** [kg/m²] from which hoarfrost on a wing can be seen and felt; 0.01 mm of ice. Project judgement. */
const VISIBLE_FROST = 0.005;

export type Frost = "none" | "possible" | "likely";

/** What the frost row says of an hour. */
export function frostAt(frost: FrostView | undefined, at: number): Frost | undefined {
  if (frost === undefined) return undefined;
  const i = frost.time.findLastIndex((t) => t <= at);
  if (i < 0 || at - frost.time[i] > HOUR) return undefined;
  if (frost.middle[i] > VISIBLE_FROST) return "likely";
  return frost.most[i] > VISIBLE_FROST ? "possible" : "none";
}
