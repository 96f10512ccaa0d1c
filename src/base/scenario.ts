import {
  issueText,
  type NowDocument,
  readScenarioDocument,
  type ScenarioDocument,
} from "../documents/index.js";
import type { AircraftState, BaseState, WantedDeparture } from "../logbook/index.js";
import { isoOf, MS_OF_HOUR, portable, readForecasts, type UsedForecast, usedForecast } from "./forecast.js";
import { initialFrom } from "./initial.js";
import { pastWeather } from "./past-weather.js";
import { eventsOf, heatingSince, type Standing, standingAt } from "./standing.js";

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
  readonly estimate?: NowDocument;
  /** The departure wanted; the soonest ahead where left out, "none" for no wish at all. */
  readonly departure?: WantedDeparture | "none";
  /** Drawn cases that chances are counted over. */
  readonly members?: number;
}

export type BaseScenario =
  | {
      readonly ok: true;
      readonly document: ScenarioDocument;
      readonly forecast: UsedForecast;
      /** The departure the document wants. */
      readonly departure?: WantedDeparture;
      /** In plain words: what the logbook left open. */
      readonly assumptions: readonly string[];
    }
  | { readonly ok: false; readonly reason: string };

/** [h] looked beyond the departure, for how long it stays ready; without a departure from now on. */
const BEYOND = [6, 3, 1] as const;
const WITHOUT_DEPARTURE = 12;
/** [h] the longest a scenario document runs. */
const LONGEST = 168;
/** [ms] an engine forgets how it stood this long ago; project judgement, several times its slowest time constant. */
const MEMORY = 72 * MS_OF_HOUR;
const DAY = 24 * MS_OF_HOUR;
/** A run from the anchor shows the past and where parts stand; a plan may want more. */
const MEMBERS = 300;

/** One aircraft of a base as a scenario document, or in words why there cannot be one. */
export function scenarioOf(state: BaseState, aircraftId: string, options: ScenarioOptions): BaseScenario {
  const aircraft = state.aircraft.get(aircraftId);
  if (aircraft === undefined) throw new RangeError(`unknown aircraft: ${aircraftId}`);
  if (state.forecasts.length === 0) {
    return { ok: false, reason: "no forecast was entered: there is no weather to plan with" };
  }
  return options.from === "anchor" ? fromAnchor(state, aircraft, options) : fromNow(state, aircraft, options);
}

/** The soonest departure still ahead. */
export function nextDeparture({ departures }: AircraftState, now: number): WantedDeparture | undefined {
  return departures.find(({ departure }) => departure > now);
}

function fromNow(state: BaseState, aircraft: AircraftState, options: ScenarioOptions): BaseScenario {
  // Whole minutes, so that plug-in times are times that people can keep.
  const start = 60_000 * Math.floor(options.now / 60_000);
  const departure =
    options.departure === "none" ? undefined : (options.departure ?? nextDeparture(aircraft, start));
  const until = departure === undefined ? 0 : (departure.departure - start) / MS_OF_HOUR;
  if (until > LONGEST - 1) {
    return { ok: false, reason: `the departure is more than ${LONGEST - 1} h ahead: too far to plan` };
  }
  const reaches =
    options.hours !== undefined
      ? [options.hours]
      : departure === undefined
        ? [WITHOUT_DEPARTURE, 3, 1]
        : BEYOND.map((beyond) => Math.min(LONGEST, Math.ceil(4 * (until + beyond)) / 4));
  // What was done within this minute has been done: heat that is on is none that is still to come.
  const known = Math.max(start, options.now);
  const standing = standingAt(aircraft, known);
  const { estimate } = options;
  const reasons: string[] = [];
  for (const event of state.forecasts) {
    const weather = portable(event);
    if (weather === undefined) {
      reasons.push(`${event.origin}: it names a file, which a logbook does not hold`);
      continue;
    }
    for (const hours of reaches) {
      const document: ScenarioDocument = {
        ...common(state, aircraft, standing, { start, known }, options),
        ...{ start: isoOf(start), hours, weather },
        ...(estimate === undefined ? {} : { initial: initialFrom(estimate) }),
        ...eventsOf(aircraft, known, start + hours * MS_OF_HOUR),
        ...(departure === undefined ? {} : { want: wantOf(aircraft, departure, start) }),
      };
      const reading = readScenarioDocument(document);
      if (reading.ok) {
        const forecast = usedForecast(event, options.now);
        const assumptions = [forecast.text];
        return {
          ok: true,
          document,
          forecast,
          assumptions,
          ...(departure === undefined ? {} : { departure }),
        };
      }
      const others = reading.issues.filter(({ path }) => !path.startsWith("weather"));
      if (others.length > 0) return { ok: false, reason: others.map(issueText).join("; ") };
      if (hours === reaches[reaches.length - 1]) {
        reasons.push(`${event.origin} (received ${event.at}): ${reading.issues.map(issueText).join("; ")}`);
      }
    }
  }
  const wanted =
    departure === undefined ? `${reaches[reaches.length - 1]} h ahead` : isoOf(departure.departure);
  return { ok: false, reason: `no forecast reaches from now to ${wanted}: ${reasons.join(" | ")}` };
}

function fromAnchor(state: BaseState, aircraft: AircraftState, options: ScenarioOptions): BaseScenario {
  const { now, hours = 0.5 } = options;
  const { anchor } = aircraft;
  const until = Math.max(now, anchor.at) + hours * MS_OF_HOUR;
  // Cut at whole days, so that the beginning does not creep and a live estimate can be gone on with.
  const memory = DAY * Math.floor((now - MEMORY) / DAY);
  const { read, refused } = readForecasts(state);
  const weather = pastWeather(read, { from: Math.max(anchor.at, memory), now, until });
  if (typeof weather === "string") {
    return { ok: false, reason: [weather, ...refused].join(" | ") };
  }
  const [newest] = read;
  const start = weather.from;
  const isFromAnchor = start === anchor.at;
  const standing = standingAt(aircraft, start);
  const document: ScenarioDocument = {
    ...common(state, aircraft, standing, { start, known: start }, options),
    start: isoOf(start),
    hours: Math.min(LONGEST, (until - start) / MS_OF_HOUR),
    // Where the run begins later than what is known, the engine is taken from the air, and the document says so.
    ...(isFromAnchor ? { initial: anchor.initial } : { initial: { uncertainty_k: FORGOTTEN_SD } }),
    weather: { points: weather.points, issued: isoOf(weather.issued) },
    ...eventsOf(aircraft, start, until),
  };
  const reading = readScenarioDocument(document);
  if (!reading.ok) return { ok: false, reason: reading.issues.map(issueText).join("; ") };
  const forecast = usedForecast(newest.event, now);
  const late = `How the engine stood at ${isoOf(anchor.at)} is not used: the run begins at ${isoOf(start)}, from when on the weather is known or remembered.`;
  return { ok: true, document, forecast, assumptions: [forecast.text, ...(isFromAnchor ? [] : [late])] };
}

/** [K] standard deviation of an engine that stood unobserved; project judgement. */
const FORGOTTEN_SD = 5;

type Common = Omit<ScenarioDocument, "start" | "hours" | "weather" | "initial" | "events" | "want">;

function common(
  { setUp: base }: BaseState,
  aircraft: AircraftState,
  { place, coversOn, heatersOn }: Standing,
  { start, known }: { readonly start: number; readonly known: number },
  { members = MEMBERS }: ScenarioOptions,
): Common {
  const { setUp } = aircraft;
  const since = heatersOn.length === 0 ? undefined : heatingSince(aircraft, heatersOn);
  return {
    soakline: 2,
    name: setUp.name,
    aircraft: setUp.engine,
    ...(setUp.learned === undefined ? {} : { learned: setUp.learned }),
    kit: setUp.kit,
    zone: base.zone,
    place,
    fitted: { covers: coversOn },
    plugged_in: heatersOn,
    ...(since === undefined || since > known ? {} : { plugged_in_since: isoOf(Math.min(since, start)) }),
    ...(base.hangar === undefined ? {} : { hangar: { air_c: base.hangar.air_c } }),
    ...(base.roughness_m === undefined ? {} : { site: { roughness_m: base.roughness_m } }),
    ...(setUp.limits === undefined ? {} : { limits: setUp.limits }),
    ensemble: { members, seed: 1 },
  };
}

function wantOf(
  { setUp: { habits } }: AircraftState,
  { departure, chance = habits?.chance, heaters, pulledOut }: WantedDeparture,
  start: number,
): NonNullable<ScenarioDocument["want"]> {
  // Shortly before the departure there is no longer time for the habit.
  const most = Math.floor((departure - start) / 60_000 / 2);
  const unplug = habits === undefined ? undefined : Math.min(habits.unplug_before_min, most);
  const coverOff = habits === undefined ? undefined : Math.min(habits.cover_off_before_min, unplug ?? most);
  return {
    departure: isoOf(departure),
    pulled_out: pulledOut,
    ...(chance === undefined ? {} : { chance }),
    ...(heaters === undefined ? {} : { heaters: [...heaters] }),
    ...(unplug === undefined ? {} : { unplug_before_min: unplug }),
    ...(coverOff === undefined ? {} : { cover_off_before_min: coverOff }),
  };
}
