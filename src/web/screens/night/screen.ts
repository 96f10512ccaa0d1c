import type { Screen } from "../registry.js";

export const screen: Screen = {
  path: "night",
  order: 1,
  icon: "night",
  isMain: true,
  load: () => import("./NightScreen.svelte"),
};
