export type { Candidate, Course, Demand, Holder, ManualTask, Stay } from "./candidate.js";
export { connectionsOf, currentOf, electricPower, manualTasksOf } from "./candidate.js";
export { type Choice, choose, goTogether, type Priced } from "./choose.js";
export { type Costs, compareCosts, costsOf, sumOfCosts } from "./costs.js";
export { withoutOtherDucts } from "./course-run.js";
export { type CoursePlayer, coursePlayer, type PlayedCourse } from "./exact.js";
export { type Cause, causeOf, type Obstacle } from "./explain.js";
export { heaterFits } from "./fits.js";
export type { Lift, LimitChange } from "./lifts.js";
export {
  type BaseLimits,
  type Cart,
  type Circuit,
  type Grid,
  gridOf,
  type Hangar,
  type Presence,
  type Resource,
  timeOf,
} from "./limits.js";
export type { BinaryProgram, MilpAnswer, ProgramRow, SolveMilp } from "./milp.js";
export { type AircraftCourse, type BasePlan, type BasePlanFailure, planBase } from "./plan.js";
export type { BaseAircraft, BaseRequest, ParkedAircraft } from "./request.js";
export { type Option, optionsOf, parkedDemands } from "./rows.js";
