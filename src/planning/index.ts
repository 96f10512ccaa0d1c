export { type AwayCase, type AwayReport, type AwayRequest, stayAway, USUAL_COVER_OFF } from "./away.js";
export type { Bridge, Reach } from "./away-bridges.js";
export type { Keeping } from "./away-model.js";
export { type EngineRun, GROUND_RUN_DOUBT, RUN_CAUTIONS } from "./away-run.js";
export type { Decision } from "./decision.js";
export {
  type BarredHeater,
  type HeatingNow,
  isTooSmall,
  REST,
} from "./heater-use.js";
export { centralRun, type HeatingImpact, heatingImpact, moistureAlong, type Ranking } from "./left-on.js";
export type { ChanceAt, Plan, PlanLine, PlugInAnswer, ReadyWindow, Remedy, StayWarm } from "./plan.js";
export { plannedChanges } from "./planned-changes.js";
export { type PlanFailure, planPreheat } from "./preheat.js";
export { type BasedAnswer, type Basis, createReplanner, type Replanner } from "./replanner.js";
export type { PlanRequest, Wish } from "./request.js";
export { readyTimes } from "./stay.js";
export { type WhatIf, whatIfScenario } from "./what-if.js";
