import { en } from "./en.js";

/** All texts of the app, in one language. Every language has the same keys, held by the compiler. */
export type Words = typeof en;
export type Language = "en" | "nb";

export const LANGUAGES: Readonly<Record<Language, string>> = { en: "English", nb: "Norsk bokmål" };

let current = $state.raw<Words>(en);

/** The texts in the user's language. */
export function words(): Words {
  return current;
}

/** English comes with the app; another language is fetched when it is chosen. */
export async function speak(language: Language): Promise<void> {
  current = language === "nb" ? (await import("./nb.js")).nb : en;
  document.documentElement.lang = language;
}
