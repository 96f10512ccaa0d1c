import { CAUTIONS, type Caution, type Configuration } from "../aircraft/index.js";
import { eachOnce, keyOf } from "../findings/index.js";
import type { AircraftScenario, DrawnScenario } from "../scenario/index.js";
import type { Change, TimedChange } from "../simulation/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { localText } from "../weather/index.js";
import { SCENARIO_VERSION } from "./migrations.js";
import type { HappeningDocument, StampDocument } from "./result-schema.js";

/** The part that all result documents share. */
export function headerOf({ read, draws }: DrawnScenario, heaters: readonly string[]) {
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
export function stampOf({ scenario, zone }: AircraftScenario, at: number): StampDocument {
  return { at_h: rounded(at / SECONDS_OF_HOUR, 4), time: localText(scenario.start + at, zone) };
}

export function rounded(value: number, digits: number): number {
  const scale = 10 ** digits;
  // Adding 0 turns -0 into 0.
  return Math.round(value * scale) / scale + 0;
}

/** Changes as they are told in results, in order of time. */
export function happeningsOf(read: AircraftScenario, changes: readonly TimedChange[]): HappeningDocument[] {
  return [...changes]
    .sort((a, b) => a.at - b.at)
    .map(({ at, change }) => ({
      ...stampOf(read, at),
      do: change.do.replace("-", "_"),
      what: subjectOf(change),
    }));
}

function subjectOf(change: Change): string {
  if ("heaters" in change) return change.heaters.join(", ");
  if ("covers" in change) return change.covers.join(", ");
  return change.to;
}

/** Cautions of what is used, each once; those of a hangar only where it stands in one. */
function cautionsOf({ scenario }: AircraftScenario, heaters: readonly string[]): Caution[] {
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
  ].filter((caution) => isInHangar || keyOf(caution) !== keyOf(CAUTIONS.hangarVapour));
  return eachOnce(all);
}
