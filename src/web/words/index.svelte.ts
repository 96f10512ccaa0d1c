import { en, type Words } from "./en.js";

export type { Words } from "./en.js";
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
