import { BEFORE } from "./before.js";
import { calibrate } from "./calibrate.js";
import type { MeasuredRun } from "./measured-run.js";
import type { Population } from "./population.js";
import { type ReadingScore, scored } from "./score.js";

/** Runs that are left out together: of one night or flight, or of one aircraft. */
export type LeftOut = "occasion" | "aircraft";

/**
 * Every reading as it is foretold by a calibration that knows nothing of its occasion, or of its aircraft.
 * @param from where the search for each calibration begins: the one with all runs
 * @param onProgress told the share done [0..1]
 */
export function crossValidated(
  runs: readonly MeasuredRun[],
  leftOut: LeftOut,
  from: Population,
  onProgress: (done: number) => void = () => {},
): ReadingScore[] {
  const groupOf = (run: MeasuredRun) =>
    leftOut === "aircraft" ? run.aircraft.id : (run.occasion ?? run.run);
  const groups = [...new Set(runs.map(groupOf))];
  return groups.flatMap((group, g) => {
    const without = calibrate(
      runs.filter((run) => groupOf(run) !== group),
      BEFORE,
      from,
    );
    onProgress((g + 1) / groups.length);
    return runs.filter((run) => groupOf(run) === group).flatMap((run) => scored(run, without));
  });
}
