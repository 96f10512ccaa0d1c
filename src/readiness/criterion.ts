import type { Installation, Kit } from "../aircraft/index.js";
import type { CriterionValues, Finding, Measure } from "../findings/index.js";
import { celsiusFromKelvin, RADIANS_PER_SECOND_OF_RPM } from "../units/index.js";

/** The state of an ensemble at one moment, as criteria read it. */
export interface EnsembleState {
  /** [K] part i, member m at `[i * members + m]` */
  readonly temps: Float64Array;
  readonly parts: readonly string[];
  readonly members: number;
}

/**
 * What a value is, so that it can be shown in the user's unit. Values are SI: [K], [rad/s]; "fraction" [0..1], "ratio",
 * "index" [0..100] and "count" are plain numbers.
 */
export type Quantity =
  | "temperature"
  | "temperature-difference"
  | "rotational-speed"
  | "fraction"
  | "ratio"
  | "index"
  | "count";

/**
 * One thing that must hold for a start. Criteria judged "at-start" are read at the moment of the start; those judged
 * "while-heating" at the moment of unplugging, when heater and oil are hottest.
 */
export interface Criterion {
  readonly id: string;
  readonly title: Finding;
  readonly quantity: Quantity;
  readonly direction: "at-least" | "at-most";
  readonly judged: "at-start" | "while-heating";
  readonly limit: number;
  /** Shown with its margin, but neither in the chance of being ready nor able to bind: rules of thumb and indices. */
  readonly advisory?: true;
  /** Counts only where the engine is to be warm through; the least that makers ask for does without it. */
  readonly aim?: "warm-through";
  /** Why it matters. */
  readonly reason: Finding;
  /** Where the limit comes from: a citation, or the owner. */
  readonly source: string | Finding<"owners-limit">;
  /** Writes each member's value (length `members`). */
  values(state: EnsembleState, out: Float64Array): void;
}

/** What a criterion is made for. */
export interface CriterionSetting {
  readonly installation: Installation;
  readonly kit: Kit;
  readonly stricter: StricterLimits;
  /** State of charge of the battery [0..1]; what the description assumes when absent. */
  readonly charge?: number | undefined;
}

/** Makes a criterion for a setting: one of a kind, one for each heater, or none where it does not apply. */
export type CriterionMaker = (setting: CriterionSetting) => readonly Criterion[];

/** Limits a user may set, [K]; only stricter than the installation's own ones count. */
export interface StricterLimits {
  /** Oil, bearings, case, barrels and heads at least this warm. */
  readonly engineAtLeast?: number;
  /** Oil at least this warm. */
  readonly oilAtLeast?: number;
  /** Spread between the engine's parts at most this. */
  readonly evennessAtMost?: number;
  /** What the owner calls warm through; the usual one where left out. */
  readonly warmThrough?: number;
}

/** Its words: what it is called, and why it matters. */
export function named<K extends keyof CriterionValues>(
  id: K,
  values: CriterionValues[K],
): Pick<Criterion, "id" | "title" | "reason"> {
  return {
    id,
    title: { code: `criterion-${id}`, values } as unknown as Finding,
    reason: { code: `criterion-${id}-why`, values } as unknown as Finding,
  };
}

/**
 * The two lines of a plan: "least", every part past the engine maker's limit, where heating becomes mandatory, and
 * "warm-through", where the engine is warm.
 */
export type Aim = "least" | "warm-through";

/** Whether a criterion decides if the engine may be started: the line of the least. */
export function isGating({ judged, advisory, aim }: Criterion): boolean {
  return judged === "at-start" && advisory !== true && aim === undefined;
}

/** The criteria that decide on one of the two lines. */
export function gatingOf(criteria: readonly Criterion[], line: Aim): Criterion[] {
  return criteria.filter((c) => isGating(c) || isOfLine(c, line));
}

/** Whether a criterion decides on this line only. */
export function isOfLine({ judged, aim }: Criterion, line: Aim): boolean {
  return judged === "at-start" && aim === line;
}

/** Margin of a value: positive when the criterion holds. */
export function marginOf({ direction, limit }: Criterion, value: number): number {
  return direction === "at-least" ? value - limit : limit - value;
}

interface Shown {
  readonly unit: Measure["unit"];
  readonly value: (si: number) => number;
  readonly margin: (si: number) => number;
}

const plain = (value: number) => value;
const rpm = (speed: number) => speed / RADIANS_PER_SECOND_OF_RPM;
const percent = (fraction: number) => 100 * fraction;

/** In which unit each quantity is shown, and its values and margins in it. */
export const SHOWN: Readonly<Record<Quantity, Shown>> = {
  temperature: { unit: "c", value: celsiusFromKelvin, margin: plain },
  "temperature-difference": { unit: "k", value: plain, margin: plain },
  "rotational-speed": { unit: "rpm", value: rpm, margin: rpm },
  fraction: { unit: "percent", value: percent, margin: percent },
  ratio: { unit: "ratio", value: plain, margin: plain },
  index: { unit: "index", value: plain, margin: plain },
  count: { unit: "count", value: plain, margin: plain },
};

/** A margin in the unit in which it is shown: degrees apart, not degrees. */
export function marginMeasure({ quantity }: Criterion, margin: number): Measure {
  const { unit, margin: shown } = SHOWN[quantity];
  return { value: shown(margin), unit: unit === "c" ? "k" : unit };
}

/** The coldest of some parts must be at least `limit` [K] at the start. */
export function lowest(
  words: Pick<Criterion, "id" | "title" | "reason">,
  parts: readonly string[],
  limit: number,
  source: Criterion["source"],
): Criterion {
  return {
    ...words,
    limit,
    source,
    quantity: "temperature",
    direction: "at-least",
    judged: "at-start",
    values: (state, out) => extreme(state, parts, Math.min, out),
  };
}

/** The hottest of some parts must be at most `limit` [K] while heating. */
export function highest(
  words: Pick<Criterion, "id" | "title" | "reason">,
  parts: readonly string[],
  limit: number,
  source: string,
): Criterion {
  return {
    ...words,
    limit,
    source,
    quantity: "temperature",
    direction: "at-most",
    judged: "while-heating",
    values: (state, out) => extreme(state, parts, Math.max, out),
  };
}

/** Writes the coldest or hottest [K] of some parts, per member. */
export function extreme(
  state: EnsembleState,
  parts: readonly string[],
  pick: (a: number, b: number) => number,
  out: Float64Array,
): void {
  const { temps, members } = state;
  for (let k = 0; k < parts.length; k++) {
    const o = rowOf(state, parts[k]) * members;
    for (let m = 0; m < members; m++) out[m] = k === 0 ? temps[o + m] : pick(out[m], temps[o + m]);
  }
}

export function rowOf({ parts }: EnsembleState, part: string): number {
  const row = parts.indexOf(part);
  if (row < 0) throw new RangeError(`unknown part: ${part} (expected one of ${parts.join(", ")})`);
  return row;
}
