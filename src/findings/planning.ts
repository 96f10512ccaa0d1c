import type { Finding } from "./index.js";
import type { Measure } from "./measure.js";

type Nothing = Readonly<Record<never, never>>;

/** How a plan came short, and what it was tried with. */
type Tried =
  | "earliest"
  | "at-best"
  | "heat-left-on"
  | "no-heater"
  | "no-heater-allowed"
  | "too-late"
  | "without-heat";

/** Findings: why a plan is so, and what would help. Code to its values; keys carry their unit. */
export interface PlanningFindings {
  readonly "plan-too-hot": { readonly criterion: Finding; readonly over_k: number };
  readonly "plan-unsure": {
    readonly tried: Tried;
    readonly chance: number;
    readonly wanted: number;
    readonly criterion: Finding;
    readonly ok: number;
    readonly margin: Measure;
  };
  // Why there is no answer.
  readonly "was-stopped": Nothing;
  /** What the calculation stopped at, and what to do; in English. */
  readonly "not-calculated": { readonly remedy: string };
  readonly "trials-not-calculated": Nothing;
  readonly "no-forecast-entered": Nothing;
  readonly "departure-too-far": { readonly most_h: number };
  readonly "no-departure-wanted": Nothing;
  readonly "no-forecast-reaches": {
    /** Local time or UTC; null: so many hours from now. */
    readonly until: string | null;
    readonly hours: number;
    readonly forecasts: readonly Finding[];
  };
  readonly "forecast-not-used": { readonly origin: string; readonly why: Finding };
  readonly "forecast-names-file": Nothing;
  readonly "no-forecast-of-then": Nothing;
  readonly "weather-known-until": { readonly at: string; readonly wanted: string };
  readonly "weather-known-from": { readonly at: string };
  // What a plan that is written down comes to.
  readonly "plan-ready": Nothing;
  readonly "plan-not-required": Nothing;
  readonly "help-cover": { readonly cover: string };
  readonly "help-heater": { readonly heater: string };
  readonly "help-hangar": { readonly air_c: number };
}
