export {
  type BatterySource,
  batteryKind,
  batterySource,
  crankingCharge,
  testResistance,
} from "./battery-source.js";
export {
  type BatteryState,
  batteryState,
  TEMP_REMOVE_BATTERY,
  tempBatteryLeast,
  tempChargeLeast,
} from "./battery-state.js";
export { type StartBriefing, type StartNote, startBriefing } from "./briefing.js";
export { type CaseGeometry, caseGeometry } from "./case-geometry.js";
export {
  type CaseMoisture,
  type CaseWater,
  caseMoisture,
  type OutsideAir,
  type PartCourse,
  WATER_IN_OIL_WINTER,
  WET_TIME_LIMITS,
} from "./case-moisture.js";
export { waterActivityOil, waterSolubilityOil } from "./case-vapour.js";
export { START_CAUTIONS } from "./cautions.js";
export {
  bearingIndex,
  CLEARANCE_LIMITS,
  clearanceOf,
  pistonIndex,
  TEMP_PISTON_FIRST_MINUTES,
} from "./clearance.js";
export {
  type CrankingModel,
  type CrankingTemps,
  type CrankingTry,
  crankingModel,
  crankingTry,
  TRY_DURATION,
} from "./cranking.js";
export {
  CRANKING_REFERENCE_OIL,
  CRANKING_REFERENCE_SPEED,
  CRANKING_REFERENCE_VISCOSITY,
  type CrankingDrag,
  compressionPressure,
  crankingDrag,
  crankingTorque,
  FILM_EXPONENT,
  FILM_SHARES,
} from "./cranking-drag.js";
export {
  clampedFuel,
  type FuelStart,
  fuelStart,
  fuelVolatility,
  OFFERED_MOST,
  PRESSURE_INTAKE,
  TEMP_WARM_START,
} from "./fuel-start.js";
export { type OilFitness, type OilPressureDelay, oilFitness, oilPressureDelay } from "./oil-fitness.js";
export {
  OIL_GRADE_SOURCE,
  OIL_GRADES,
  type OilGradeAdvice,
  type OilGradeRow,
  oilGradeAdvice,
} from "./oil-grade.js";
export { GROUND_RUN_PARTS, type GroundRun, groundRun, shutDownTemps } from "./shut-down.js";
export { type CrankingSpread, crankingSpread, USUAL_CRANKING } from "./spread.js";
export { type Starter, starterOf } from "./starter.js";
export { type Exchange, settle, type VapourStep } from "./vapour-step.js";
export { type Explanation, explainWhy, whyTopics } from "./why.js";
export type { WhyTopic } from "./why-topics.js";
