export {
  type Block,
  createDepartureResponse,
  type DepartureResponse,
} from "./departure-response.js";
export { PLUG_IN_STEP, type PlugInGrid, plugInGrid, stepAt, stepFrom, timeOf } from "./grid.js";
export { createHeatResponse, type HeatResponse, type ReadResponse, type Soaked } from "./heat-response.js";
export { createLeadCurve } from "./lead-curve.js";
export { NumericalFailure, play, playOn } from "./play.js";
export { type ByAim, chancesOf, overheats, readyMembers } from "./ready.js";
export {
  type FoundPlugIn,
  latestPlugIn,
  narrowPlugIn,
  type PlugInChances,
  refinePlugIn,
  SCOUT_RESOLUTION,
  type SearchRange,
  type SearchResult,
  settlePlugIn,
} from "./search.js";
export { finished, type Steps } from "./steps.js";
