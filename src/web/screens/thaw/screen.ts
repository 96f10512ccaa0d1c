import type { Screen } from "../registry.js";

export const screen: Screen = {
  path: "thaw",
  order: 5,
  icon: "thaw",
  isMain: false,
  load: () => import("./ThawScreen.svelte"),
};
