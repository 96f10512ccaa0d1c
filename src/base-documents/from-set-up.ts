import type { BaseDocument, ScenarioDocument, ToldDocument } from "../documents/index.js";
import type { BaseSetUp, BaseAircraft as SetUpAircraft } from "../logbook/index.js";

/** One aircraft of a base with the scenario from now on, in which its wanted departure stands. */
export interface AircraftNow {
  /** Of the set-up. */
  readonly id: string;
  readonly scenario: ScenarioDocument;
  /** What people were told it would do: `told` of its row in the plan before. */
  readonly told?: ToldDocument;
}

/**
 * The document that plans a whole base from its set-up and its aircraft's scenarios. What the scenarios share (start,
 * hours, weather, ground) is taken from the first, and reading the document refuses those that differ.
 */
export function baseDocumentOf(setUp: BaseSetUp, aircraft: readonly AircraftNow[]): BaseDocument {
  const [first] = aircraft;
  if (first === undefined) throw new RangeError("missing aircraft: none is given");
  const { start, zone, hours, weather, site, ensemble } = first.scenario;
  const { hangar, carts, people } = setUp;
  const told = aircraft.flatMap((one) => (one.told === undefined ? [] : [one.told]));
  return {
    soakline: 2,
    kind: "base",
    name: setUp.name,
    start,
    zone: zone ?? setUp.zone,
    hours,
    weather,
    ...(site === undefined ? {} : { site }),
    ...(ensemble === undefined ? {} : { ensemble }),
    ...(hangar === undefined ? {} : { hangar }),
    circuits: setUp.circuits.map((circuit) => ({ ...circuit })),
    ...(carts === undefined ? {} : { carts }),
    ...(people === undefined ? {} : { people }),
    aircraft: aircraft.map(({ id, scenario }) => {
      const known = setUp.aircraft.find((one) => one.id === id);
      if (known === undefined) {
        throw new RangeError(
          `unknown aircraft: ${id} (expected one of ${setUp.aircraft.map((a) => a.id).join(", ")})`,
        );
      }
      return {
        id,
        scenario: ownPart(scenario, zone),
        ...(known.circuit === undefined ? {} : { circuits: [known.circuit] }),
        switching: isSwitched(known, scenario) ? "network" : "hand",
        ...connectedOf(known, scenario),
      };
    }),
    ...(told.length === 0 ? {} : { told }),
  };
}

/** Without the hangar and the drawn cases, which are the base's; a zone that all share too. */
function ownPart({ hangar: _h, ensemble: _e, ...scenario }: ScenarioDocument, zone: string | undefined) {
  if (zone !== undefined || scenario.zone === undefined) return scenario;
  const { zone: _z, ...rest } = scenario;
  return rest;
}

/** Every heater that is wanted hangs on a switch. */
function isSwitched({ switches }: SetUpAircraft, { want, kit }: ScenarioDocument): boolean {
  const fed = new Set(switches.flatMap((s) => s.heaters));
  const wanted = want?.heaters ?? kit.heaters.map((h) => (typeof h === "string" ? h : h.id));
  return wanted.length > 0 && wanted.every((id) => fed.has(id));
}

function connectedOf({ circuit }: SetUpAircraft, { plugged_in = [] }: ScenarioDocument) {
  return circuit === undefined || plugged_in.length === 0 ? {} : { connected: circuit };
}
