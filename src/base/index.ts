export { type DemoOpening, demoOpening, demoSetUp } from "./demo.js";
export { isoOf, readForecasts } from "./forecast.js";
export { hashOfText } from "./hash.js";
export { isNews, planIssued } from "./plan-event.js";
export { type KnownReading, MINUTE, minutesOf, OF_BASE, type ProbePlan, probePlan } from "./probes.js";
export {
  type BaseScenario,
  hoursAhead,
  nextDeparture,
  type ScenarioOptions,
  scenarioOf,
} from "./scenario.js";
export { heatingSince, standingAt } from "./standing.js";
export { scenariosTogether } from "./together.js";
