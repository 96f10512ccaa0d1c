export {
  type FilterEstimate,
  type FilterFinding,
  type PartEstimate,
  type SampledState,
  sampledState,
} from "./filter-estimate.js";
export { createLiveFilter, type FilterInput, type FilterStep, type LiveFilter } from "./filter-live.js";
export type {
  Deviation,
  FilterLayout,
  FilterSetup,
  FilterState,
  ProbeState,
  Suspect,
} from "./filter-state.js";
export type { ReadingUse } from "./filter-update.js";
export { type AircraftFit, type FitFailure, type FitRequest, fitAircraft } from "./fit-aircraft.js";
export { FitTrouble } from "./fit-model.js";
export {
  type NextReading,
  type NextReadingRequest,
  type NextReadings,
  nextReadings,
} from "./fit-next-reading.js";
export {
  type FitReport,
  type LearnedMultiplier,
  type LearnedUnknown,
  type ProbeReport,
  reportOf,
} from "./fit-report.js";
export { checkBySampling, type SamplingCheck, type SamplingRequest } from "./fit-sampling.js";
export {
  type Evidence,
  type FittedAircraft,
  fittedAircraft,
  hashOf,
  learnedSensors,
  posteriorFor,
  sensorsAsLearned,
  type ThermalSetting,
  withPriors,
} from "./fitted-aircraft.js";
export type { LogFinding, ProbePlace, ProbeSeries, TemperatureLog } from "./log.js";
export type {
  ColumnUse,
  LogIssue,
  LogOptions,
  LogQuestion,
  LogReading,
  TemperatureUnit,
} from "./log-options.js";
export { readTemperatureLog } from "./log-reading.js";
export {
  type MadeFleet,
  type MadeNight,
  madeFleet,
  madeLog,
  madeNight,
  STRUCTURE_LOG_SD,
  trueTemps,
} from "./made-aircraft.js";
export { type Sensor, type SensorKnowledge, sensorsOf, USUAL_SENSOR } from "./sensor.js";
export { type Discrepancy, USUAL_DISCREPANCY } from "./sensor-noise.js";
