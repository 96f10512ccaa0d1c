import type { Finding } from "../findings/index.js";
import type { Band } from "../numerics/index.js";
import type { Aim, CriterionVerdict, Verdict } from "../readiness/index.js";
import type { Trajectory } from "../simulation/index.js";
import type { BarredHeater, HeatingNow } from "./heater-use.js";
import type { HeatingImpact } from "./left-on.js";

/** When to plug in, and what comes of it. Times are [s] since scenario start. */
export interface PlugInAnswer {
  /** "not-required": every part is past the maker's limit without heat. */
  readonly status: "ready" | "not-required" | "not-reachable";
  /** Why it is not reachable, one sentence; empty when it is. */
  readonly message: Finding | null;
  /** The line that the plug-in aims at. */
  readonly aim: Aim;
  /** Both lines, for the owner to choose. */
  readonly lines: { readonly least: PlanLine; readonly warmThrough: PlanLine };
  /** The latest plug-in with the wanted chance, or the best there is; undefined when no heat is used. */
  readonly plugIn: number | undefined;
  /** Heat that is on already. */
  readonly heating: HeatingNow | undefined;
  /** Heaters of the wish that may not be used here, with the reason. */
  readonly barred: readonly BarredHeater[];
  /** False where the engine is past the maker's limit without heat. */
  readonly heatNeeded: boolean;
  readonly unplug: number;
  /** Covers come off, and the aircraft is pulled out when it was asked for. */
  readonly coverOff: number;
  readonly departure: number;
  /** That the engine may be started: every part past the maker's limit and all else that a start needs. */
  readonly chance: number;
  /** That it is warm through as well. */
  readonly warmChance: number;
  /** The weakest point on the line aimed at. */
  readonly weakest: CriterionVerdict;
  /** Standard error of the chance from the finite number of members. */
  readonly chanceError: number;
  readonly verdict: Verdict;
  /** [J] */
  readonly energy: Band;
}

/** One of the two lines: the latest plug-in that has it with the wanted chance, or the best there is. */
export interface PlanLine {
  readonly reached: boolean;
  /** Undefined where no heat is used: not needed, or not possible. */
  readonly plugIn: number | undefined;
  /** Chance of this line with that plug-in. */
  readonly chance: number;
  /** [J] middle estimate. */
  readonly energy: number;
}

/** The answer to "when do I plug in?", with all that goes with it. Times are [s] since scenario start. */
export interface Plan extends PlugInAnswer {
  /** From when to when it may be started as planned; undefined when it is not ready with the wanted chance. */
  readonly window: ReadyWindow | undefined;
  /** The same should covers stay on after unplugging and the aircraft stay where it is. */
  readonly coveredWindow: ReadyWindow | undefined;
  /** Chances with a quarter of an hour more heat; undefined where there is none to add. */
  readonly quarterMore: { readonly chance: number; readonly warmChance: number } | undefined;
  /** How long it stays ready after the planned departure, with covers left on and with the planned stripping. */
  readonly stayWarm: { readonly covered: StayWarm; readonly uncovered: StayWarm };
  /** Chance of being ready for other plug-in times, ascending in plug-in. */
  readonly curve: readonly ChanceAt[];
  /** The same departure when the plug goes in this much later than planned; over fewer members, to about 5 %. */
  readonly late: readonly (ChanceAt & { readonly lateBy: number })[];
  /** Habits of two and four hours before departure, for comparison; over fewer members, to about 5 %. */
  readonly habits: readonly (ChanceAt & { readonly lead: number; readonly energy: number })[];
  /** What the plan does to the engine, beside leaving the heaters plugged in from now on; undefined without heat. */
  readonly toll: { readonly planned: HeatingImpact; readonly leftOn: HeatingImpact } | undefined;
  /** The planned course from now until the end of the scenario. */
  readonly course: Trajectory;
  /** Ways to make a departure that cannot be met; tried, with what they bring. */
  readonly remedies: readonly Remedy[];
}

export interface ChanceAt {
  readonly plugIn: number;
  readonly chance: number;
  readonly warmChance: number;
}

/** Edges of a time in which the engine is ready [s]: with the wanted chance, and in half of all cases. */
export interface ReadyWindow {
  readonly opens: { readonly sure: number; readonly half: number };
  readonly closes: { readonly sure: number; readonly half: number };
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
  readonly text: Finding;
  /** Somebody must stay with it all the time. */
  readonly attended: boolean;
  /** Best chance with this change. */
  readonly chance: number;
  /** [s] plug-in that gives it; undefined where nothing is plugged in. */
  readonly plugIn: number | undefined;
}
