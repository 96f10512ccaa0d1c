import type { Finding } from "./index.js";

/** Findings: what a document left open and what was taken instead. Code to its values; keys carry their unit. */
export interface DocumentsFindings {
  /** What a user's document says in words of its own. */
  readonly "own-words": { readonly text: string };
  /** What was found of one aircraft of several. */
  readonly "of-aircraft": { readonly name: string; readonly finding: Finding };
  readonly "members-taken": { readonly members: number };
  readonly "zone-of-start": { readonly offset: string };
  readonly "no-cover-fitted": Record<never, never>;
  readonly "heated-for-unknown": Record<never, never>;
  readonly "no-power-here": Record<never, never>;
  readonly "hangar-taken": { readonly air_c: number };
  readonly "ground-taken": { readonly roughness_m: number };
  /** Ids of the heaters. */
  readonly "heaters-together": { readonly heaters: readonly string[] };
  readonly "chance-taken": { readonly chance: number };
  readonly "unplugged-before": { readonly minutes: number };
  readonly "covers-off-before": { readonly minutes: number };
  readonly "shut-down-taken": { readonly hours: number };
  readonly "weather-held-back": Record<never, never>;
  readonly "parts-as-heated": { readonly hours: number };
  readonly "parts-at-air": {
    readonly air_c: number;
    readonly of: "all" | "others";
    readonly where: "hangar" | "outside";
  };
  readonly "start-known-to": { readonly sd_k: number };
  readonly "idled-before-start": {
    readonly minutes: number;
    readonly air_c: number;
    readonly oil_c: number;
    readonly heads_c: number;
    readonly caution: Finding;
  };
  readonly "forecast-used": { readonly origin: string; readonly hours: number };
  /** Times in ISO 8601. */
  readonly "anchor-not-used": { readonly known_at: string; readonly begins_at: string };
  readonly "logged-before-not-used": { readonly begins_at: string };
  readonly "probe-left-out": { readonly probe: string; readonly reason: Finding };
  readonly "hand-reading-left-out": { readonly part: string; readonly reason: Finding };
  readonly "element-unnamed": { readonly elements: number };
  readonly "no-such-part": { readonly part: string };
  readonly "no-battery": Record<never, never>;
  readonly "oil-unlisted": {
    readonly grade: string;
    readonly air_c: number;
    readonly listed: readonly string[];
  };
  readonly "attended-taken": { readonly amount: number; readonly currency: string };
  readonly "hands-there": { readonly from: string; readonly until: string };
  readonly "cold-cases-taken": Record<never, never>;
  readonly "flight-taken": { readonly hours: number };
  readonly "first-day-left-out": { readonly departures: number };
  readonly "winters-made": { readonly years: number };
  readonly "winter-weather-made": { readonly origin: string };
  readonly "no-fuel-named": Record<never, never>;
  readonly "fuel-as": { readonly as: "air-at-start" | "skin-at-roll-in" };
  readonly "place-taken": {
    readonly roughness_m?: number;
    readonly wing_height_m?: number;
    readonly isOpenSky: boolean;
    readonly isSeaLevel: boolean;
  };
  readonly "air-changes-taken": { readonly per_h: number };
  readonly "heater-with-flue": Record<never, never>;
  readonly "dew-point-taken": { readonly where: "outside" | "roll_out"; readonly below_k: number };
  readonly "roll-out-taken": {
    readonly minutes?: number;
    readonly wind_mps?: number;
    readonly isClear: boolean;
  };
  readonly "climb-taken": { readonly climb_fpm?: number; readonly airspeed_mps?: number };
  readonly "hangar-at-sea-level": Record<never, never>;
  readonly "no-snow-named": Record<never, never>;
  readonly "broom-leaves": { readonly share: number };
  readonly "comes-in-cold": { readonly skin_c: number };
  readonly "skin-drips": Record<never, never>;
  readonly "light-wind-taken": { readonly wind_mps: number; readonly engine_wind_mps: number };
  readonly "lull-frosts": Record<never, never>;
}
