import type { Finding } from "./index.js";
import type { Measure } from "./measure.js";

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
  readonly "help-cover": { readonly cover: string };
  readonly "help-heater": { readonly heater: string };
  readonly "help-hangar": { readonly air_c: number };
}
