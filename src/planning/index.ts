export { type AwayReport, type AwayRequest, stayAway } from "./away.js";
export type { HabitToll } from "./left-on.js";
export type { ChanceAt, Plan, Remedy, StayWarm } from "./plan.js";
export { planPreheat } from "./preheat.js";
export type { PlanRequest, Wish } from "./request.js";
export { readySince, readyTimes, stayWarm } from "./stay.js";
