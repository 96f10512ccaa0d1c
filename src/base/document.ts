import { learnedDocument, type ScenarioDocument } from "../documents/index.js";
import type { FittedAircraft } from "../learning/index.js";
import type { Change } from "../logbook/index.js";
import type { Facts, Want } from "./facts.js";
import { isoOf } from "./forecast.js";

/** The document that a base's facts make, for whoever exchanges it: read, it gives the scenario that they make. */
export function documentOf(facts: Facts, learned: FittedAircraft | undefined): ScenarioDocument {
  const { base, aircraft, start, hours, standing, heatedSince, initial, weather, changes, want, correction } =
    facts;
  return {
    soakline: 2,
    name: aircraft.name,
    aircraft: aircraft.engine,
    ...(learned === undefined ? {} : { learned: learnedDocument(learned) }),
    kit: aircraft.kit,
    zone: base.zone,
    place: standing.place,
    fitted: { covers: standing.coversOn },
    plugged_in: standing.heatersOn,
    ...(heatedSince === undefined ? {} : { plugged_in_since: isoOf(heatedSince) }),
    ...(base.hangar === undefined ? {} : { hangar: { air_c: base.hangar.air_c } }),
    ...(base.roughness_m === undefined ? {} : { site: { roughness_m: base.roughness_m } }),
    ...(aircraft.limits === undefined ? {} : { limits: aircraft.limits }),
    ensemble: {
      members: facts.members,
      seed: 1,
      ...(correction === undefined
        ? {}
        : {
            correction: {
              air_k: correction.airShift,
              spread: correction.spread,
              plans: correction.plans,
            },
          }),
    },
    start: isoOf(start),
    hours,
    weather,
    ...(Object.keys(initial).length === 0 ? {} : { initial }),
    events: changes.map(eventOf),
    ...(want === undefined ? {} : { want: wantSection(want) }),
  };
}

function wantSection(want: Want): NonNullable<ScenarioDocument["want"]> {
  const { departure, pulledOut, chance, heaters, unplugBefore, coverOffBefore } = want;
  return {
    departure: isoOf(departure),
    pulled_out: pulledOut,
    ...(chance === undefined ? {} : { chance }),
    ...(heaters === undefined ? {} : { heaters: [...heaters] }),
    ...(unplugBefore === undefined ? {} : { unplug_before_min: unplugBefore }),
    ...(coverOffBefore === undefined ? {} : { cover_off_before_min: coverOffBefore }),
  };
}

function eventOf(change: Change): NonNullable<ScenarioDocument["events"]>[number] {
  const time = isoOf(change.at);
  switch (change.do) {
    case "plug_in":
    case "unplug":
      return { time, do: change.do, heaters: [...change.heaters] };
    case "cover_on":
    case "cover_off":
      return { time, do: change.do, covers: [...change.covers] };
    case "move":
      return { time, do: "move", to: change.to };
  }
}
