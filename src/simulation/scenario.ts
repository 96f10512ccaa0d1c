import type { Configuration, Installation, Kit } from "../aircraft/index.js";
import type { WeatherSeries } from "../weather/index.js";

/** One aircraft through one stretch of time: what is known now and what will be done. */
export interface Scenario {
  readonly installation: Installation;
  /** Everything carried; what is fitted or switched on is the configuration's business. */
  readonly kit: Kit;
  /** [s] since 1970-01-01T00:00Z */
  readonly start: number;
  /** [s] */
  readonly duration: number;
  readonly weather: WeatherSeries;
  readonly site: Site;
  readonly initial: InitialState;
  readonly events: readonly TimedChange[];
}

export interface Site {
  /** [K] air in the hangar; its walls and roof are taken at the same temperature. */
  readonly tempHangar: number;
  /** [m] aerodynamic roughness length of the ground upwind. */
  readonly roughness: number;
}

export interface InitialState {
  readonly configuration: Configuration;
  /** [K] by part name; parts not named take `tempOthers`. */
  readonly temps: ReadonlyMap<string, number>;
  /** [K] */
  readonly tempOthers: number;
  /** [kg/m2] snow or ice lying on the cowl. */
  readonly snowOnCowl?: number;
  /** [s] how long the heaters that are on have been on; undefined where nobody knows. */
  readonly heatedFor?: number;
  /** [s] that the inside of the case was wet or frosted in that time. */
  readonly wetFor?: number;
  /** [K] standard deviation of what is not exactly known of the initial temperatures, common to all parts. */
  readonly sd: number;
}

/** A change at a known time. */
export interface TimedChange {
  /** [s] since the scenario's start */
  readonly at: number;
  readonly change: Change;
}

export type Change =
  | { readonly do: "plug-in" | "unplug"; readonly heaters: readonly string[] }
  | { readonly do: "cover-on" | "cover-off"; readonly covers: readonly string[] }
  | { readonly do: "move"; readonly to: Configuration["place"] };

/** The configuration after a change. */
export function applyChange(configuration: Configuration, change: Change): Configuration {
  switch (change.do) {
    case "plug-in":
      return { ...configuration, heatersOn: new Set([...configuration.heatersOn, ...change.heaters]) };
    case "unplug":
      return { ...configuration, heatersOn: without(configuration.heatersOn, change.heaters) };
    case "cover-on":
      return { ...configuration, coversOn: new Set([...configuration.coversOn, ...change.covers]) };
    case "cover-off":
      return { ...configuration, coversOn: without(configuration.coversOn, change.covers) };
    case "move":
      return { ...configuration, place: change.to };
  }
}

/** Configurations in force, each from its time [s] on; the first starts at the beginning. */
export type Timeline = readonly { readonly from: number; readonly configuration: Configuration }[];

/** Plays the changes in order of time; changes at one time act together. */
export function timelineOf(initial: Configuration, changes: readonly TimedChange[], start = 0): Timeline {
  const timeline = [{ from: start, configuration: initial }];
  for (const { at, change } of [...changes].sort((a, b) => a.at - b.at)) {
    const last = timeline[timeline.length - 1];
    const configuration = applyChange(last.configuration, change);
    if (at <= last.from) timeline[timeline.length - 1] = { from: last.from, configuration };
    else timeline.push({ from: at, configuration });
  }
  return timeline;
}

function without(set: ReadonlySet<string>, gone: readonly string[]): Set<string> {
  return new Set([...set].filter((id) => !gone.includes(id)));
}
