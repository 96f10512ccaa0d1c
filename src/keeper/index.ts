export { type EmbeddedBroker, startBroker } from "./broker.js";
export { createPlanner, type Planner, type UpdateJob, type UpdateResult } from "./planner.js";
