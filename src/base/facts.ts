import type { ScenarioDocument } from "../documents/index.js";
import type { FittedAircraft, PartEstimate } from "../learning/index.js";
import type { AircraftState, BaseState, Change, WantedDeparture } from "../logbook/index.js";
import type { RecordCorrection } from "../scenario/index.js";
import { USUAL_MEMBERS } from "../simulation/index.js";
import { initialFrom } from "./initial.js";
import { changesBetween, heatingSince, type Standing, standingAt } from "./standing.js";

export type WeatherSection = ScenarioDocument["weather"];
export type InitialSection = NonNullable<ScenarioDocument["initial"]>;

/** What a base's logbook says of one aircraft over some hours: both a scenario and its document are made of it. */
export interface Facts {
  readonly base: BaseState["setUp"];
  readonly aircraft: AircraftState["setUp"];
  /** [ms] since 1970 UTC */
  readonly start: number;
  /** [h] */
  readonly hours: number;
  readonly standing: Standing;
  /** [ms] since when the heaters that are on at the start have been on. */
  readonly heatedSince: number | undefined;
  readonly initial: InitialSection;
  readonly weather: WeatherSection;
  readonly changes: readonly Change[];
  readonly want: Want | undefined;
  readonly members: number;
  /** What a live estimate learned of the aircraft beside its logs. */
  readonly learned: FittedAircraft | undefined;
  /** What the base's own record asks of its plans. */
  readonly correction: RecordCorrection | undefined;
}

/** A departure with the aircraft's habits put in. */
export interface Want {
  /** [ms] since 1970 UTC */
  readonly departure: number;
  readonly pulledOut: boolean;
  readonly chance: number | undefined;
  readonly heaters: readonly string[] | undefined;
  /** [min] */
  readonly unplugBefore: number | undefined;
  readonly coverOffBefore: number | undefined;
}

/** A run from the anchor shows the past and where parts stand; a plan may want more. */
const MS_OF_MINUTE = 60_000;

export interface FactsFrom {
  readonly start: number;
  /** [ms] up to when what was done counts as done at the start. */
  readonly known: number;
  readonly hours: number;
  readonly weather: WeatherSection;
  readonly initial: InitialSection | readonly PartEstimate[] | undefined;
  readonly learned?: FittedAircraft | undefined;
  readonly departure?: WantedDeparture | undefined;
  readonly members?: number | undefined;
  /** Nothing heats, whatever is plugged in. */
  readonly withoutPower?: boolean | undefined;
  /** Covers fitted at the start, instead of those of the logbook. */
  readonly coversOn?: readonly string[] | undefined;
}

export function factsOf({ setUp: base, record }: BaseState, aircraft: AircraftState, from: FactsFrom): Facts {
  const { start, known, hours, weather, initial = {}, departure, members = USUAL_MEMBERS } = from;
  const found = standingAt(aircraft, known);
  const standing = { ...found, coversOn: [...(from.coversOn ?? found.coversOn)] };
  const since = heatingSince(aircraft, standing.heatersOn);
  const changes = changesBetween(aircraft, known, start + hours * 3_600_000);
  const facts: Facts = {
    base,
    aircraft: aircraft.setUp,
    start,
    hours,
    standing,
    heatedSince: since === undefined || since > known ? undefined : Math.min(since, start),
    initial: isEstimate(initial) ? initialFrom(initial) : initial,
    weather,
    changes,
    want: departure === undefined ? undefined : wantOf(aircraft, departure, start),
    members,
    learned: from.learned,
    correction: record.correction,
  };
  return from.withoutPower ? withHeatersOff(facts) : facts;
}

function isEstimate(initial: InitialSection | readonly PartEstimate[]): initial is readonly PartEstimate[] {
  return Array.isArray(initial);
}

function withHeatersOff({ standing, changes, want, ...facts }: Facts): Facts {
  return {
    ...facts,
    standing: { ...standing, heatersOn: [] },
    heatedSince: undefined,
    changes: changes.filter((change) => !("heaters" in change)),
    want: want && { ...want, heaters: [] },
  };
}

function wantOf(
  { setUp: { habits } }: AircraftState,
  { departure, chance = habits?.chance, heaters, pulledOut }: WantedDeparture,
  start: number,
): Want {
  // Shortly before the departure there is no longer time for the habit.
  const most = Math.floor((departure - start) / MS_OF_MINUTE / 2);
  const unplugBefore = habits === undefined ? undefined : Math.min(habits.unplug_before_min, most);
  const coverOffBefore =
    habits === undefined ? undefined : Math.min(habits.cover_off_before_min, unplugBefore ?? most);
  return { departure, pulledOut, chance, heaters, unplugBefore, coverOffBefore };
}
