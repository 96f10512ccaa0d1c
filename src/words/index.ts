import type { Finding, FindingValues } from "../findings/index.js";
import type { ReaderUnits } from "../units/index.js";
import { en } from "./en/index.js";
import type { Phrases, Say } from "./phrases.js";
import { type LanguageTag, sayIn, type Writing } from "./say.js";

export type { Phrases, Say } from "./phrases.js";
export { LANGUAGES, type LanguageTag, sayIn, type Writing } from "./say.js";

/** All phrases of one language. */
export type Catalogue = Phrases<FindingValues>;

/** Findings in words. */
export type Speak = (finding: Finding) => string;

/** Speaks one language in the reader's units. English is always there; another language's catalogue is given. */
export function speaker(
  units: ReaderUnits,
  language: LanguageTag = "en",
  catalogue: Catalogue = en,
  writing: Writing = {},
): Speak {
  const speak: Speak = ({ code, values }) =>
    (catalogue[code] as (values: unknown, say: Say) => string)(values, say);
  const say = sayIn(language, units, speak, writing);
  return speak;
}

/** English, SI: for logs and documents that are read without a reader's settings. */
export const english: Speak = speaker({ temp: "c", wind: "mps" });
