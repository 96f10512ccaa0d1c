export {
  centralDraws,
  type DrawRequest,
  type Draws,
  drawEnsemble,
  type MultiplierPosterior,
  multipliersOf,
  spread,
} from "./draws.js";
export { createForcing, type Forcing } from "./forcing.js";
export {
  type AdvanceRequest,
  configurationAt,
  ENSEMBLE_TOLERANCE,
  type EnsembleRun,
  prepareRun,
  TRAJECTORY_TOLERANCE,
} from "./run.js";
export {
  applyChange,
  type Change,
  type InitialState,
  type Scenario,
  type Site,
  type TimedChange,
  type Timeline,
  timelineOf,
} from "./scenario.js";
export { firstMembers, someMembers } from "./subset.js";
export {
  joined,
  partRow,
  partTemps,
  sampleAt,
  simulate,
  type Trajectory,
  thinned,
  trajectory,
} from "./trajectory.js";
