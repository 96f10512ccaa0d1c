import type { Component } from "svelte";
import type { IconName } from "../design/Icon.svelte";
import type { Words } from "../words/index.svelte.js";

export interface Screen {
  /** In the address, after "#/"; also its name among the words (`screens`). */
  readonly path: keyof Words["screens"];
  readonly icon: IconName;
  readonly load: () => Promise<{ readonly default: Component }>;
}

/** Screens in the bar. */
export const MAIN: readonly [Screen, ...Screen[]] = [
  { path: "night", icon: "night", load: () => import("./night/NightScreen.svelte") },
  { path: "aircraft", icon: "aircraft", load: () => import("./aircraft/AircraftScreen.svelte") },
  { path: "away", icon: "away", load: () => import("./away/AwayScreen.svelte") },
  { path: "logbook", icon: "logbook", load: () => import("./logbook/LogbookScreen.svelte") },
];

/** Screens under "more". */
export const OTHERS: readonly Screen[] = [
  { path: "thaw", icon: "thaw", load: () => import("./thaw/ThawScreen.svelte") },
  { path: "kit", icon: "kit", load: () => import("./kit/KitScreen.svelte") },
  { path: "winter", icon: "snow", load: () => import("./winter/WinterScreen.svelte") },
  { path: "learn", icon: "reading", load: () => import("./learn/LearnScreen.svelte") },
  { path: "why", icon: "info", load: () => import("./why/WhyScreen.svelte") },
  { path: "base", icon: "hangar", load: () => import("./base/BaseScreen.svelte") },
  { path: "forecast", icon: "cloud", load: () => import("./forecast/ForecastScreen.svelte") },
  { path: "settings", icon: "setup", load: () => import("./settings/SettingsScreen.svelte") },
];

export const SCREENS: readonly Screen[] = [...MAIN, ...OTHERS];
