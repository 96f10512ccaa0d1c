import type { Screen } from "../registry.js";

export const screen: Screen = {
  path: "why",
  order: 9,
  icon: "info",
  isMain: false,
  load: () => import("./WhyScreen.svelte"),
};
