import { KELVIN_OF_ZERO_CELSIUS } from "../units/index.js";
import { timeFirstReached } from "./crossing.js";
import { type TimeBand, timeBandOf } from "./ensemble.js";
import { frostVerdict } from "./frost-statistics.js";
import { GAP_ROW } from "./gap-model.js";
import type { SmallSolution } from "./integrate.js";
import { PANEL_ROW } from "./panel-rows.js";
import type { RefreezeChance } from "./refreeze.js";
import type { RefreezeRun, RefreezeTimes } from "./refreeze-run.js";
import { GAP_LIMIT, SKIN_LIMIT } from "./thaw-statistics.js";

export interface RefreezeStatistics {
  readonly skinFreezing: TimeBand;
  readonly gapFreezing: TimeBand;
  readonly gapFreezingInClimb: TimeBand;
  readonly coolIndoors: TimeBand | undefined;
  readonly film: RefreezeChance;
  readonly gaps: RefreezeChance;
}

/** The value of a quantity in a state that starts at `from` in `y`. */
type Value = (y: Float64Array, from: number) => number;

export function refreezeStatistics(times: RefreezeTimes, runs: readonly RefreezeRun[]): RefreezeStatistics {
  const { rows, gap } = runs[0].model;
  const p = PANEL_ROW;
  const upper: Value = (y, from) => y[from + p.tempUpper];
  const fitting: Value = (y, from) => y[from + gap + GAP_ROW.temp];
  const ice: Value = (y, from) => y[from + p.iceUpper] + y[from + p.iceLower];
  const gapIce: Value = (y, from) => y[from + gap + GAP_ROW.ice];

  const outdoors = runs.map((run) => run.outdoors);
  const climb = runs.flatMap((run) => run.climb ?? []);
  const indoors = runs.flatMap((run) => run.indoors ?? []);
  const column = ({ samples }: SmallSolution, count: number, value: Value) =>
    Float64Array.from({ length: count }, (_, s) => value(samples, s * rows));
  const freezing = (solutions: readonly SmallSolution[], time: Float64Array, temp: Value) =>
    timeBandOf(
      Float64Array.from(solutions, (solution) => {
        const frost = column(solution, time.length, temp).map((value) => KELVIN_OF_ZERO_CELSIUS - value);
        return timeFirstReached(time, frost, 0);
      }),
    );
  const share = (solutions: readonly SmallSolution[], sample: number, value: Value, limit: number) =>
    solutions.filter(({ samples }) => value(samples, sample * rows) >= limit).length / solutions.length;
  const chance = (value: Value, limit: number): RefreezeChance => {
    const atTakeOff = share(outdoors, times.takeOff, value, limit);
    const inClimb = climb.length === 0 ? atTakeOff : share(climb, times.climb.length - 1, value, limit);
    return { verdict: frostVerdict(Math.max(atTakeOff, inClimb)), atTakeOff, inClimb };
  };
  return {
    skinFreezing: freezing(outdoors, times.outdoors, upper),
    gapFreezing: freezing(outdoors, times.outdoors, fitting),
    gapFreezingInClimb: freezing(climb, times.climb, fitting),
    coolIndoors: indoors.length === 0 ? undefined : freezing(indoors, times.outdoors, upper),
    film: chance(ice, SKIN_LIMIT),
    gaps: chance(gapIce, GAP_LIMIT),
  };
}
