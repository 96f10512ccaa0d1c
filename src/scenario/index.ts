export {
  type AircraftScenario,
  type Ensemble,
  heatersUsed,
  type KnownFrom,
  type SourceIssue,
  usedKit,
  type WishWithHeaters,
} from "./aircraft-scenario.js";
export { type DrawnScenario, drawnFrom, posteriorOf } from "./draws.js";
export { HEATED_FOR_UNKNOWN } from "./heater-rules.js";
export type { KnownTemps } from "./initial-state.js";
export { type LookFirst, lookFirst } from "./look-first.js";
export { type Notes, type ScenarioParts, settle } from "./settle.js";
export { siteOf } from "./site.js";
export { handlingOf, percent, USUAL_CHANCE, wishOf } from "./wish.js";
