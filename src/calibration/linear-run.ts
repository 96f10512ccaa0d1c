import type { MeasuredRun } from "./measured-run.js";
import { play } from "./play.js";
import { POPULATION, spreadOfRun, UNKNOWNS } from "./unknowns.js";

/** A run's readings near one point of the unknowns, as straight lines. */
export interface LinearRun {
  readonly run: MeasuredRun;
  /** Population values at which it was made. */
  readonly at: Float64Array;
  /** [°C] said of each reading there, nobody's errors at their means. */
  readonly said: Float64Array;
  /** [K per unknown] readings x UNKNOWNS. */
  readonly slopes: readonly Float64Array[];
}

/** Slopes are taken over this many standard deviations either way: what they say is to hold over the whole spread. */
const REACH = 1;

/** @param sds of the population's values, and of what nobody recorded: spans over which the lines are to hold. */
export function linearRun(run: MeasuredRun, at: Float64Array, sds: ArrayLike<number>): LinearRun {
  const { mean, sd } = spreadOfRun(run);
  const centre = Float64Array.of(...at, ...mean);
  const steps = UNKNOWNS.map((_, j) => REACH * (j < POPULATION.length ? sds[j] : sd[j - POPULATION.length]));
  const moved = (j: number, by: number) => centre.map((value, i) => (i === j ? value + by : value));
  const chosen = UNKNOWNS.map((_, j) => j).filter((j) => steps[j] > 0);
  const results = play(run, [centre, ...chosen.flatMap((j) => [moved(j, steps[j]), moved(j, -steps[j])])]);
  return {
    run,
    at,
    said: Float64Array.from(results, (members) => members[0]),
    slopes: results.map((members) => {
      const slopes = new Float64Array(UNKNOWNS.length);
      chosen.forEach((j, c) => {
        slopes[j] = (members[1 + 2 * c] - members[2 + 2 * c]) / (2 * steps[j]);
      });
      return slopes;
    }),
  };
}
