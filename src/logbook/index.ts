export { canonicalText } from "./canonical.js";
export { CONTINUOUS_SHARE, continuousLimit } from "./continuous-load.js";
export { deriveBase } from "./derive.js";
export {
  type EventKind,
  type EventOf,
  eventIdSchema,
  eventSchema,
  type FaultCode,
  type LogbookEvent,
  type StoredEvent,
} from "./events.js";
export { type EventsReading, LOGBOOK_VERSION, readEvents } from "./events-reading.js";
export { eventsToCsv, readEventsCsv } from "./export-csv.js";
export { eventsToJson } from "./export-json.js";
export { eventInCurrentForm } from "./migrate-event.js";
export { type ProbeReading, readingsToCsv, readReadingsCsv } from "./readings-csv.js";
export {
  type BaseAircraft,
  type BaseCircuit,
  type BaseProbe,
  type BaseSetUp,
  baseSetUpSchema,
  type HeaterSwitch,
  idSchema,
} from "./set-up.js";
export { readBaseSetUp } from "./set-up-reading.js";
export type { AircraftState, BaseState, Change, WantedDeparture } from "./state.js";
export { switchCautions, type UnsafeSwitches, unsafeSwitches } from "./switch-safety.js";
