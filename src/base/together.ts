import type { ScenarioDocument } from "../documents/index.js";
import { type Finding, finding } from "../findings/index.js";
import type { BaseState } from "../logbook/index.js";
import { MS_OF_HOUR } from "./forecast.js";
import { type KnownNow, nextDeparture, type ScenarioOptions, scenarioOf } from "./scenario.js";

export interface TogetherOptions extends Pick<ScenarioOptions, "now" | "members"> {
  /** Where every part of an aircraft stands now. */
  readonly estimateOf: (aircraft: string) => KnownNow | undefined;
}

export type Together =
  | {
      readonly ok: true;
      readonly scenarios: readonly { readonly id: string; readonly scenario: ScenarioDocument }[];
      /** Names of aircraft whose next departure lies beyond these hours: they stand there without a wish. */
      readonly later: readonly string[];
    }
  | { readonly ok: false; readonly reason: Finding };

/** [h] the longest that a base is planned together; project judgement: two nights. */
const LONGEST = 48;

/**
 * Scenarios of all aircraft over the same hours from now on: to an hour past the last of the next departures that
 * lies within `LONGEST` and that a forecast reaches.
 */
export function scenariosTogether(state: BaseState, { estimateOf, ...options }: TogetherOptions): Together {
  const next = [...state.aircraft].map(([id, aircraft]) => ({
    id,
    departure: nextDeparture(aircraft, options.now),
  }));
  const reaches = next
    .map(({ departure }) => hoursTo(departure?.departure ?? options.now, options.now))
    .filter((hours) => hours <= LONGEST);
  const longestFirst = [...new Set([...reaches, 1])].sort((a, b) => b - a);
  let reason: Finding | undefined;
  for (const hours of longestFirst) {
    const later: string[] = [];
    const scenarios: { id: string; scenario: ScenarioDocument }[] = [];
    for (const { id, departure } of next) {
      const isLater = departure !== undefined && hoursTo(departure.departure, options.now) > hours;
      if (isLater) later.push(state.aircraft.get(id)?.setUp.name ?? id);
      const scenario = scenarioOf(state, id, {
        ...options,
        hours,
        from: "now",
        departure: isLater ? "none" : undefined,
        estimate: estimateOf(id),
      });
      if (!scenario.ok) {
        reason ??= scenario.reason;
        break;
      }
      scenarios.push({ id, scenario: scenario.document() });
    }
    if (scenarios.length === next.length) return { ok: true, scenarios, later };
  }
  return { ok: false, reason: reason ?? finding("no-forecast-entered", {}) };
}

/** [h] whole ones, an hour past a departure. */
function hoursTo(departure: number, now: number): number {
  return Math.ceil((departure - now) / MS_OF_HOUR) + 1;
}
