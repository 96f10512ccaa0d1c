import type { Units } from "../units/units.js";
import type { Language } from "../words/index.svelte.js";
import type { Book } from "./db.js";

// How this device shows things. Kept where it can be read at once, so that the first view has the right light.

export interface Settings {
  readonly language: Language;
  readonly temp: Units["temp"];
  readonly wind: Units["wind"];
  readonly light: "as-device" | "light" | "dark";
  /** Undefined: neither a base of one's own nor the demo was chosen yet. */
  readonly book?: Book;
}

const KEY = "soakline-settings";

function usual(): Settings {
  const nordic = navigator.languages.some((l) => /^(nb|no|nn)\b/.test(l));
  return { language: nordic ? "nb" : "en", temp: "c", wind: "kt", light: "as-device" };
}

function stored(): Settings {
  try {
    return { ...usual(), ...(JSON.parse(localStorage.getItem(KEY) ?? "{}") as Partial<Settings>) };
  } catch {
    // Storage is closed to us, or holds something else: the app works with the usual settings.
    return usual();
  }
}

let current = $state<Settings>(stored());

export const settings = {
  get all(): Settings {
    return current;
  },
  /** For dates and numbers: day before month. */
  get locale(): string {
    return current.language === "en" ? "en-GB" : current.language;
  },
  get units(): Units {
    return { temp: current.temp, wind: current.wind, language: settings.locale };
  },
  change(change: Partial<Settings>): void {
    current = { ...current, ...change };
    try {
      localStorage.setItem(KEY, JSON.stringify(current));
    } catch {
      // They then last as long as the page.
    }
    showLight();
  },
};

const dark = matchMedia("(prefers-color-scheme: dark)");

/** Puts the chosen light on the page. */
export function showLight(): void {
  const isDark = current.light === "dark" || (current.light === "as-device" && dark.matches);
  document.documentElement.dataset.light = isDark ? "dark" : "light";
}

dark.addEventListener("change", showLight);
