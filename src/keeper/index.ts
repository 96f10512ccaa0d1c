export { type Keeper, startKeeper } from "./keeper.js";
export { createPlanner } from "./planner.js";
