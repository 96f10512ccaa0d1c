import type { TrackRecord } from "../learning/index.js";
import type { FollowedPlan } from "./checked-plans.js";
import type { EventOf } from "./events.js";
import type { BaseAircraft, BaseSetUp } from "./set-up.js";

// What stands at a base, derived from its logbook. Times are [ms] since 1970 UTC.

export interface WantedDeparture {
  /** Id of the departure-wanted event. */
  readonly id: string;
  readonly departure: number;
  readonly chance?: number;
  readonly pulledOut: boolean;
  /** Those the kit still has; empty when it has none of them any more. */
  readonly heaters?: readonly string[];
}

/** A change that a thermal run has to know of. */
export type Change =
  | { readonly at: number; readonly do: "plug_in" | "unplug"; readonly heaters: readonly string[] }
  | { readonly at: number; readonly do: "cover_on" | "cover_off"; readonly covers: readonly string[] }
  | { readonly at: number; readonly do: "move"; readonly to: "ramp" | "hangar" };

/** From where a thermal run can begin: temperatures are known, or the engine has just been shut down. */
export interface Anchor {
  readonly at: number;
  readonly from: "set-up" | "shut-down";
  readonly place: "ramp" | "hangar";
  readonly coversOn: readonly string[];
  readonly heatersOn: readonly string[];
  readonly initial: BaseAircraft["known"]["initial"];
}

export interface SwitchStanding {
  readonly commanded?: { readonly to: "on" | "off"; readonly at: number };
  readonly confirmed?: { readonly is: "on" | "off"; readonly at: number };
}

export interface AircraftState {
  readonly setUp: BaseAircraft;
  readonly place: "ramp" | "hangar";
  readonly coversOn: readonly string[];
  /** Plugged in by hand, or confirmed on by their switch, whichever was said last; in the kit's order. */
  readonly heatersOn: readonly string[];
  readonly anchor: Anchor;
  /** Since the anchor, oldest first; only what made a difference. */
  readonly changes: readonly Change[];
  /** Readings made by hand since the anchor, oldest first. */
  readonly readings: readonly { readonly at: number; readonly part: string; readonly tempC: number }[];
  /** Away from when the engine was started until it is shut down again. */
  readonly running: boolean;
  /**
   * Not dropped and not flown, soonest first; also those long past, since nobody said what became of them. A start that
   * was easy or hard is the flight of the departure nearest to it within 6 h.
   */
  readonly departures: readonly WantedDeparture[];
  /** The newest plan not withdrawn, for a departure still wanted. */
  readonly plan?: EventOf<"plan-issued">;
  readonly lastStart?: { readonly at: number; readonly how: "easy" | "hard" | "failed" };
  readonly switches: ReadonlyMap<string, SwitchStanding>;
  /** Not cleared, newest first. */
  readonly faults: readonly EventOf<"fault">[];
  /** Plans that were acted on, with what came of them; oldest first. */
  readonly checked: readonly FollowedPlan[];
}

export interface BaseState {
  readonly setUp: BaseSetUp;
  readonly aircraft: ReadonlyMap<string, AircraftState>;
  /** The newest first. */
  readonly forecasts: readonly EventOf<"forecast">[];
  /** Of no aircraft, not cleared. */
  readonly faults: readonly EventOf<"fault">[];
  /** How often the plans of all aircraft came out as they said. */
  readonly record: TrackRecord;
  /**
   * Events that say something of what is not there, such as of an aircraft no longer in the set-up, and corrections that
   * do not hold: kept, without effect. By id.
   */
  readonly withoutEffect: readonly { readonly id: string; readonly reason: string }[];
}
