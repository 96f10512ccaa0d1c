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

/** Heaters of a request that its place or engine forbids: a burner in a hangar, or one too big for the engine. */
export function barredHeaters(request: PlanRequest): BarredHeater[] {
  const { scenario } = request;
  return usedHeaters(request).flatMap((heater): BarredHeater[] => {
    if (isTooSmall(scenario.installation, heater)) return [{ heater, reason: "engine-too-small" }];
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

/** A request as it may be planned: without heaters that may not be used, and with heat off that has been on too long. */
export function prepareRequest(request: PlanRequest): PlanRequest {
  if (request.settled !== undefined) return request;
  const barred = barredHeaters(request);
  const heating = heatingNow(request);
  const kept = request.heaters.filter((id) => !barred.some(({ heater }) => heater.id === id));
  const { scenario } = request;
  const prepared = { ...request, heaters: kept, settled: { barred, heating } };
  return heating === undefined || heating.staysOn ? prepared : { ...prepared, scenario: switchOff(scenario) };
}

function heatingNow(request: PlanRequest): HeatingNow | undefined {
  const { kit, initial } = request.scenario;
  const heaters = kit.heaters.filter((h) => initial.configuration.heatersOn.has(h.id));
  if (heaters.length === 0) return undefined;
  const longest = SECONDS_OF_HOUR * Math.min(...heaters.map((h) => h.longest_on_h));
  const onFor = initial.heatedFor;
  const unplug = request.wish.departure - unplugBeforeOf(request);
  const staysOn = (onFor ?? 0) + unplug <= longest && outdoorsSince(request, heaters) <= 0;
  return { heaters, onFor, longest, staysOn, wet: initial.wetFor };
}

function switchOff(scenario: Scenario): Scenario {
  const { initial } = scenario;
  const configuration = { ...initial.configuration, heatersOn: new Set<string>() };
  return { ...scenario, initial: { ...initial, configuration } };
}

/** Plug-ins within all limits: longest and shortest time on, and where a heater may run. */
export function heatingSpan(request: PlanRequest): HeatingSpan {
  const used = usedHeaters(request);
  const { earliest, latest } = spanOf(request, used);
  return { earliest: Math.max(earliest, outdoorsSince(request, used)), latest };
}

/** [s] before the start at which heating ends: as wished, and long enough for the checks that the makers ask for. */
export function unplugBeforeOf({ wish, ...request }: PlanRequest): number {
  const pauses = usedHeaters(request).map(({ procedure }) => (procedure?.pause_min ?? 0) * SECONDS_OF_MINUTE);
  return Math.max(wish.unplugBefore, ...pauses);
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
