import type { Configuration, Installation, Kit } from "../aircraft/index.js";
import {
  installationOf,
  issueText,
  kitOf,
  knownTempsOf,
  learnedOf,
  limitsOf,
  newNotes,
  type ScenarioWeather,
} from "../documents/index.js";
import { finding } from "../findings/index.js";
import { type FittedAircraft, type FleetMember, withFleet } from "../learning/index.js";
import type { BaseAircraft, Change } from "../logbook/index.js";
import type { StricterLimits } from "../readiness/index.js";
import { type AircraftScenario, type Notes, settle, siteOf, wishOf } from "../scenario/index.js";
import type { TimedChange } from "../simulation/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import type { Facts } from "./facts.js";

/** The scenario that a base's facts make; why there can be none, in words. */
export function scenarioFrom(
  facts: Facts,
  weather: ScenarioWeather,
  notes: Notes,
): AircraftScenario | string {
  const { base, aircraft, standing, want, members, correction } = facts;
  const described = describedAircraft(aircraft);
  if (typeof described === "string") return described;
  const { assumptions } = notes;
  const start = facts.start / 1000;
  const configuration: Configuration = {
    place: standing.place,
    heatersOn: new Set(standing.heatersOn),
    coversOn: new Set(standing.coversOn),
  };
  const events = facts.changes.map(
    (change): TimedChange => ({ at: change.at / 1000 - start, change: thermalChange(change) }),
  );
  const ahead = want && (want.departure - facts.start) / 3_600_000;
  if (ahead !== undefined && !(ahead > 0 && ahead <= facts.hours)) {
    return `the departure does not lie within the ${facts.hours} h that are looked at`;
  }
  const given = want && { ...want, departure: want.departure / 1000 - start };
  const wish = given && wishOf(given, described.kit, assumptions);
  const isIndoors =
    standing.place === "hangar" || facts.changes.some((c) => c.do === "move" && c.to === "hangar");
  if (base.hangar === undefined && isIndoors)
    return `${aircraft.name} stands in a hangar, and none is described`;
  const site = siteOf({ hangarC: base.hangar?.air_c, roughness: base.roughness_m }, assumptions);
  if (facts.heatedSince === undefined && standing.heatersOn.length > 0)
    assumptions.push(finding("heated-for-unknown", {}));
  const covers = [...standing.coversOn].sort();
  const use = { setting: { place: standing.place, covers }, heaters: wish?.heaters ?? standing.heatersOn };
  const learned =
    facts.learned ?? withFleet(described.learned, fleetOf(base, aircraft), use, described.installation.id);
  const settled = settle(
    {
      ...described,
      learned,
      name: aircraft.name,
      zone: base.zone,
      start,
      // As the weather is cut, to the last bit.
      duration: start + facts.hours * SECONDS_OF_HOUR - start,
      configuration,
      events,
      want: wish,
      site,
      weather,
      heatedFor: facts.heatedSince === undefined ? undefined : Math.max(0, start - facts.heatedSince / 1000),
      known: knownTempsOf(facts.initial),
      batteryFitted: true,
      ensemble: { members, seed: 1, ...(correction === undefined ? {} : { correction }) },
    },
    notes,
  );
  return settled ?? notes.issues.map(issueText).join("; ");
}

/** Others of the base of which something was learned. */
function fleetOf(base: Facts["base"], { id }: BaseAircraft): readonly FleetMember[] {
  return base.aircraft.flatMap((one) => {
    if (one.id === id || one.learned === undefined) return [];
    const described = describedAircraft(one);
    if (typeof described === "string" || described.learned === undefined) return [];
    return [{ name: one.name, learned: described.learned }];
  });
}

interface Described {
  readonly installation: Installation;
  readonly kit: Kit;
  readonly learned: FittedAircraft | undefined;
  readonly limits: StricterLimits;
}

const DESCRIBED = new WeakMap<BaseAircraft, Described | string>();

/** An aircraft of the set-up with catalogue entries put in for their ids; what is wrong with it, in words. */
function describedAircraft(setUp: BaseAircraft): Described | string {
  const known = DESCRIBED.get(setUp);
  if (known !== undefined) return known;
  const described = describe(setUp);
  DESCRIBED.set(setUp, described);
  return described;
}

function describe({ engine, kit: given, learned: taught, limits }: BaseAircraft): Described | string {
  const notes = newNotes();
  const installation = installationOf({ aircraft: engine }, notes);
  const kit = kitOf({ kit: given }, installation, notes);
  const learned =
    taught === undefined ? undefined : learnedOf({ learned: taught }, installation, undefined, notes);
  const stricter = limitsOf(limits === undefined ? {} : { limits }, installation, notes);
  if (installation === undefined || kit === undefined || notes.issues.length > 0) {
    return notes.issues.map(issueText).join("; ");
  }
  return { installation, kit, learned, limits: stricter };
}

/** A change of the logbook as a thermal run knows it. */
function thermalChange(change: Change): TimedChange["change"] {
  switch (change.do) {
    case "plug_in":
      return { do: "plug-in", heaters: change.heaters };
    case "unplug":
      return { do: "unplug", heaters: change.heaters };
    case "cover_on":
      return { do: "cover-on", covers: change.covers };
    case "cover_off":
      return { do: "cover-off", covers: change.covers };
    case "move":
      return { do: "move", to: change.to };
  }
}
