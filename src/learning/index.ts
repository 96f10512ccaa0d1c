export { type LoggedStretch, stretchesOf } from "./cool-down.js";
export {
  type FilterEstimate,
  learnedMultipliers,
  type PartEstimate,
  sampledState,
} from "./filter-estimate.js";
export { createLiveFilter, type FilterInput, type LiveFilter } from "./filter-live.js";
export type { FilterState } from "./filter-state.js";
export { DISTRUSTED } from "./filter-update.js";
export { type AircraftFit, fitAircraft } from "./fit-aircraft.js";
export { FitTrouble } from "./fit-model.js";
export { type NextReadings, nextReadings } from "./fit-next-reading.js";
export { reportOf } from "./fit-report.js";
export {
  type FittedAircraft,
  fittedAircraft,
  hashOf,
  learnedLive,
  posteriorFor,
  sensorsAsLearned,
} from "./fitted-aircraft.js";
export { type FleetMember, withFleet } from "./fleet-prior.js";
export type { LogFinding, ProbePlace, TemperatureLog } from "./log.js";
export type { LogOptions, LogQuestion } from "./log-options.js";
export { readTemperatureLog } from "./log-reading.js";
export { type Sensor, sensorsOf, USUAL_SENSOR } from "./sensor.js";
export { type CheckedPlan, type CheckedReading, type TrackRecord, trackRecord } from "./track-record.js";
