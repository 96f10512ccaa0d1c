import type { Screen } from "../registry.js";

export const screen: Screen = {
  path: "forecast",
  order: 10,
  icon: "cloud",
  isMain: false,
  load: () => import("./ForecastScreen.svelte"),
};
