import { linearRun } from "./linear-run.js";
import type { MeasuredRun } from "./measured-run.js";
import { type Before, fitPopulation, type Population } from "./population.js";

const MOST_ROUNDS = 8;
/** In standard deviations held before. */
const CLOSE_ENOUGH = 0.02;

export function calibrate(runs: readonly MeasuredRun[], before: Before, from?: Population): Population {
  let found: Population | undefined = from;
  for (let round = 1; ; round++) {
    const at = found?.mean ?? Float64Array.from(before.mean);
    const sds = found?.sd ?? before.sd;
    const next = fitPopulation(
      runs.map((run) => linearRun(run, at, sds)),
      before,
    );
    const moved = Math.max(...next.mean.map((m, p) => Math.abs(m - at[p]) / before.sd[p]));
    found = next;
    if (moved < CLOSE_ENOUGH || round === MOST_ROUNDS) return found;
  }
}
