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
  "plan-too-hot": { criterion: Finding; over_k: number };
  "plan-unsure": {
    tried: Tried;
    chance: number;
    wanted: number;
    criterion: Finding;
    ok: number;
    margin: Measure;
  };
  // Why there is no answer.
  "was-stopped": Nothing;
  /** What the calculation stopped at, and what to do; in English. */
  "not-calculated": { remedy: string };
  "trials-not-calculated": Nothing;
  "no-forecast-entered": Nothing;
  "departure-too-far": { most_h: number };
  "no-departure-wanted": Nothing;
  "no-forecast-reaches": {
    /** Local time or UTC; null: so many hours from now. */
    until: string | null;
    hours: number;
    forecasts: readonly Finding[];
  };
  "forecast-not-used": { origin: string; why: Finding };
  "forecast-names-file": Nothing;
  "no-forecast-of-then": Nothing;
  "weather-known-until": { at: string; wanted: string };
  "weather-known-from": { at: string };
  // What a plan that is written down comes to.
  "plan-ready": Nothing;
  "plan-not-required": Nothing;
  "help-cover": { cover: string };
  "help-heater": { heater: string };
  "help-hangar": { air_c: number };
}
