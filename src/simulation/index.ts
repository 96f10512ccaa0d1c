export {
  centralDraws,
  type DrawCorrection,
  type Draws,
  drawEnsemble,
  type MultiplierPosterior,
  multipliersOf,
  PRIOR,
  spread,
} from "./draws.js";
export { createForcing, type Forcing } from "./forcing.js";
export { USUAL_MEMBERS } from "./members.js";
export { configurationAt, ENSEMBLE_TOLERANCE, type EnsembleRun, prepareRun } from "./run.js";
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
export { joined, partTemps, sampleAt, simulate, type Trajectory, thinned, trajectory } from "./trajectory.js";
