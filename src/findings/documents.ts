import type { Finding } from "./index.js";

/** Findings: what a document left open and what was taken instead. Code to its values; keys carry their unit. */
export interface DocumentsFindings {
  /** What a user's document says in words of its own. */
  "own-words": { text: string };
  /** What was found of one aircraft of several. */
  "of-aircraft": { name: string; finding: Finding };
  "members-taken": { members: number };
  "zone-of-start": { offset: string };
  "no-cover-fitted": Record<never, never>;
  "heated-for-unknown": Record<never, never>;
  "no-power-here": Record<never, never>;
  "hangar-taken": { air_c: number };
  "ground-taken": { roughness_m: number };
  /** Ids of the heaters. */
  "heaters-together": { heaters: readonly string[] };
  "chance-taken": { chance: number };
  "unplugged-before": { minutes: number };
  "covers-off-before": { minutes: number };
  "shut-down-taken": { hours: number };
  "weather-held-back": Record<never, never>;
  "parts-as-heated": { hours: number };
  "parts-at-air": { air_c: number; of: "all" | "others"; where: "hangar" | "outside" };
  "start-known-to": { sd_k: number };
  "idled-before-start": { minutes: number; air_c: number; oil_c: number; heads_c: number; caution: Finding };
  "forecast-used": { origin: string; hours: number };
  /** Times in ISO 8601. */
  "anchor-not-used": { known_at: string; begins_at: string };
  "logged-before-not-used": { begins_at: string };
  "probe-left-out": { probe: string; reason: Finding };
  "hand-reading-left-out": { part: string; reason: Finding };
  "element-unnamed": { elements: number };
  "no-such-part": { part: string };
  "no-battery": Record<never, never>;
  "oil-unlisted": { grade: string; air_c: number; listed: readonly string[] };
  "attended-taken": { amount: number; currency: string };
  "hands-there": { from: string; until: string };
  "cold-cases-taken": Record<never, never>;
  "flight-taken": { hours: number };
  "first-day-left-out": { departures: number };
  "winters-made": { years: number };
  "winter-weather-made": { origin: string };
  "no-fuel-named": Record<never, never>;
  "fuel-as": { as: "air-at-start" | "skin-at-roll-in" };
  "place-taken": { roughness_m?: number; wing_height_m?: number; isOpenSky: boolean; isSeaLevel: boolean };
  "air-changes-taken": { per_h: number };
  "heater-with-flue": Record<never, never>;
  "dew-point-taken": { where: "outside" | "roll_out"; below_k: number };
  "roll-out-taken": { minutes?: number; wind_mps?: number; isClear: boolean };
  "climb-taken": { climb_fpm?: number; airspeed_mps?: number };
  "hangar-at-sea-level": Record<never, never>;
  "no-snow-named": Record<never, never>;
  "broom-leaves": { share: number };
  "comes-in-cold": { skin_c: number };
  "skin-drips": Record<never, never>;
  "light-wind-taken": { wind_mps: number; engine_wind_mps: number };
  "lull-frosts": Record<never, never>;
}
