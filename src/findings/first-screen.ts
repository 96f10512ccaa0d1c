import type { Finding } from "./index.js";
import type { Measure } from "./measure.js";

type Nothing = Readonly<Record<never, never>>;
/** Local time with offset, ISO 8601. */
type Time = string;

/** What a line of a first screen answers. */
export type Label =
  | ("heat-on" | "plug-in" | "unplug" | "after" | "chance" | "weakest" | "stay" | "choice" | "quarter-more")
  | ("best" | "why" | "look-first" | "not-used" | "would-help")
  | ("ready-now" | "engine" | "cover-by" | "lasts" | "run" | "somebody" | "longest" | "by-itself")
  | ("may-leave" | "brush-first" | "skin-clear" | "gaps-thawed" | "freezes-again" | "somebody-must")
  | ("tonight" | "warm-through" | "costs-start" | "inside" | "more-money" | "not-advised" | "best-chance")
  | ("ready" | "costs" | "time" | "heat");

/** Weather of a cold case. */
interface Cold {
  readonly air_c: number;
  readonly wind_mps: number;
}

/** An amount in a currency, which may have no name. */
interface Money {
  readonly amount: number;
  readonly currency: string;
}

/** [0..1] a share of so many drawn cases. */
interface Counted {
  readonly share: number;
  readonly members: number;
}

/** When something has come in 19 of 20 cases; null: how often it has after so many hours. */
interface Surely extends Counted {
  readonly at: Time | null;
  readonly horizon_h: number;
}

/** Hours that the wanted share of all cases outlasts. */
interface Lasting {
  readonly sure_h: number;
  /** As long as was looked ahead, and perhaps longer. */
  readonly is_over: boolean;
}

/** Findings: the lines of each question's first screen. Chances are [0..1]; code to its values, keys carry their unit. */
export interface FirstScreenFindings {
  readonly label: { readonly of: Label };
  // A plan.
  readonly "verdict-plug-in": {
    /** Null: now. */
    readonly at: Time | null;
    readonly unplug: Time;
    readonly start: Time;
    readonly chance: number;
    /** It has been on too long, and goes off first. */
    readonly is_off_first: boolean;
  };
  readonly "verdict-heat-on": { readonly unplug: Time; readonly start: Time; readonly chance: number };
  readonly "verdict-no-heat": { readonly start: Time; readonly chance: number };
  readonly "verdict-not-required": { readonly start: Time; readonly chance: number };
  readonly "verdict-not-ready": { readonly start: Time; readonly chance: number; readonly wanted: number };
  readonly "verdict-look-first": { readonly what: readonly Finding[] };
  readonly "heat-on-for": {
    readonly on_h: number | null;
    readonly longest_on_h: number;
    readonly wet_h: number | null;
    readonly next: "stays" | "off" | "off-then-on";
    /** Until when it stays, or from when it is on again. */
    readonly at: Time;
  };
  readonly "plug-in-none": { readonly is_required: boolean };
  readonly "plug-in-latest": { readonly at: Time; readonly aim: "least" | "warm-through" };
  readonly "unplug-at": { readonly at: Time; readonly minutes: number };
  readonly "then-start": {
    readonly acts: readonly ("covers-off" | "pull-out")[];
    readonly at: Time;
    readonly within_min: number;
    /** It stays ready for so long and longer; null where `within_min` is the end. */
    readonly stays_h: number | null;
  };
  readonly "chance-both": {
    readonly start: number;
    readonly warm: number;
    readonly is_put_right_first: boolean;
  };
  readonly "weakest-point": {
    readonly criterion: Finding;
    readonly value: Measure;
    /** 1 in 20 is worse. */
    readonly worst: Measure;
    readonly limit: Measure;
    readonly direction: "at-least" | "at-most";
  };
  readonly "stay-with": { readonly attended: readonly string[]; readonly is_heated: boolean };
  readonly "line-of-two": {
    readonly line: "least" | "warm-through";
    readonly reached: boolean;
    readonly plug_in: Time | null;
    readonly chance: number;
    readonly energy_kwh: number;
    readonly is_planned: boolean;
  };
  readonly "best-plug-in": { readonly at: Time | null };
  readonly "best-without": {
    readonly stays_on: boolean;
    /** Shortest time that the heaters are on; null where there is none. */
    readonly least_on_min: number | null;
  };
  /** What a heater's numbers rest on. */
  readonly "heater-basis":
    | { readonly kind: "measured"; readonly runs: number }
    | { readonly kind: "scaled"; readonly from: string }
    | { readonly kind: "estimated" };
  readonly "barred-heater": { readonly heater: string; readonly reason: "indoors" | "engine-too-small" };
  readonly "would-help": {
    readonly remedy: Finding;
    readonly chance: number;
    readonly plug_in: Time | null;
    readonly attended: boolean;
  };
  readonly "nothing-helps": { readonly tried: number | null };
  readonly "being-worked-out": Nothing;
  // Away from power.
  readonly "verdict-away": {
    readonly is_ready: boolean;
    readonly back: Time;
    /** Null where no cover is carried. */
    readonly covered: number | null;
    readonly uncovered: number;
    readonly is_covered: boolean;
  };
  readonly "verdict-away-now": {
    readonly is_ready: boolean;
    readonly chance: number;
    readonly beside: Finding;
  };
  readonly "ready-yes-no": { readonly is_ready: boolean; readonly chance: number };
  readonly "engine-from": {
    readonly from: "shut-down" | "readings" | "air";
    readonly shut_down_h_ago: number;
    readonly cover: "none" | "on" | "off";
  };
  readonly "cover-on-by": {
    readonly how: "none" | "on-already" | "at-once" | "not-needed" | "by" | "between-runs" | "too-little";
    /** Null: now. */
    readonly by: Time | null;
    readonly off_before_min: number;
    readonly chance: number;
    readonly is_covered: boolean;
  };
  readonly "it-lasts": {
    readonly covered: Lasting | null;
    readonly uncovered: Lasting;
    readonly chance: number;
  };
  readonly "run-none": { readonly why: "no-return" | "not-needed" | "covers" | "unsure" | "too-little" };
  readonly "run-engine": {
    readonly starts: readonly Time[];
    /** A single run begins no sooner. */
    readonly from: Time | null;
    readonly run_h: number;
    readonly is_covered: boolean;
    readonly chance: number;
  };
  readonly "covers-on-by": { readonly by: Time | null; readonly chance: number };
  readonly "weakest-chance": {
    readonly criterion: Finding;
    readonly chance: number;
    readonly when: "now" | "return" | "return-covered";
  };
  readonly "at-controls": { readonly is_run: boolean };
  readonly "longest-away": {
    /** Null: only now. */
    readonly back: Time | null;
    readonly is_covered: boolean;
    readonly runs: number;
    readonly run_h: number;
  };
  readonly "ready-by-itself": { readonly at: Time | null; readonly looked_h: number };
  // Thaw and dry.
  readonly "verdict-leave": {
    readonly at: Time;
    readonly clear: Counted | null;
    readonly dry: Counted;
    readonly may: boolean;
  };
  readonly "verdict-leave-from": { readonly at: Time };
  readonly "verdict-not-dry": { readonly horizon_h: number; readonly dry: Counted };
  readonly "leave-from": {
    readonly at: Time | null;
    readonly half: Time | null;
    readonly horizon_h: number;
  };
  readonly "dry-last": { readonly what: "snow" | "skin" | "gaps" };
  readonly "brush-off": { readonly loose_kg_per_m2: number; readonly snow_kg_per_m2: number };
  readonly "was-tried": { readonly what: Finding; readonly chance: Counted };
  readonly "longer-stay": { readonly hours: number };
  readonly "no-longer-stay": { readonly longest_h: number };
  readonly "into-mild-air": { readonly at: Time };
  readonly "no-mild-air": { readonly until: Time };
  readonly "clear-then-dry": { readonly clear: Surely; readonly dry: Surely };
  readonly "freezes-again": {
    /** Null: nothing, as far as water is left. */
    readonly where: "gaps" | "skin" | "gaps-and-skin" | null;
    readonly is_snow_left: boolean;
    readonly is_wettest: boolean;
    readonly outside: Counted;
    /** Null without a climb. */
    readonly climb: Counted | null;
    readonly melts_what_falls: boolean;
  };
  readonly "work-by-hand": { readonly brush: boolean; readonly wipe: boolean };
  // Kits.
  readonly "verdict-kit": {
    readonly kit: string;
    readonly chance: number;
    readonly cold: Cold;
    readonly attended: boolean;
  };
  readonly "verdict-colder": { readonly kit: string; readonly cold: Cold | null; readonly attended: boolean };
  readonly "verdict-no-kit": { readonly chance: number };
  readonly "kit-tonight": {
    readonly status: "ready" | "not-required" | "look-first" | "not-reachable";
    readonly plug_in: Time | null;
    readonly unplug: Time;
    readonly start: Time;
    readonly chance: number;
  };
  readonly "kit-lead": { readonly lead_h: number | null; readonly cold: Cold };
  readonly "kit-warm": { readonly cold: Cold | null };
  readonly "kit-costs": {
    readonly all: number | null;
    readonly energy_kwh: number;
    readonly energy: number | null;
    readonly attended_h: number;
    readonly attended: number;
    readonly attended_per_h: number;
    readonly currency: string;
    readonly cold: Cold;
  };
  readonly "kit-inside": { readonly wet_h: number };
  readonly "kit-weakest": { readonly criterion: Finding; readonly cold: Cold; readonly chance: number };
  readonly "kit-best-chance": {
    readonly kit: string;
    readonly chance: number;
    readonly cold: Cold;
    readonly criterion: Finding;
  };
  readonly "dearer-none": { readonly why: "no-price" | "cases" | "winter" };
  readonly "dearer-kit": {
    readonly kit: string;
    readonly extra: Money;
    readonly cold: Cold | null;
    readonly attended: boolean;
  };
  readonly "kit-not-advised": {
    readonly kit: string;
    readonly rule: "outdoors-only" | "engine-too-small" | "rejected" | "longest-on" | "always-on";
  };
  readonly "more-not-advised": { readonly kits: number };
  // A whole winter.
  readonly "verdict-winter": {
    readonly kit: string;
    readonly habit: Finding;
    readonly ready: number;
    /** Where it is less often ready. */
    readonly wanted: number | null;
    readonly cost: Money | null;
    readonly heat_kwh: number;
    /** Null where nobody has to stay. */
    readonly attended_h: number | null;
  };
  readonly "verdict-other-kit": {
    readonly kit: string;
    readonly ready: number;
    readonly cost: Money | null;
    readonly attended_h: number | null;
  };
  readonly "verdict-no-habit": Nothing;
  readonly "winter-ready": { readonly least: number; readonly warm: number };
  readonly "winter-costs": {
    readonly all: number;
    readonly heat: number;
    readonly time: number;
    readonly rest: number;
    readonly currency: string;
  };
  readonly "winter-cost-unknown": Nothing;
  readonly "winter-time": { readonly attended_h: number; readonly per_h: Money };
  readonly "winter-heat": {
    readonly heat_kwh: number;
    readonly heater_h: number;
    readonly longest_h: number;
    readonly allowed_h: number | null;
  };
  readonly "winter-inside": { readonly wet_h: number; readonly frost_h: number };
  readonly "winter-weakest": { readonly criterion: Finding; readonly share: number };
  readonly "winter-weakest-none": Nothing;
  readonly "winter-always-on": {
    readonly longest_h: number;
    /** Null where it is not over any. */
    readonly allowed_h: number | null;
    /** Hot with nobody there; null where somebody stays. */
    readonly alone_h: number | null;
    readonly wet_h: number;
  };
  readonly "dearer-winter": {
    readonly kit: string;
    readonly habit: Finding;
    readonly extra: Money;
    readonly ready: number;
    readonly cost: Money | null;
  };
}
