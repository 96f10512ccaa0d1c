import type { AirframeFindings } from "./airframe.js";
import type { BaseMoment, BasePlanFindings } from "./base-plan.js";
import type { CautionsFindings } from "./cautions.js";
import type { CriteriaFindings, CriterionValues } from "./criteria.js";
import type { DocumentsFindings } from "./documents.js";
import type { FirstScreenFindings, Label } from "./first-screen.js";
import type { LearningFindings } from "./learning.js";
import type { Measure } from "./measure.js";
import type { PlanningFindings } from "./planning.js";
import type { StartingFindings } from "./starting.js";
import type { SwitchingFindings } from "./switching.js";
import type { WeatherFindings } from "./weather.js";
import type { WinterFindings } from "./winter.js";

export type {
  AirframeFindings,
  BaseMoment,
  BasePlanFindings,
  CautionsFindings,
  CriteriaFindings,
  CriterionValues,
  DocumentsFindings,
  FirstScreenFindings,
  Label,
  LearningFindings,
  Measure,
  PlanningFindings,
  StartingFindings,
  SwitchingFindings,
  WeatherFindings,
  WinterFindings,
};

/** Every finding there is: its code and the values that its words need, which are plain JSON with units in the keys. */
type Values = AirframeFindings &
  BasePlanFindings &
  CautionsFindings &
  CriteriaFindings &
  DocumentsFindings &
  FirstScreenFindings &
  LearningFindings &
  PlanningFindings &
  StartingFindings &
  SwitchingFindings &
  WeatherFindings &
  WinterFindings;

export type FindingValues = { readonly [C in keyof Values]: Readonly<Values[C]> };

export type FindingCode = keyof FindingValues;

/** What the core found out, assumed or warns of. Words are made of it at the edge, in the reader's language and units. */
export type Finding<C extends FindingCode = FindingCode> = {
  readonly [K in C]: { readonly code: K; readonly values: FindingValues[K] };
}[C];

/** A finding that says where it comes from; a citation stands in its own language. */
export type SourcedFinding<C extends FindingCode = FindingCode> = Finding<C> & { readonly source: string };

/** @example finding("oil-cooler-cold", { temp_c: -20 }) */
export function finding<C extends FindingCode>(code: C, values: FindingValues[C]): Finding<C> {
  return { code, values } as Finding<C>;
}

/** @example sourced("cords", {}, "Elsäkerhetsverket (Sweden)") */
export function sourced<C extends FindingCode>(
  code: C,
  values: FindingValues[C],
  source: string,
): SourcedFinding<C> {
  return { code, values, source } as SourcedFinding<C>;
}

/** A finding, or a sentence: of somebody's own, of what was stored before findings, or of an error. */
export type Said = string | Finding;

/** What to take care of, and where that comes from. A text is the user's own. */
export type SaidCaution = SourcedFinding | { readonly text: string; readonly source: string };

/** The same for findings, and for cautions, that say the same: to name each once. */
export function keyOf(said: Said | SaidCaution): string {
  if (typeof said === "string") return said;
  return "text" in said ? said.text : JSON.stringify([said.code, said.values]);
}

/** Each once, in the order of the first. */
export function eachOnce<T extends Said | SaidCaution>(all: Iterable<T>): T[] {
  const found = new Map<string, T>();
  for (const one of all) if (!found.has(keyOf(one))) found.set(keyOf(one), one);
  return [...found.values()];
}

/** A caution as a finding; a text of the user's own in its words. */
export function findingOf(caution: SaidCaution): Finding {
  if ("text" in caution) return finding("own-words", { text: caution.text });
  return { code: caution.code, values: caution.values } as Finding;
}
