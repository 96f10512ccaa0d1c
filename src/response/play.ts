import {
  ENSEMBLE_TOLERANCE,
  type EnsembleRun,
  type Timeline,
  type Trajectory,
  trajectory,
} from "../simulation/index.js";

/** An ensemble could not be integrated; the message says what to do. */
export class NumericalFailure extends Error {
  override readonly name = "NumericalFailure";
}

export interface PlayRequest {
  readonly state: Float64Array;
  readonly timeline: Timeline;
  readonly sampleTimes: ArrayLike<number>;
  /** [K] local error allowed per step. */
  readonly tolerance?: number;
}

/** Runs an ensemble from the first to the last sample time; throws NumericalFailure where it does not get there. */
export function play(run: EnsembleRun, request: PlayRequest): Trajectory {
  const course = trajectory(run, { tolerance: ENSEMBLE_TOLERANCE, ...request });
  if (course.status !== "completed") throw new NumericalFailure(`${course.status}: ${course.remedy}`);
  return course;
}

/** The state [K] at `to` of what stands as `state` at `from` [s]. */
export function playOn(
  run: EnsembleRun,
  state: Float64Array,
  [from, to]: readonly [number, number],
  timeline: Timeline,
  tolerance = ENSEMBLE_TOLERANCE,
): Float64Array {
  if (!(to > from)) return state;
  const result = run.advance({ state: Float64Array.from(state), from, to, timeline, tolerance });
  if (result.status !== "completed") throw new NumericalFailure(`${result.status}: ${result.remedy}`);
  return result.state;
}
