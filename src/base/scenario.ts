import { newNotes, type ScenarioDocument, weatherOf } from "../documents/index.js";
import { type Finding, finding } from "../findings/index.js";
import type { FittedAircraft, PartEstimate } from "../learning/index.js";
import type { AircraftState, BaseState, WantedDeparture } from "../logbook/index.js";
import type { AircraftScenario } from "../scenario/index.js";
import { documentOf } from "./document.js";
import { type Facts, factsOf, type WeatherSection } from "./facts.js";
import {
  type ForecastEvent,
  isoOf,
  MS_OF_HOUR,
  notUsed,
  own,
  portable,
  reachOf,
  readForecasts,
  refusalOf,
  type UsedForecast,
  usedForecast,
} from "./forecast.js";
import { pastWeather } from "./past-weather.js";
import { scenarioFrom } from "./settled.js";

export interface ScenarioOptions {
  /** [ms] since 1970 UTC. */
  readonly now: number;
  /** [h] from now; up to six hours after the soonest departure, or twelve, where left out. */
  readonly hours?: number;
  /**
   * "anchor": from where temperatures were last known, with all changes since: for the live estimate and for history.
   * "now": from now, for plans.
   */
  readonly from: "anchor" | "now";
  /** Where every part stands now; a scenario from now without it takes the engine from the air, and says so. */
  readonly estimate?: KnownNow | undefined;
  /** The departure wanted; the soonest ahead where left out, "none" for no wish at all. */
  readonly departure?: WantedDeparture | "none" | undefined;
  /** Drawn cases that chances are counted over. */
  readonly members?: number;
  /** Nothing heats, whatever is plugged in. */
  readonly withoutPower?: boolean;
  /** How the engine was shut down or what is read of it, instead of the estimate. */
  readonly initial?: Facts["initial"];
  /** Covers fitted now, instead of those of the logbook. */
  readonly coversOn?: readonly string[];
}

/** What a live estimate knows of an aircraft. */
export interface KnownNow {
  readonly parts: readonly PartEstimate[];
  readonly learned?: FittedAircraft | undefined;
}

export type BaseScenario =
  | {
      readonly ok: true;
      readonly aircraft: AircraftScenario;
      /** What it was made of. */
      readonly facts: Facts;
      /** The document that reads as this scenario. */
      readonly document: () => ScenarioDocument;
      readonly forecast: UsedForecast;
      /** The departure wanted. */
      readonly departure?: WantedDeparture;
      /** What the logbook left open; among the scenario's own too. */
      readonly assumptions: readonly Finding[];
    }
  | { readonly ok: false; readonly reason: Finding };

/** [h] looked beyond the departure, for how long it stays ready; without a departure from now on. */
const BEYOND = [6, 3, 1] as const;
const WITHOUT_DEPARTURE = [12, 3, 1] as const;
/** [h] the longest a scenario runs. */
const LONGEST = 168;
/** [ms] an engine forgets how it stood this long ago; project judgement, several times its slowest time constant. */
const MEMORY = 72 * MS_OF_HOUR;
const DAY = 24 * MS_OF_HOUR;
/** [K] standard deviation of an engine that stood unobserved; project judgement. */
const FORGOTTEN_SD = 5;

/** One aircraft of a base as a scenario, or in words why there cannot be one. */
export function scenarioOf(state: BaseState, aircraftId: string, options: ScenarioOptions): BaseScenario {
  const aircraft = state.aircraft.get(aircraftId);
  if (aircraft === undefined) throw new RangeError(`unknown aircraft: ${aircraftId}`);
  if (state.forecasts.length === 0) {
    return { ok: false, reason: finding("no-forecast-entered", {}) };
  }
  return options.from === "anchor" ? fromAnchor(state, aircraft, options) : fromNow(state, aircraft, options);
}

/** The soonest departure still ahead. */
export function nextDeparture({ departures }: AircraftState, now: number): WantedDeparture | undefined {
  return departures.find(({ departure }) => departure > now);
}

/** [h] from now up to which a scenario can be made: as far as any forecast reaches. */
export function hoursAhead({ forecasts, setUp }: BaseState, now: number): number {
  const start = wholeMinute(now);
  const reaches = forecasts.map((event) => reachOf(event, start, setUp.zone));
  return Math.min(LONGEST, (Math.max(start, ...reaches) - start) / MS_OF_HOUR);
}

/** Whole minutes, so that plug-in times are times that people can keep. */
function wholeMinute(now: number): number {
  return 60_000 * Math.floor(now / 60_000);
}

function fromNow(state: BaseState, aircraft: AircraftState, options: ScenarioOptions): BaseScenario {
  const start = wholeMinute(options.now);
  const departure =
    options.departure === "none" ? undefined : (options.departure ?? nextDeparture(aircraft, start));
  const until = departure === undefined ? 0 : (departure.departure - start) / MS_OF_HOUR;
  if (until > LONGEST - 1) {
    return { ok: false, reason: finding("departure-too-far", { most_h: LONGEST - 1 }) };
  }
  const lengths = lengthsWanted(options, departure === undefined ? undefined : until);
  const shortest = lengths[lengths.length - 1];
  const reasons: Finding[] = [];
  for (const event of state.forecasts) {
    const weather = portable(event);
    if (weather === undefined) {
      reasons.push(notUsed(event, finding("forecast-names-file", {})));
      continue;
    }
    const reach = reachOf(event, start, state.setUp.zone);
    const hours = lengths.find((length) => start + length * MS_OF_HOUR <= reach) ?? shortest;
    const facts = factsOf(state, aircraft, {
      start,
      // What was done within this minute has been done: heat that is on is none that is still to come.
      known: Math.max(start, options.now),
      hours,
      weather,
      initial: options.initial ?? options.estimate?.parts,
      learned: options.estimate?.learned,
      departure,
      members: options.members,
      withoutPower: options.withoutPower,
      coversOn: options.coversOn,
    });
    const made = madeFrom(facts, event, options.now, []);
    if (made.status === "made") {
      return { ...made.scenario, ...(departure === undefined ? {} : { departure }) };
    }
    if (made.status === "refused") return { ok: false, reason: made.reason };
    reasons.push(notUsed(event, made.reason));
  }
  const wanted = departure === undefined ? null : isoOf(departure.departure);
  return {
    ok: false,
    reason: finding("no-forecast-reaches", { until: wanted, hours: shortest, forecasts: reasons }),
  };
}

/** [h] lengths that would do, the best first. */
function lengthsWanted({ hours }: ScenarioOptions, until: number | undefined): readonly number[] {
  if (hours !== undefined) return [hours];
  if (until === undefined) return WITHOUT_DEPARTURE;
  return BEYOND.map((beyond) => Math.min(LONGEST, Math.ceil(4 * (until + beyond)) / 4));
}

function fromAnchor(state: BaseState, aircraft: AircraftState, options: ScenarioOptions): BaseScenario {
  const { now, hours = 0.5, members } = options;
  const { anchor } = aircraft;
  const until = Math.max(now, anchor.at) + hours * MS_OF_HOUR;
  // Cut at whole days, so that the beginning does not creep and a live estimate can be gone on with.
  const memory = DAY * Math.floor((now - MEMORY) / DAY);
  const { read, refused } = readForecasts(state);
  const weather = pastWeather(read, { from: Math.max(anchor.at, memory), now, until });
  if ("code" in weather) {
    const hours = options.hours ?? 0.5;
    const reason = finding("no-forecast-reaches", { until: null, hours, forecasts: [weather, ...refused] });
    return { ok: false, reason: refused.length === 0 ? weather : reason };
  }
  const { from: start, points, issued } = weather;
  const isFromAnchor = start === anchor.at;
  const facts = factsOf(state, aircraft, {
    start,
    known: start,
    hours: Math.min(LONGEST, (until - start) / MS_OF_HOUR),
    weather: { points, issued: isoOf(issued) },
    // Where the run begins later than what is known, the engine is taken from the air, which is said.
    initial: isFromAnchor ? anchor.initial : { uncertainty_k: FORGOTTEN_SD },
    members,
  });
  const late = finding("anchor-not-used", { known_at: isoOf(anchor.at), begins_at: isoOf(start) });
  const made = madeFrom(facts, read[0].event, now, isFromAnchor ? [] : [late]);
  return made.status === "made" ? made.scenario : { ok: false, reason: made.reason };
}

type Made =
  | { readonly status: "made"; readonly scenario: Extract<BaseScenario, { ok: true }> }
  | { readonly status: "refused" | "no-weather"; readonly reason: Finding };

function madeFrom(facts: Facts, event: ForecastEvent, now: number, said: readonly Finding[]): Made {
  const notes = newNotes();
  const weather = weatherOver(facts.weather, facts, notes);
  if (weather === undefined) return { status: "no-weather", reason: own(refusalOf(notes)) };
  const aircraft = scenarioFrom(facts, weather, notes);
  if (typeof aircraft === "string") return { status: "refused", reason: own(aircraft) };
  const forecast = usedForecast(event, now);
  const assumptions = [forecast.said, ...said];
  return {
    status: "made",
    scenario: {
      ok: true,
      aircraft: { ...aircraft, assumptions: [...aircraft.assumptions, ...assumptions] },
      facts,
      document: () => documentOf(facts, aircraft.learned),
      forecast,
      assumptions,
    },
  };
}

function weatherOver(
  weather: WeatherSection,
  { start, hours, base }: Facts,
  notes: ReturnType<typeof newNotes>,
) {
  const clock = { start: start / 1000, end: start / 1000 + hours * 3600, zone: base.zone };
  return weatherOf({ weather }, clock, undefined, notes);
}
