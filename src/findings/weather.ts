import type { Finding } from "./index.js";

type Quantity = "tempAir" | "windSpeed" | "tempDewPoint" | "cloudCover";
type Ahead = "windSpeed" | "cloudCover";

/** Findings: what the weather's sources left open. Code to its values; keys carry their unit. */
export interface WeatherFindings {
  /** What was assumed of the weather; from and to in local time, where it is not all of it. */
  "weather-assumed": { finding: Finding; from?: string; to?: string };
  /** The same of one file of a winter. */
  "weather-file-assumed": { path: string; finding: Finding };
  "weather-file-gaps": { path: string; gaps: number };
  "wind-assumed": { wind_mps: number };
  "sky-assumed-clear": Record<never, never>;
  "dew-point-assumed": { below_k: number; by: "file" | "reports" };
  "rows-missing": { quantity: Quantity; rows: number; isHeld: boolean };
  "no-reading-for": { hours: number };
  "reports-missing": {
    quantity: Ahead;
    reports: number;
    instead: "bridged" | "taf" | "assumed";
    wind_mps: number;
  };
  "dew-points-bridged": Record<never, never>;
  "dew-point-kept": { below_k: number };
  "change-taken-throughout": { group: string };
  "ahead-assumed": { quantity: Ahead; when: "no-forecast" | "after-taf" | "until-named"; wind_mps: number };
  "before-taf": Record<never, never>;
  "air-held-at-low": Record<never, never>;
  "taken-as-one-place": { readings: string; forecast: string };
  "air-held-at-reading": { colder_k: number; low_at: string };
  "low-assumed": { fall_k: number; from: string; at: string };
  "air-taken-to-cool": { fall_k: number; hours: number };
  "low-held": Record<never, never>;
  "air-by-cosines": Record<never, never>;
  "value-held": { end: "first" | "last" };
  "years-moved": { from: string; to: string };
}
