import type { Said as FromCore, SaidCaution } from "../../findings/index.js";
import {
  type Catalogue,
  type LanguageTag,
  type Say,
  type Speak,
  sayIn,
  speaker,
  type Writing,
} from "../../words/index.js";
import { clockBeside, clockText, dayText } from "../units/times.js";
import { numberText, type Units } from "../units/units.js";

/** A moment as documents [ISO 8601] and screens [ms] have it. */
type Moment = number | string | { readonly time: string };

/** Values, moments and findings as this reader is told them. */
export interface Said extends Say {
  readonly speak: Speak;
  /** [ms] the moment one speaks at. */
  readonly now: number;
  readonly units: Units;
  /** Clock time at the base, with the weekday where it is not clear. */
  at(moment: Moment): string;
  /** The same without a weekday. */
  bareClock(moment: Moment): string;
  day(moment: Moment): string;
  /** What a document says: a finding, or a sentence in its own units. */
  told(what: FromCore | SaidCaution): string;
}

export interface Reader {
  readonly language: LanguageTag;
  readonly units: Units;
  readonly zone: string;
  readonly now: number;
  /** Phrases of the language; English where left out. */
  readonly catalogue?: Catalogue | undefined;
  readonly names?: Readonly<Record<string, string>> | undefined;
}

/** How a reader is told values. */
export function saidIn({ language, units, zone, now, catalogue, names = {} }: Reader): Said {
  const at = (moment: Moment) => clockBeside(msOf(moment), now, zone, units.language);
  const writing: Writing = { clock: at, number: (value, digits) => numberText(value, units, digits), names };
  const speak = speaker(units, language, catalogue, writing);
  return {
    ...sayIn(language, units, speak, writing),
    speak,
    now,
    units,
    at,
    bareClock: (moment) => clockText(msOf(moment), zone),
    day: (moment) => dayText(msOf(moment), zone, units.language),
    told: speak,
  };
}

function msOf(moment: Moment): number {
  if (typeof moment === "number") return moment;
  return Date.parse(typeof moment === "string" ? moment : moment.time);
}
