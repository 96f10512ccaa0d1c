export { type DemoOpening, demoOpening, demoSetUp } from "./demo.js";
export { isoOf, type UsedForecast } from "./forecast.js";
export { hashOfText } from "./hash.js";
export { initialFrom } from "./initial.js";
export {
  CHANCE_MOVED,
  isNews,
  PLUG_IN_MOVED,
  type PlanIssue,
  planIssued,
  UNPLUG_MOVED,
} from "./plan-event.js";
export {
  type KnownReading,
  MINUTE,
  type Minute,
  minutesOf,
  OF_BASE,
  type ProbePlan,
  probePlan,
} from "./probes.js";
export { type BaseScenario, nextDeparture, type ScenarioOptions, scenarioOf } from "./scenario.js";
export { heatingSince, type Standing, standingAt } from "./standing.js";
export { scenariosTogether, type Together, type TogetherOptions } from "./together.js";
