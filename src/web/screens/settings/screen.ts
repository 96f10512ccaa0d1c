import type { Screen } from "../registry.js";

export const screen: Screen = {
  path: "settings",
  order: 20,
  icon: "setup",
  isMain: false,
  load: () => import("./SettingsScreen.svelte"),
};
