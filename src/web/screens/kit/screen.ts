import type { Screen } from "../registry.js";

export const screen: Screen = {
  path: "kit",
  order: 6,
  icon: "kit",
  isMain: false,
  load: () => import("./KitScreen.svelte"),
};
