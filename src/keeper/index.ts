export { type EmbeddedBroker, startBroker } from "./broker.js";
export { type Keeper, type KeeperOptions, startKeeper } from "./keeper.js";
export { createPlanner, type Planner, type UpdateJob, type UpdateResult } from "./planner.js";
