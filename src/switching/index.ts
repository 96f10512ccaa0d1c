export { cautionsOf, SWITCH_CAUTIONS, type SwitchCaution } from "./cautions.js";
export {
  canBeToldOff,
  checkProbe,
  checkSwitch,
  requestText,
  SECRET_PLACE,
  secretNamesOf,
  shownRequest,
} from "./check.js";
export {
  type HttpDescription,
  type MqttDescription,
  ON_TIME_PLACE,
  type RequestDescription,
  type SwitchDescription,
} from "./description.js";
export {
  isLocking,
  LOCKING_FAULTS,
  type LockingFault,
  PASSING_FAULTS,
  type PassingFault,
  SWITCH_FAULTS,
  type SwitchFault,
} from "./faults.js";
export { type Hold, holdsOf, isPowered, isWanted, remainingS } from "./holds.js";
export {
  INPUT_KINDS,
  type InputKind,
  type Instant,
  type OnOff,
  type PlanWindow,
  type SwitchEvent,
  type SwitchFact,
  type SwitchInput,
  type SwitchOrder,
} from "./inputs.js";
export {
  CLOCK_DRIFT,
  CLOCK_STEADY_S,
  CLOCK_TOLERANCE_S,
  CONFIRM_DEFAULT_S,
  type Guard,
  offMarginS,
  REPEAT_FIRST_S,
  REPEAT_LONGEST_S,
  REST_DEFAULT_S,
  SILENT_DEFAULT_S,
  STUCK_AFTER_S,
  type SwitchRules,
  switchRules,
} from "./rules.js";
export { type SwitchStanding, standingOf } from "./standing.js";
export { type DurableState, durableOf, PHASES, type Phase, type SwitchState } from "./state.js";
export { type SwitchStep, stepSwitch } from "./step.js";
export { TRANSITIONS, type Transition, transitionsFor } from "./table.js";
