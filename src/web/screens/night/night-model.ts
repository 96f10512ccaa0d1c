import type { PlanDocument } from "../../../documents/index.js";
import type { KnownPlan } from "../../../first-screen/index.js";
import { knownPlan, type PlanState } from "../../data/plan-state.js";
import { fullHour } from "../../units/times.js";
import type { AircraftView, CircuitView, FrostView } from "../../worker/protocol.js";

// Where things lie on the shared time axis. Times are [ms] since 1970 UTC, places on the axis are percent of it.

export const HOUR = 3_600_000;
export const AXIS_HOURS = 36;

export interface Axis {
  readonly from: number;
  readonly to: number;
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** A time in which it may be started: with the wanted chance from `sure` to `sure`, in half of all cases from end to end. */
export interface SoftSpan {
  readonly opens: number;
  readonly surelyOpen: number;
  readonly surelyStillOpen: number;
  readonly closes: number;
}

interface HeatSpan extends Span {
  readonly isOn: boolean;
}

export interface LaneMarks {
  readonly heats: readonly HeatSpan[];
  /** As planned: covers off, and pulled out where it was asked for. */
  readonly window?: SoftSpan;
  /** Only should covers stay on and the aircraft stay where it is; never drawn as ready. */
  readonly covered?: SoftSpan;
  readonly hangar?: Span;
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

/** @param departure the one that is shown: a plan for another one says nothing of when it is ready */
export function laneMarks(
  aircraft: AircraftView,
  state: PlanState | undefined,
  axis: Axis,
  now: number,
  departure = aircraft.departures[0]?.departure,
): LaneMarks {
  const plan = knownPlan(state);
  const isOfThis = plan !== undefined && timeOf(plan.departure) === departure && !aircraft.running;
  return {
    heats: heatSpans(aircraft, plan, axis, now),
    ...(isOfThis ? readyWindows(plan) : {}),
    ...hangarStay(aircraft, plan, axis),
  };
}

/** Heat that is on, and heat that is planned. */
function heatSpans(
  { heatersOn, heatingSince }: AircraftView,
  plan: KnownPlan | undefined,
  axis: Axis,
  now: number,
): HeatSpan[] {
  const isOn = heatersOn.length > 0;
  const unplug = plan === undefined ? axis.to : timeOf(plan.unplug);
  const offAt = plan?.heating?.stays_on === false ? now : unplug;
  const isPlanned = plan !== undefined && plan.plug_in !== null && (!isOn || plan.heating !== null);
  const spans = [
    ...(isOn ? [{ from: heatingSince ?? now, to: offAt, isOn: true }] : []),
    ...(isPlanned && plan.plug_in !== null ? [{ from: timeOf(plan.plug_in), to: unplug, isOn: false }] : []),
  ];
  return spans.filter(({ from, to }) => to > from);
}

/** When it may be started, where the plan has it ready with the wanted chance and nothing has to be looked at first. */
function readyWindows(plan: KnownPlan): Pick<LaneMarks, "window" | "covered"> {
  const isReady = plan.status === "ready" || plan.status === "not-required";
  if (!isReady || plan.chance < plan.wanted_chance) return {};
  const window = softSpan(plan.window);
  const covered = softSpan(plan.covered_window);
  return {
    ...(window === undefined ? {} : { window }),
    ...(covered === undefined || isSame(covered, window) ? {} : { covered }),
  };
}

function isSame(a: SoftSpan, b: SoftSpan | undefined): boolean {
  return a.surelyOpen === b?.surelyOpen && a.surelyStillOpen === b.surelyStillOpen;
}

export function timeOf({ time }: { readonly time: string }): number {
  return Date.parse(time);
}

function softSpan(window: PlanDocument["window"] | undefined): SoftSpan | undefined {
  if (window === undefined || window === null) return undefined;
  const { opens, closes } = window;
  const [surelyOpen, surelyStillOpen] = [timeOf(opens.sure), timeOf(closes.sure)];
  if (surelyStillOpen <= surelyOpen) return undefined;
  return {
    opens: Math.min(surelyOpen, timeOf(opens.half)),
    ...{ surelyOpen, surelyStillOpen },
    closes: Math.max(surelyStillOpen, timeOf(closes.half)),
  };
}

/** A soft span on the axis: its ends [%], and where within them it is sure [%]. */
export interface Drawn {
  readonly from: number;
  readonly to: number;
  readonly sureFrom: number;
  readonly sureTo: number;
}

export function drawnSpan(axis: Axis, { opens, surelyOpen, surelyStillOpen, closes }: SoftSpan): Drawn {
  const [from, to] = [placeOn(axis, opens), placeOn(axis, closes)];
  const within = (at: number) => (to > from ? (100 * (placeOn(axis, at) - from)) / (to - from) : 0);
  return { from, to, sureFrom: within(surelyOpen), sureTo: within(surelyStillOpen) };
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

/** Heaters that a plan uses; before a whole plan names them, those of the wish that may run here. */
export function usedHeaters(
  { heaters, departures }: AircraftView,
  plan: KnownPlan | undefined,
): readonly { readonly id: string; readonly name: string; readonly attended: boolean }[] {
  if (plan?.heaters !== undefined) return plan.heaters;
  const wanted = departures[0]?.heaters;
  const barred = plan?.barred.map(({ id }) => id) ?? [];
  return heaters.filter(({ id }) => (wanted?.includes(id) ?? true) && !barred.includes(id));
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
    const plan = knownPlan(plans[each.id]);
    return laneMarks(each, plans[each.id], axis, now).heats.flatMap(({ from, to, isOn }) => {
      if (!isOn && isVain(plan)) return [];
      const ids = isOn ? each.heatersOn : newlyOn(each, plan);
      const power = each.heaters
        .filter(({ id, electric }) => electric && ids.includes(id))
        .reduce((sum, { powerW }) => sum + powerW, 0);
      return [{ from, to, amps: power / circuit.voltageV, name: each.name }];
    });
  });
  const edges = [axis.from, axis.to, ...draws.flatMap(({ from, to }) => [from, to])]
    .filter((t) => t >= axis.from && t <= axis.to)
    .sort((a, b) => a - b);
  return edges.slice(1).flatMap((to, i) => {
    const from = edges[i];
    if (to <= from) return [];
    const on = draws.filter((d) => d.from < to && d.to > from);
    return [
      {
        from,
        to,
        amps: on.reduce((sum, d) => sum + d.amps, 0),
        who: [...new Set(on.map(({ name }) => name))],
      },
    ];
  });
}

/** Heaters that are plugged in as planned, beside those that stay on. */
function newlyOn(aircraft: AircraftView, plan: KnownPlan | undefined): string[] {
  const stays = plan?.heating?.stays_on ? plan.heating.heaters : [];
  return usedHeaters(aircraft, plan).flatMap(({ id }) => (stays.includes(id) ? [] : [id]));
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
