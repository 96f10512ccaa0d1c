export {
  type AircraftScenario,
  type Ensemble,
  heatersUsed,
  type RecordCorrection,
  usedKit,
  type WishWithHeaters,
} from "./aircraft-scenario.js";
export { type DrawnScenario, drawnFrom, posteriorOf } from "./draws.js";
export type { KnownTemps } from "./initial-state.js";
export { lookFirst } from "./look-first.js";
export { type Notes, settle } from "./settle.js";
export { siteOf } from "./site.js";
export { handlingOf, USUAL_CHANCE, wishOf } from "./wish.js";
