import { KELVIN_OF_ZERO_CELSIUS } from "../units/index.js";
import { timeFirstReached } from "./crossing.js";
import { type BandSeries, bandSeries, type TimeBand, timeBandOf } from "./ensemble.js";
import { frostVerdict } from "./frost-statistics.js";
import { GAP_ROW } from "./gap-model.js";
import type { SmallSolution } from "./integrate.js";
import { PANEL_ROW } from "./panel-rows.js";
import type { RefreezeChance } from "./refreeze.js";
import type { RefreezeRun, RefreezeTimes } from "./refreeze-run.js";
import { GAP_LIMIT, SKIN_LIMIT } from "./thaw-statistics.js";

/** One stretch over time, [K] and [kg/m2]. */
export interface StretchSeries {
  /** [s] from the start of the stretch */
  readonly time: Float64Array;
  readonly tempUpper: BandSeries;
  readonly tempInside: BandSeries;
  readonly tempGap: BandSeries;
  /** On both faces together. */
  readonly ice: BandSeries;
  readonly water: BandSeries;
  readonly gapIce: BandSeries;
  readonly gapWater: BandSeries;
}

export interface RefreezeSeries {
  readonly outdoors: StretchSeries;
  readonly climb: StretchSeries | undefined;
}

export interface RefreezeStatistics {
  readonly skinFreezing: TimeBand;
  readonly gapFreezing: TimeBand;
  readonly gapFreezingInClimb: TimeBand;
  readonly coolIndoors: TimeBand | undefined;
  readonly film: RefreezeChance;
  readonly gaps: RefreezeChance;
  readonly series: RefreezeSeries;
}

/** The value of a quantity in a state that starts at `from` in `y`. */
type Value = (y: Float64Array, from: number) => number;

export function refreezeStatistics(times: RefreezeTimes, runs: readonly RefreezeRun[]): RefreezeStatistics {
  const { rows, gap } = runs[0].model;
  const p = PANEL_ROW;
  const upper: Value = (y, from) => y[from + p.tempUpper];
  const fitting: Value = (y, from) => y[from + gap + GAP_ROW.temp];
  const ice: Value = (y, from) => y[from + p.iceUpper] + y[from + p.iceLower];
  const water: Value = (y, from) => y[from + p.waterUpper] + y[from + p.waterLower];
  const gapIce: Value = (y, from) => y[from + gap + GAP_ROW.ice];
  const gapWater: Value = (y, from) => y[from + gap + GAP_ROW.water];

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
  const stretch = (solutions: readonly SmallSolution[], time: Float64Array): StretchSeries => {
    const states = solutions.map(({ samples }) => samples);
    const series = (value: Value) => bandSeries(states, time.length, (y, s) => value(y, s * rows));
    return {
      time,
      tempUpper: series(upper),
      tempInside: series((y, from) => y[from + p.tempInside]),
      tempGap: series(fitting),
      ice: series(ice),
      water: series(water),
      gapIce: series(gapIce),
      gapWater: series(gapWater),
    };
  };
  return {
    skinFreezing: freezing(outdoors, times.outdoors, upper),
    gapFreezing: freezing(outdoors, times.outdoors, fitting),
    gapFreezingInClimb: freezing(climb, times.climb, fitting),
    coolIndoors: indoors.length === 0 ? undefined : freezing(indoors, times.outdoors, upper),
    film: chance(ice, SKIN_LIMIT),
    gaps: chance(gapIce, GAP_LIMIT),
    series: {
      outdoors: stretch(outdoors, times.outdoors),
      climb: climb.length === 0 ? undefined : stretch(climb, times.climb),
    },
  };
}
