export {
  type EventKind,
  type EventOf,
  eventIdSchema,
  eventSchema,
  FAULTS,
  type FaultCode,
  type LogbookEvent,
  type StoredEvent,
} from "./events.js";
export {
  type BaseAircraft,
  type BaseCircuit,
  type BaseProbe,
  type BaseSetUp,
  baseSetUpSchema,
  type HeaterSwitch,
  idSchema,
  probePlaces,
  type SwitchRequest,
} from "./set-up.js";
export type {
  AircraftState,
  Anchor,
  BaseState,
  Change,
  SwitchStanding,
  WantedDeparture,
} from "./state.js";
