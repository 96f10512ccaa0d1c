import type { Screen } from "../registry.js";

export const screen: Screen = {
  path: "logbook",
  order: 4,
  icon: "logbook",
  isMain: true,
  load: () => import("./LogbookScreen.svelte"),
};
