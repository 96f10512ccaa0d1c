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
import { app } from "../data/app.svelte.js";
import { settings } from "../data/settings.svelte.js";
import { clockBeside, dayText } from "../units/times.js";
import { numberText } from "../units/units.js";
import { en, type Words } from "./en.js";

export { LANGUAGES, type LanguageTag as Language } from "../../words/index.js";
export type { Words } from "./en.js";

interface Spoken {
  readonly words: Words;
  /** Undefined: English. */
  readonly catalogue?: Catalogue;
}

let current = $state.raw<Spoken>({ words: en });

/** The texts in the user's language. */
export function words(): Words {
  return current.words;
}

/** A moment as documents [ISO 8601] and screens [ms] have it. */
type Moment = number | string | { readonly time: string };

/** Values, moments and findings as this reader is told them. */
export interface Said extends Say {
  readonly speak: Speak;
  /** Clock time at the base, with the weekday where it is not clear. */
  at(moment: Moment): string;
  day(moment: Moment): string;
  /** What a document says: a finding, or a sentence in its own units. */
  told(what: FromCore | SaidCaution): string;
}

const said = $derived.by<Said>(() => {
  const { units, locale, all } = settings;
  const zone = app.view?.zone ?? "UTC";
  const at = (moment: Moment) => clockBeside(msOf(moment), app.now, zone, locale);
  const writing: Writing = { clock: at, number: (value, digits) => numberText(value, units, digits) };
  const speak = speaker(units, all.language, current.catalogue, writing);
  return {
    ...sayIn(all.language, units, speak, writing),
    speak,
    at,
    day: (moment) => dayText(msOf(moment), zone, locale),
    told: speak,
  };
});

/** How this reader is told values; whoever asks follows when settings or the clock change. */
export function say(): Said {
  return said;
}

function msOf(moment: Moment): number {
  if (typeof moment === "number") return moment;
  return Date.parse(typeof moment === "string" ? moment : moment.time);
}

/** English comes with the app; another language is fetched when it is chosen. */
export async function speak(language: LanguageTag): Promise<void> {
  if (language === "nb") {
    const [words, catalogue] = await Promise.all([import("./nb.js"), import("../../words/nb/index.js")]);
    current = { words: words.nb, catalogue: catalogue.nb };
  } else current = { words: en };
  document.documentElement.lang = language;
}
