import type { Finding } from "./index.js";

type Quantity = "tempAir" | "windSpeed" | "tempDewPoint" | "cloudCover";
type Ahead = "windSpeed" | "cloudCover";

/** Findings: what the weather's sources left open. Code to its values; keys carry their unit. */
export interface WeatherFindings {
  /** What was assumed of the weather; from and to in local time, where it is not all of it. */
  readonly "weather-assumed": { readonly finding: Finding; readonly from?: string; readonly to?: string };
  /** The same of one file of a winter. */
  readonly "weather-file-assumed": { readonly path: string; readonly finding: Finding };
  readonly "weather-file-gaps": { readonly path: string; readonly gaps: number };
  readonly "wind-assumed": { readonly wind_mps: number };
  readonly "sky-assumed-clear": Record<never, never>;
  readonly "dew-point-assumed": { readonly below_k: number; readonly by: "file" | "reports" };
  readonly "rows-missing": { readonly quantity: Quantity; readonly rows: number; readonly isHeld: boolean };
  readonly "no-reading-for": { readonly hours: number };
  readonly "reports-missing": {
    readonly quantity: Ahead;
    readonly reports: number;
    readonly instead: "bridged" | "taf" | "assumed";
    readonly wind_mps: number;
  };
  readonly "dew-points-bridged": Record<never, never>;
  readonly "dew-point-kept": { readonly below_k: number };
  readonly "change-taken-throughout": { readonly group: string };
  readonly "ahead-assumed": {
    readonly quantity: Ahead;
    readonly when: "no-forecast" | "after-taf" | "until-named";
    readonly wind_mps: number;
  };
  readonly "before-taf": Record<never, never>;
  readonly "air-held-at-low": Record<never, never>;
  readonly "taken-as-one-place": { readonly readings: string; readonly forecast: string };
  readonly "air-held-at-reading": { readonly colder_k: number; readonly low_at: string };
  readonly "low-assumed": { readonly fall_k: number; readonly from: string; readonly at: string };
  readonly "air-taken-to-cool": { readonly fall_k: number; readonly hours: number };
  readonly "low-held": Record<never, never>;
  readonly "air-by-cosines": Record<never, never>;
  readonly "value-held": { readonly end: "first" | "last" };
  readonly "years-moved": { readonly from: string; readonly to: string };
}
