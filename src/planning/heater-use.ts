import type { Heater, Installation } from "../aircraft/index.js";
import { configurationAt, type Scenario, timelineOf } from "../simulation/index.js";
import { SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import type { PlanRequest } from "./request.js";

/** Why a heater may not be used, whatever it would bring. */
export type BarReason = "indoors" | "engine-too-small";

export interface BarredHeater {
  readonly heater: Heater;
  readonly reason: BarReason;
}

/** Plug-in times that a heater's own limits allow [s]; none where `earliest` is past `latest`. */
export interface HeatingSpan {
  readonly earliest: number;
  readonly latest: number;
}

/**
 * Heaters of a request, or on when it is made, that its place or engine forbids: a burner in a hangar, or one too big for
 * the engine.
 */
function barredHeaters(request: PlanRequest): BarredHeater[] {
  const { scenario } = request;
  const on = scenario.initial.configuration.heatersOn;
  return scenario.kit.heaters.flatMap((heater): BarredHeater[] => {
    const isWanted = request.heaters.includes(heater.id);
    if (!isWanted && !on.has(heater.id)) return [];
    if (isTooSmall(scenario.installation, heater)) return [{ heater, reason: "engine-too-small" }];
    if (!isWanted) return [];
    const { earliest, latest } = spanOf(request, [heater]);
    const outdoors = outdoorsSince(request, [heater]);
    const isInside = outdoors === Number.POSITIVE_INFINITY || (outdoors > latest && latest >= earliest);
    return isInside ? [{ heater, reason: "indoors" }] : [];
  });
}

/** Heat that is on when the plan is made. */
export interface HeatingNow {
  readonly heaters: readonly Heater[];
  /** [s] that it has been on; undefined where nobody knows. */
  readonly onFor: number | undefined;
  /** [s] the shortest of the heaters' longest times on. */
  readonly longest: number;
  /** It may stay on until unplugging; otherwise it goes off now, and the plan begins cold. */
  readonly staysOn: boolean;
  /** [s] that the inside was wet or frosted since it was plugged in; undefined where nobody knows since when. */
  readonly wet: number | undefined;
}

/** A request as it may be planned: without heaters that may not be used, and with heat off that may not stay on. */
export function prepareRequest(request: PlanRequest): PlanRequest {
  if (request.settled !== undefined) return request;
  const barred = barredHeaters(request);
  const kept = request.heaters.filter((id) => !barred.some(({ heater }) => heater.id === id));
  const allowed = { ...request, heaters: kept };
  const heating = heatingNow(allowed);
  const { scenario } = request;
  const prepared = { ...allowed, settled: { barred, heating } };
  return heating === undefined || heating.staysOn ? prepared : { ...prepared, scenario: switchOff(scenario) };
}

function heatingNow(request: PlanRequest): HeatingNow | undefined {
  const { kit, initial, installation } = request.scenario;
  const heaters = kit.heaters.filter((h) => initial.configuration.heatersOn.has(h.id));
  if (heaters.length === 0) return undefined;
  const longest = SECONDS_OF_HOUR * Math.min(...heaters.map((h) => h.longest_on_h));
  const onFor = initial.heatedFor;
  // What has been on for nobody knows how long counts as on too long.
  const staysOn =
    onFor !== undefined &&
    outdoorsSince(request, heaters) <= 0 &&
    heaters.every((heater) => {
      const inAll = onFor + endOf(request, heater);
      return (
        inAll <= heater.longest_on_h * SECONDS_OF_HOUR &&
        !isTooSmall(installation, heater) &&
        !isCutShort(heater, inAll, request)
      );
    });
  return { heaters, onFor, longest, staysOn, wet: initial.wetFor };
}

/** [s] when heat that is on ends: as planned, or earlier by somebody who unplugs it. */
function endOf(request: PlanRequest, { id }: Heater): number {
  const unplugged = unpluggings(request.scenario, id);
  return Math.min(request.wish.departure - unplugBeforeOf(request), ...unplugged);
}

/** [s] at which the scenario's own events unplug a heater. */
function unpluggings({ events }: Scenario, id: string): number[] {
  return events.flatMap(({ at, change }) =>
    change.do === "unplug" && change.heaters.includes(id) ? at : [],
  );
}

/** Whether heating by hand would end before its least time, or without the pause that the makers ask for. */
function isCutShort({ procedure, least_on_h }: Heater, inAll: number, { wish }: PlanRequest): boolean {
  if (procedure === undefined) return false;
  return inAll < least_on_h * SECONDS_OF_HOUR || wish.departure < procedure.pause_min * SECONDS_OF_MINUTE;
}

function switchOff(scenario: Scenario): Scenario {
  const { initial } = scenario;
  const configuration = { ...initial.configuration, heatersOn: new Set<string>() };
  return { ...scenario, initial: { ...initial, configuration } };
}

/** Plug-ins within all limits: longest and shortest time on, where a heater may run, and what it was on before. */
export function heatingSpan(request: PlanRequest): HeatingSpan {
  const used = usedHeaters(request);
  const { earliest, latest } = spanOf(request, used);
  const rested = used.map((heater) => restedSince(request, heater));
  return { earliest: Math.max(earliest, outdoorsSince(request, used), ...rested), latest };
}

/** [s] before the start at which heating ends: as wished, and long enough for the checks that the makers ask for. */
export function unplugBeforeOf(request: PlanRequest): number {
  const { wish, scenario, heaters } = request;
  const on = heatersUsed(scenario);
  const pauses = scenario.kit.heaters
    .filter(({ id }) => heaters.includes(id) || on.has(id))
    .map(({ procedure }) => (procedure?.pause_min ?? 0) * SECONDS_OF_MINUTE);
  return Math.min(wish.departure, Math.max(wish.unplugBefore, ...pauses));
}

/** Whether the scenario's own events heat before a time [s], or what is on at its start does. */
export function isHeatedAnyway(scenario: Scenario, until: number): boolean {
  const timeline = timelineOf(scenario.initial.configuration, scenario.events);
  return timeline.some(({ from, configuration }) => from < until && configuration.heatersOn.size > 0);
}

function heatersUsed({ initial, events }: Scenario): Set<string> {
  const plugged = events.flatMap(({ change }) => (change.do === "plug-in" ? change.heaters : []));
  return new Set([...initial.configuration.heatersOn, ...plugged]);
}

/** [s] off before a heater that was on for its longest time goes on again; project judgement. */
export const REST = SECONDS_OF_HOUR;

/**
 * [s] from when on a heater may be plugged in, after all that it was on before: no plug-in is cut short by somebody who
 * unplugs it, and two goes close together count as one.
 */
function restedSince(request: PlanRequest, { id, longest_on_h }: Heater): number {
  const { scenario, wish, settled } = request;
  const unplug = wish.departure - unplugBeforeOf(request);
  const heating = settled?.heating;
  const wasOn = heating?.heaters.some((h) => h.id === id) === true;
  const goesOff = wasOn && !heating.staysOn;
  const before = wasOn ? (heating.onFor ?? Number.POSITIVE_INFINITY) : 0;
  const goes = goesOff ? [{ from: -before, to: 0 }] : [];
  const unplugged = unpluggings(scenario, id).filter((at) => at < unplug);
  let from: number | undefined;
  for (const entry of timelineOf(scenario.initial.configuration, scenario.events)) {
    if (entry.from >= unplug) break;
    const isOn = entry.configuration.heatersOn.has(id);
    if (isOn) from ??= entry.from === 0 ? -before : entry.from;
    else if (from !== undefined) {
      goes.push({ from, to: entry.from });
      from = undefined;
    }
  }
  const longest = longest_on_h * SECONDS_OF_HOUR;
  const rested = goes.map((go) => (unplug - go.from > longest ? go.to + REST : go.to));
  return Math.max(0, ...unplugged, ...rested);
}

export function isTooSmall({ displacement_l }: Installation, { displacement_least_l }: Heater): boolean {
  return displacement_least_l !== undefined && displacement_l < displacement_least_l;
}

function usedHeaters({ scenario, heaters }: Pick<PlanRequest, "scenario" | "heaters">): Heater[] {
  return scenario.kit.heaters.filter((h) => heaters.includes(h.id));
}

function spanOf(request: PlanRequest, used: readonly Heater[]): HeatingSpan {
  const unplug = request.wish.departure - unplugBeforeOf(request);
  const longest = SECONDS_OF_HOUR * Math.min(...used.map((h) => h.longest_on_h), NO_LIMIT_H);
  const least = SECONDS_OF_HOUR * Math.max(...used.map((h) => h.least_on_h), 0);
  return { earliest: Math.max(0, unplug - longest), latest: unplug - least };
}

/** [h] */
const NO_LIMIT_H = 1e6;

/** [s] from when on it stands outdoors until unplugging, where a heater asks for that; infinite where it stands inside then. */
function outdoorsSince(request: PlanRequest, used: readonly Heater[]): number {
  if (used.every((h) => h.runs === "anywhere")) return 0;
  const { initial, events } = request.scenario;
  const unplug = request.wish.departure - unplugBeforeOf(request);
  const timeline = timelineOf(initial.configuration, events);
  if (configurationAt(timeline, unplug).place === "hangar") return Number.POSITIVE_INFINITY;
  const inside = timeline.filter(
    ({ from, configuration }) => from <= unplug && configuration.place === "hangar",
  );
  if (inside.length === 0) return 0;
  const last = inside[inside.length - 1].from;
  return timeline.find(({ from, configuration }) => from > last && configuration.place === "ramp")?.from ?? 0;
}
