export { type AwayReport, type AwayRequest, stayAway } from "./away.js";
export { NumericalFailure } from "./chance.js";
export { type HabitToll, tollOf } from "./left-on.js";
export type { ChanceAt, Plan, Remedy, StayWarm } from "./plan.js";
export { planPreheat } from "./preheat.js";
export type { PlanRequest, Wish } from "./request.js";
export { readySince, readyTimes, stayWarm } from "./stay.js";
