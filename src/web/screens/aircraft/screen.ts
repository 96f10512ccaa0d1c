import type { Screen } from "../registry.js";

export const screen: Screen = {
  path: "aircraft",
  order: 2,
  icon: "aircraft",
  isMain: true,
  load: () => import("./AircraftScreen.svelte"),
};
