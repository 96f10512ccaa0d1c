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
  air_c: number;
  wind_mps: number;
}

/** An amount in a currency, which may have no name. */
interface Money {
  amount: number;
  currency: string;
}

/** [0..1] a share of so many drawn cases. */
interface Counted {
  share: number;
  members: number;
}

/** When something has come in 19 of 20 cases; null: how often it has after so many hours. */
interface Surely extends Counted {
  at: Time | null;
  horizon_h: number;
}

/** Hours that the wanted share of all cases outlasts. */
interface Lasting {
  sure_h: number;
  /** As long as was looked ahead, and perhaps longer. */
  is_over: boolean;
}

/** Findings: the lines of each question's first screen. Chances are [0..1]; code to its values, keys carry their unit. */
export interface FirstScreenFindings {
  label: { of: Label };
  // A plan.
  "verdict-plug-in": {
    /** Null: now. */
    at: Time | null;
    unplug: Time;
    start: Time;
    chance: number;
    /** It has been on too long, and goes off first. */
    is_off_first: boolean;
  };
  "verdict-heat-on": { unplug: Time; start: Time; chance: number };
  "verdict-no-heat": { start: Time; chance: number };
  "verdict-not-required": { start: Time; chance: number };
  "verdict-not-ready": { start: Time; chance: number; wanted: number };
  "verdict-look-first": { what: readonly Finding[] };
  "heat-on-for": {
    on_h: number | null;
    longest_on_h: number;
    wet_h: number | null;
    next: "stays" | "off" | "off-then-on";
    /** Until when it stays, or from when it is on again. */
    at: Time;
  };
  "plug-in-none": { is_required: boolean };
  "plug-in-latest": { at: Time; aim: "least" | "warm-through" };
  "unplug-at": { at: Time; minutes: number };
  "then-start": {
    acts: readonly ("covers-off" | "pull-out")[];
    at: Time;
    within_min: number;
    /** It stays ready for so long and longer; null where `within_min` is the end. */
    stays_h: number | null;
  };
  "chance-both": { start: number; warm: number; is_put_right_first: boolean };
  "weakest-point": {
    criterion: Finding;
    value: Measure;
    /** 1 in 20 is worse. */
    worst: Measure;
    limit: Measure;
    direction: "at-least" | "at-most";
  };
  "stay-with": { attended: readonly string[]; is_heated: boolean };
  "line-of-two": {
    line: "least" | "warm-through";
    reached: boolean;
    plug_in: Time | null;
    chance: number;
    energy_kwh: number;
    is_planned: boolean;
  };
  "best-plug-in": { at: Time | null };
  "best-without": {
    stays_on: boolean;
    /** Shortest time that the heaters are on; null where there is none. */
    least_on_min: number | null;
  };
  /** What a heater's numbers rest on. */
  "heater-basis":
    | { kind: "measured"; runs: number }
    | { kind: "scaled"; from: string }
    | { kind: "estimated" };
  "barred-heater": { heater: string; reason: "indoors" | "engine-too-small" };
  "would-help": { remedy: Finding; chance: number; plug_in: Time | null; attended: boolean };
  "nothing-helps": { tried: number | null };
  "being-worked-out": Nothing;
  // Away from power.
  "verdict-away": {
    is_ready: boolean;
    back: Time;
    /** Null where no cover is carried. */
    covered: number | null;
    uncovered: number;
    is_covered: boolean;
  };
  "verdict-away-now": { is_ready: boolean; chance: number; beside: Finding };
  "ready-yes-no": { is_ready: boolean; chance: number };
  "engine-from": {
    from: "shut-down" | "readings" | "air";
    shut_down_h_ago: number;
    cover: "none" | "on" | "off";
  };
  "cover-on-by": {
    how: "none" | "on-already" | "at-once" | "not-needed" | "by" | "between-runs" | "too-little";
    /** Null: now. */
    by: Time | null;
    off_before_min: number;
    chance: number;
    is_covered: boolean;
  };
  "it-lasts": { covered: Lasting | null; uncovered: Lasting; chance: number };
  "run-none": { why: "no-return" | "not-needed" | "covers" | "unsure" | "too-little" };
  "run-engine": {
    starts: readonly Time[];
    /** A single run begins no sooner. */
    from: Time | null;
    run_h: number;
    is_covered: boolean;
    chance: number;
  };
  "covers-on-by": { by: Time | null; chance: number };
  "weakest-chance": { criterion: Finding; chance: number; when: "now" | "return" | "return-covered" };
  "at-controls": { is_run: boolean };
  "longest-away": {
    /** Null: only now. */
    back: Time | null;
    is_covered: boolean;
    runs: number;
    run_h: number;
  };
  "ready-by-itself": { at: Time | null; looked_h: number };
  // Thaw and dry.
  "verdict-leave": { at: Time; clear: Counted | null; dry: Counted; may: boolean };
  "verdict-leave-from": { at: Time };
  "verdict-not-dry": { horizon_h: number; dry: Counted };
  "leave-from": { at: Time | null; half: Time | null; horizon_h: number };
  "dry-last": { what: "snow" | "skin" | "gaps" };
  "brush-off": { loose_kg_per_m2: number; snow_kg_per_m2: number };
  "was-tried": { what: Finding; chance: Counted };
  "longer-stay": { hours: number };
  "no-longer-stay": { longest_h: number };
  "into-mild-air": { at: Time };
  "no-mild-air": { until: Time };
  "clear-then-dry": { clear: Surely; dry: Surely };
  "freezes-again": {
    /** Null: nothing, as far as water is left. */
    where: "gaps" | "skin" | "gaps-and-skin" | null;
    is_snow_left: boolean;
    is_wettest: boolean;
    outside: Counted;
    /** Null without a climb. */
    climb: Counted | null;
    melts_what_falls: boolean;
  };
  "work-by-hand": { brush: boolean; wipe: boolean };
  // Kits.
  "verdict-kit": { kit: string; chance: number; cold: Cold; attended: boolean };
  "verdict-colder": { kit: string; cold: Cold | null; attended: boolean };
  "verdict-no-kit": { chance: number };
  "kit-tonight": {
    status: "ready" | "not-required" | "look-first" | "not-reachable";
    plug_in: Time | null;
    unplug: Time;
    start: Time;
    chance: number;
  };
  "kit-lead": { lead_h: number | null; cold: Cold };
  "kit-warm": { cold: Cold | null };
  "kit-costs": {
    all: number | null;
    energy_kwh: number;
    energy: number | null;
    attended_h: number;
    attended: number;
    attended_per_h: number;
    currency: string;
    cold: Cold;
  };
  "kit-inside": { wet_h: number };
  "kit-weakest": { criterion: Finding; cold: Cold; chance: number };
  "kit-best-chance": { kit: string; chance: number; cold: Cold; criterion: Finding };
  "dearer-none": { why: "no-price" | "cases" | "winter" };
  "dearer-kit": { kit: string; extra: Money; cold: Cold | null; attended: boolean };
  "kit-not-advised": {
    kit: string;
    rule: "outdoors-only" | "engine-too-small" | "rejected" | "longest-on" | "always-on";
  };
  "more-not-advised": { kits: number };
  // A whole winter.
  "verdict-winter": {
    kit: string;
    habit: Finding;
    ready: number;
    /** Where it is less often ready. */
    wanted: number | null;
    cost: Money | null;
    heat_kwh: number;
    /** Null where nobody has to stay. */
    attended_h: number | null;
  };
  "verdict-other-kit": { kit: string; ready: number; cost: Money | null; attended_h: number | null };
  "verdict-no-habit": Nothing;
  "winter-ready": { least: number; warm: number };
  "winter-costs": { all: number; heat: number; time: number; rest: number; currency: string };
  "winter-cost-unknown": Nothing;
  "winter-time": { attended_h: number; per_h: Money };
  "winter-heat": { heat_kwh: number; heater_h: number; longest_h: number; allowed_h: number | null };
  "winter-inside": { wet_h: number; frost_h: number };
  "winter-weakest": { criterion: Finding; share: number };
  "winter-weakest-none": Nothing;
  "winter-always-on": {
    longest_h: number;
    /** Null where it is not over any. */
    allowed_h: number | null;
    /** Hot with nobody there; null where somebody stays. */
    alone_h: number | null;
    wet_h: number;
  };
  "dearer-winter": { kit: string; habit: Finding; extra: Money; ready: number; cost: Money | null };
}
