import type { Catalogue, LanguageTag } from "../../words/index.js";
import { app } from "../data/app.svelte.js";
import { settings } from "../data/settings.svelte.js";
import { en, type Words } from "./en.js";
import { type Said, saidIn } from "./said.js";

export { LANGUAGES, type LanguageTag as Language } from "../../words/index.js";
export type { Words } from "./en.js";
export type { Said } from "./said.js";

interface Spoken {
  readonly words: Words;
  /** Undefined: English. */
  readonly catalogue?: Catalogue;
  readonly names?: Readonly<Record<string, string>>;
}

let current = $state.raw<Spoken>({ words: en });

/** The texts in the user's language. */
export function words(): Words {
  return current.words;
}

const said = $derived(
  saidIn({
    language: settings.all.language,
    units: settings.units,
    zone: app.view?.zone ?? "UTC",
    now: app.now,
    catalogue: current.catalogue,
    names: current.names,
  }),
);

/** How this reader is told values; whoever asks follows when settings or the clock change. */
export function say(): Said {
  return said;
}

/** English comes with the app; another language is fetched when it is chosen. */
export async function speak(language: LanguageTag): Promise<void> {
  if (language === "nb") {
    const [words, { nb, names }] = await Promise.all([import("./nb.js"), import("../../words/nb/index.js")]);
    current = { words: words.nb, catalogue: nb, names };
  } else current = { words: en };
  document.documentElement.lang = language;
}
