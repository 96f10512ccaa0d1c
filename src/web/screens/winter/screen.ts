import type { Screen } from "../registry.js";

export const screen: Screen = {
  path: "winter",
  order: 7,
  icon: "snow",
  isMain: false,
  load: () => import("./WinterScreen.svelte"),
};
