export { tempBatteryLeast, tempChargeLeast } from "./battery-state.js";
export { type StartBriefing, startBriefing } from "./briefing.js";
export type { CaseMoisture, PartCourse } from "./case-balance.js";
export { caseGeometry } from "./case-geometry.js";
export { caseMoisture, WATER_IN_OIL_WINTER, WET_TIME_LIMITS } from "./case-moisture.js";
export { START_CAUTIONS } from "./cautions.js";
export {
  bearingIndex,
  CLEARANCE_LIMITS,
  clearanceOf,
  pistonIndex,
  TEMP_PISTON_FIRST_MINUTES,
} from "./clearance.js";
export { crankingModel } from "./cranking.js";
export { clampedFuel, fuelVolatility, OFFERED_MOST, TEMP_WARM_START } from "./fuel-start.js";
export { oilGradeAdvice } from "./oil-grade.js";
export { GROUND_RUN_PARTS, groundRun, shutDownTemps } from "./shut-down.js";
export { type CrankingSpread, crankingSpread, USUAL_CRANKING } from "./spread.js";
export { type Explanation, explainWhy, whyTopics } from "./why.js";
export type { WhyTopic } from "./why-topics.js";
