import type { Screen } from "../registry.js";

export const screen: Screen = {
  path: "away",
  order: 3,
  icon: "away",
  isMain: true,
  load: () => import("./AwayScreen.svelte"),
};
