// The one place where the web app takes a logbook's meaning from. Used in the planning worker only.

export { readForecasts } from "../../base/forecast.js";
export { demoOpening, heatingSince, scenarioOf, scenariosTogether } from "../../base/index.js";
export { estimateNow, type SavedEstimate } from "../../base-pipeline.js";
export { deriveBase } from "../../logbook/index.js";
