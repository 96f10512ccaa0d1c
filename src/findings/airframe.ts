import type { Finding } from "./index.js";

/** What was taken for granted, and what can be done otherwise, without values. */
type Plain =
  | "skin-at-air"
  | "inside-as-skin"
  | "open-sky"
  | "ground-at-air"
  | "no-sun-or-snowfall"
  | "outside-constant-door-shut"
  | "hangar-damp-as-outside"
  | "no-fan"
  | "melt-water-swept"
  | "melt-water-stays"
  | "weather-constant-no-sun"
  | "fittings-as-skin"
  | "standard-lapse"
  | "climb-damp-no-cloud"
  | "no-supercooling"
  | "brush-snow"
  | "wipe-skin"
  | "blow-gaps"
  | "sweep-floor";

interface Described {
  name: string;
  origin: string;
}

/** Findings: frost, thaw, drying and freezing again. Code to its values; keys carry their unit. */
export type AirframeFindings = Readonly<Record<Plain, Record<never, never>>> & {
  "panel-taken": Described;
  "gap-taken": Described;
  "wing-cover-taken": { origin: string };
  "run-fan": { speed_mps: number };
  /** `more_kw`: heat it needs beyond the heater's; null where that suffices. */
  "warm-hangar": { set_c: number; more_kw: number | null };
  "by-hand": { changes: readonly Finding[] };
  /** Without changes: all that were named before. */
  together: { changes: readonly Finding[] };
};
