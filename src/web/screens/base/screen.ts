import type { Screen } from "../registry.js";

export const screen: Screen = {
  path: "base",
  order: 10,
  icon: "hangar",
  isMain: false,
  load: () => import("./BaseScreen.svelte"),
};
