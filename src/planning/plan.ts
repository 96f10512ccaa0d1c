import type { Band } from "../numerics/index.js";
import type { Verdict } from "../readiness/index.js";
import type { Trajectory } from "../simulation/index.js";
import type { HabitToll } from "./left-on.js";

/** When to plug in, and what comes of it. Times are [s] since scenario start. */
export interface PlugInAnswer {
  readonly status: "ready" | "not-reachable";
  /** Why it is not "ready", one sentence; empty when it is. */
  readonly message: string;
  /** The latest plug-in with the wanted chance, or the best there is; undefined when no heat is used. */
  readonly plugIn: number | undefined;
  /** Heating is not needed at all: the aircraft is ready without. */
  readonly heatNeeded: boolean;
  readonly unplug: number;
  /** Covers come off, and the aircraft is pulled out when it was asked for. */
  readonly coverOff: number;
  readonly departure: number;
  readonly chance: number;
  /** Standard error of the chance from the finite number of members. */
  readonly chanceError: number;
  readonly verdict: Verdict;
  /** [J] */
  readonly energy: Band;
}

/** The answer to "when do I plug in?", with all that goes with it. Times are [s] since scenario start. */
export interface Plan extends PlugInAnswer {
  /**
   * From when to when it is ready with covers left on after unplugging, over the members ready at departure: bands, so
   * that the edges can be drawn soft. Undefined when no member is ready.
   */
  readonly window: { readonly opens: Band; readonly closes: Band } | undefined;
  /** How long it stays ready after the planned departure, with covers left on and with the planned stripping. */
  readonly stayWarm: { readonly covered: StayWarm; readonly uncovered: StayWarm };
  /** Chance of being ready for other plug-in times, ascending in plug-in. */
  readonly curve: readonly ChanceAt[];
  /** The same departure when the plug goes in this much later than planned; over fewer members, to about 5 %. */
  readonly late: readonly (ChanceAt & { readonly lateBy: number })[];
  /** Habits of two and four hours before departure, for comparison; over fewer members, to about 5 %. */
  readonly habits: readonly (ChanceAt & { readonly lead: number; readonly energy: number })[];
  /** What the plan does to the engine, beside leaving the heaters plugged in from now on; undefined without heat. */
  readonly toll: { readonly planned: HabitToll; readonly leftOn: HabitToll } | undefined;
  /** The planned course from now until the end of the scenario. */
  readonly course: Trajectory;
  /** Ways to make a departure that cannot be met; tried, with what they bring. */
  readonly remedies: readonly Remedy[];
}

export interface ChanceAt {
  readonly plugIn: number;
  readonly chance: number;
}

export interface StayWarm {
  /** [s] that the wanted share of all cases outlasts. */
  readonly sure: number;
  /** [s] */
  readonly median: number;
  /** [s] the time looked ahead; a value equal to it means "at least". */
  readonly horizon: number;
}

/** A change that was tried on a departure that cannot be met. */
export interface Remedy {
  readonly text: string;
  /** Best chance with this change. */
  readonly chance: number;
  /** [s] plug-in that gives it. */
  readonly plugIn: number;
}
