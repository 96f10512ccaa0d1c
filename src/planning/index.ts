export type { ChanceAt, Plan, Remedy, StayWarm } from "./plan.js";
export type { PlanRequest, Wish } from "./request.js";
