import { HEATERS, type Heater } from "../../src/aircraft/index.js";
import type { PlanDocument } from "../../src/documents/index.js";
import type { ReadScenario } from "../../src/documents/scenario-reading.js";
import { configurationAt, type TimedChange, timelineOf } from "../../src/simulation/index.js";
import { changesOf } from "./replay.js";

const HOUR = 3600;
/** [h] stamps are kept to 0.36 s. */
export const STAMP = 0.001;

/** A plan with the scenario that it answers. */
export interface Advice {
  readonly read: ReadScenario;
  readonly plan: PlanDocument;
}

/** A heater on without a break; times are [h] from the start, below 0 for heat that was on before. */
export interface HeatSpan {
  /** With the catalogue's own limits, whatever the document's heater says. */
  readonly heater: Heater;
  readonly from: number;
  readonly to: number;
  /** Begun by the plan's plug-in. */
  readonly isPlanned: boolean;
  /** Was on at the start and stays on. */
  readonly isKept: boolean;
  /** Ended by the plan's unplugging. */
  readonly endsAsPlanned: boolean;
}

/** The true record of a heater. */
export function trueHeater(id: string): Heater {
  const found = HEATERS.find((h) => h.id === id);
  if (found === undefined) throw new RangeError(`unknown heater: ${id}`);
  return found;
}

/** Every time that a heater is on, told from the happenings. */
export function heatSpans({ read, plan }: Advice): HeatSpan[] {
  const { initial, duration, kit } = read.scenario;
  const changes = changesOf(plan.happenings);
  const timeline = timelineOf(initial.configuration, changes);
  return kit.heaters.flatMap(({ id }) => {
    const heater = trueHeater(id);
    const spans: HeatSpan[] = [];
    let from: number | undefined;
    const ended = (to: number) => {
      if (from === undefined) return;
      const wasOn = from === 0 && initial.configuration.heatersOn.has(id);
      const isPlanned = !wasOn && isAt(from, plan.plug_in) && !isPluggedInBy(read, id, from);
      const begun = wasOn ? -(initial.heatedFor ?? 0) / HOUR : from;
      if (to > 0 || begun < 0) {
        const endsAsPlanned = isAt(to, plan.unplug);
        spans.push({
          heater,
          from: begun,
          to,
          isPlanned,
          isKept: wasOn && plan.heating?.stays_on === true,
          endsAsPlanned,
        });
      }
      from = undefined;
    };
    // Heat that goes off at once is on no longer, but it was.
    if (initial.configuration.heatersOn.has(id)) from = 0;
    for (const entry of timeline) {
      const at = entry.from / HOUR;
      const isOn = entry.configuration.heatersOn.has(id);
      if (!isOn) ended(at);
      else if (from === undefined) from = at;
      else if (at === 0 && initial.configuration.heatersOn.has(id) && goesOffNow(changes, id)) {
        // Off and on again at the same moment is no break.
        from = 0;
      }
    }
    ended(duration / HOUR);
    return spans;
  });
}

/** Whether the scenario's own events plug it in at a moment. */
function isPluggedInBy({ scenario }: ReadScenario, id: string, hours: number): boolean {
  return scenario.events.some(
    ({ at, change }) =>
      change.do === "plug-in" && change.heaters.includes(id) && Math.abs(at / HOUR - hours) <= STAMP,
  );
}

function goesOffNow(changes: readonly TimedChange[], id: string): boolean {
  return changes.some(({ at, change }) => at < 1 && change.do === "unplug" && change.heaters.includes(id));
}

function isAt(hours: number, stamp: { readonly at_h: number } | null): boolean {
  return stamp !== null && Math.abs(stamp.at_h - hours) <= STAMP;
}

/** Whether the aircraft stands in the hangar at some time between two moments [h]. */
export function isInside({ read, plan }: Advice, from: number, to: number): boolean {
  return isInsideBy(read, changesOf(plan.happenings), from, to);
}

export function isInsideBy(
  { scenario: { initial } }: ReadScenario,
  changes: readonly TimedChange[],
  from: number,
  to: number,
): boolean {
  const timeline = timelineOf(initial.configuration, changes);
  if (configurationAt(timeline, Math.max(0, from) * HOUR).place === "hangar") return true;
  return timeline.some(
    (entry) =>
      entry.configuration.place === "hangar" && entry.from > from * HOUR && entry.from < (to - STAMP) * HOUR,
  );
}

/** Heaters that run at some time before the departure, or did when the plan was made. */
export function runningHeaters(advice: Advice): Heater[] {
  const { heatersOn } = advice.read.scenario.initial.configuration;
  const spans = heatSpans(advice).filter(({ from }) => from < advice.plan.departure.at_h);
  return [...new Set([...spans.map(({ heater }) => heater), ...[...heatersOn].map(trueHeater)])];
}
