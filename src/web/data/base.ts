// The one place where the web app takes a logbook's meaning from. Used in the planning worker only.

export {
  demoOpening,
  heatingSince,
  hoursAhead,
  readForecasts,
  scenarioOf,
  scenariosTogether,
} from "../../base/index.js";
export { deriveBase } from "../../logbook/index.js";
export { estimateNow } from "../../questions/index.js";
