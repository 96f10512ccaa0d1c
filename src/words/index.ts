import type { FindingValues, Said, SaidCaution } from "../findings/index.js";
import { type ReaderUnits, sentenceInUnits } from "../units/index.js";
import { en } from "./en/index.js";
import type { Phrases, Say } from "./phrases.js";
import { type LanguageTag, sayIn, type Writing } from "./say.js";

export type { Say } from "./phrases.js";
export { LANGUAGES, type LanguageTag, sayIn, type Writing } from "./say.js";

/** All phrases of one language. */
export type Catalogue = Phrases<FindingValues>;

/**
 * Findings in words. A sentence that is no finding yet stays English, in the reader's units; a caution that is a text keeps
 * the units that it was published in.
 */
export type Speak = (said: Said | SaidCaution) => string;

/** Speaks one language in the reader's units. English is always there; another language's catalogue is given. */
export function speaker(
  units: ReaderUnits,
  language: LanguageTag = "en",
  catalogue: Catalogue = en,
  writing: Writing = {},
): Speak {
  const speak: Speak = (said) => {
    if (typeof said === "string") return sentenceInUnits(said, units);
    if ("text" in said) return said.text;
    return (catalogue[said.code] as (values: unknown, say: Say) => string)(said.values, say);
  };
  const say = sayIn(language, units, speak, writing);
  return speak;
}

const inEnglish = speaker({ temp: "c", wind: "mps" });

/** English, SI, with plain spaces: for logs and files that are read without a reader's settings. */
export const english: Speak = (said) => inEnglish(said).replaceAll("\u00a0", " ");
