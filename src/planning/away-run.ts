import type { Caution, PartName } from "../aircraft/index.js";
import { sourced } from "../findings/index.js";
import type { EnsembleRun } from "../simulation/index.js";
import { GROUND_RUN_PARTS, groundRun, START_CAUTIONS } from "../starting/index.js";

/** The engine run on the ground to keep it warm. Times are [s] from now. */
export interface EngineRun {
  readonly at: number;
  readonly duration: number;
}

/** [1] doubt of a ground run over what it warms: no two idle alike; project judgement. */
export const GROUND_RUN_DOUBT = 0.2;

/** [K] outside air that a ground run is described for. */
const COLDEST = 180;
const HOTTEST = 350;

/**
 * Every case after a run: the parts it warms go on from how they were at its start, in each case's own air; the others
 * are as they cooled meanwhile with nothing on the cowl.
 * @param before [K] parts x members when the run begins
 * @param cooled [K] the same when it ends, had the engine not run
 */
export function warmedByRun(
  { network, members, forcing, draws }: EnsembleRun,
  { at, duration }: EngineRun,
  before: Float64Array,
  cooled: Float64Array,
): Float64Array {
  const rows = new Map<PartName, number>();
  network.parts.forEach(({ name }, row) => {
    if (GROUND_RUN_PARTS.includes(name as PartName)) rows.set(name as PartName, row);
  });
  const after = cooled.slice();
  for (let m = 0; m < members; m++) {
    const temps = new Map([...rows].map(([part, row]) => [part, before[row * members + m]]));
    const air = Math.min(HOTTEST, Math.max(COLDEST, forcing.tempAirAt(at, m)));
    const share = Math.max(0, 1 + GROUND_RUN_DOUBT * draws.initialOffset[m]);
    const warmed = groundRun(temps, air, duration);
    for (const [part, row] of rows) {
      const was = before[row * members + m];
      after[row * members + m] = was + share * ((warmed.get(part) ?? was) - was);
    }
  }
  return after;
}

/** What belongs to every engine that is run to keep it warm. */
export const RUN_CAUTIONS: readonly Caution[] = [
  sourced("running-engine", {}, "common practice, no published source"),
  START_CAUTIONS.groundRun,
  sourced("run-if-sure", {}, "common practice, no published source"),
];
