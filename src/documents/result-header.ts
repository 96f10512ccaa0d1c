import { CAUTIONS, type Caution, type Configuration, type Kit } from "../aircraft/index.js";
import type { Change, Draws, TimedChange } from "../simulation/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { localText } from "../weather/index.js";
import { SCENARIO_VERSION } from "./migrations.js";
import type { HappeningDocument, StampDocument } from "./result-schema.js";
import type { ReadScenario } from "./scenario-reading.js";

/** What a result was made from. */
export interface ResultContext {
  readonly read: ReadScenario;
  readonly draws: Draws;
}

/** The part that all result documents share. */
export function headerOf({ read, draws }: ResultContext, heaters: readonly string[]) {
  const { scenario, name, zone, assumptions, warnings } = read;
  const { id, name: aircraft } = scenario.installation;
  return {
    soakline: SCENARIO_VERSION as 2,
    name,
    aircraft: { id, name: aircraft },
    start: stampOf(read, 0),
    zone,
    members: draws.members,
    assumptions: [...assumptions],
    warnings: [...warnings],
    cautions: cautionsOf(read, heaters),
  };
}

/** A moment [s since the start], to the minute. */
export function stampOf({ scenario, zone }: ReadScenario, at: number): StampDocument {
  return { at_h: rounded(at / SECONDS_OF_HOUR, 4), time: localText(scenario.start + at, zone) };
}

export function rounded(value: number, digits: number): number {
  const scale = 10 ** digits;
  // Adding 0 turns -0 into 0.
  return Math.round(value * scale) / scale + 0;
}

/** Changes as they are told in results, in order of time. */
export function happeningsOf(read: ReadScenario, changes: readonly TimedChange[]): HappeningDocument[] {
  return [...changes]
    .sort((a, b) => a.at - b.at)
    .map(({ at, change }) => ({
      ...stampOf(read, at),
      do: change.do.replace("-", "_"),
      what: subjectOf(change),
    }));
}

/** The kit without heaters that neither the wish nor the scenario's own events switch on: what criteria look at. */
export function usedKit({ scenario, want }: ReadScenario): Kit {
  const used = [...(want?.heaters ?? []), ...heatersUsed(scenario)];
  return { ...scenario.kit, heaters: scenario.kit.heaters.filter((h) => used.includes(h.id)) };
}

/** Heaters that are on at some time in a scenario of its own events. */
export function heatersUsed({ initial, events }: ReadScenario["scenario"]): string[] {
  const plugged = events.flatMap(({ change }) => (change.do === "plug-in" ? change.heaters : []));
  return [...new Set([...initial.configuration.heatersOn, ...plugged])];
}

function subjectOf(change: Change): string {
  if ("heaters" in change) return change.heaters.join(", ");
  if ("covers" in change) return change.covers.join(", ");
  return change.to;
}

/** Cautions of what is used, each once; those of a hangar only where it stands in one. */
function cautionsOf({ scenario }: ReadScenario, heaters: readonly string[]): Caution[] {
  const { kit, initial, events } = scenario;
  const covers: Configuration["coversOn"] = new Set([
    ...initial.configuration.coversOn,
    ...events.flatMap(({ change }) => (change.do === "cover-on" ? change.covers : [])),
  ]);
  const isInHangar =
    initial.configuration.place === "hangar" ||
    events.some(({ change }) => change.do === "move" && change.to === "hangar");
  const all = [
    ...kit.heaters.filter((h) => heaters.includes(h.id)).flatMap((h) => h.cautions),
    ...kit.covers.filter((c) => covers.has(c.id)).flatMap((c) => c.cautions),
  ].filter(({ text }) => isInHangar || text !== CAUTIONS.hangarVapour.text);
  return all.filter((caution, i) => all.findIndex((other) => other.text === caution.text) === i);
}
