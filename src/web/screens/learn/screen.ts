import type { Screen } from "../registry.js";

export const screen: Screen = {
  path: "learn",
  order: 8,
  icon: "reading",
  isMain: false,
  load: () => import("./LearnScreen.svelte"),
};
