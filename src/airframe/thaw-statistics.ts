import { saturationPressureOverLiquid } from "../properties/index.js";
import { timeLastAbove } from "./crossing.js";
import { bandOf, bandSeries, timeBandOf } from "./ensemble.js";
import { GAP_ROW } from "./gap-model.js";
import { HANGAR_ROW } from "./hangar-model.js";
import { PANEL_ROW } from "./panel-rows.js";
import type { ThawResult } from "./thaw.js";
import type { ThawModel } from "./thaw-model.js";

/** [kg/m2] below which a skin counts as clear, and as dry: 5 µm of ice or water. Project judgement. */
export const SKIN_LIMIT = 0.005;
/** [kg/m2] of mouth below which a gap counts as dry: 20 µm of water. Project judgement. */
export const GAP_LIMIT = 0.02;

/** One member's model and its samples (sample s, row i at `[s * rows + i]`). */
export interface ThawRun {
  readonly model: ThawModel;
  readonly samples: Float64Array;
}

/** [s] from roll-in, one for each case; Infinity where it does not come by the end. */
export interface ThawTimes {
  readonly skinClear: Float64Array;
  readonly skinDry: Float64Array;
  readonly gapsThawed: Float64Array;
  readonly gapsDry: Float64Array;
}

/**
 * Times as they may be told: melt water runs into a gap for as long as the skin around it is not clear, and the film for
 * as long as that is wet, so a gap is never thawed before the skin is clear, nor dry before the skin is dry.
 */
export function heldBySkin(own: ThawTimes): ThawTimes {
  const later = (a: Float64Array, b: Float64Array) => a.map((time, m) => Math.max(time, b[m]));
  const skinDry = later(own.skinDry, own.skinClear);
  const gapsThawed = later(own.gapsThawed, own.skinClear);
  return {
    skinClear: own.skinClear,
    skinDry,
    gapsThawed,
    gapsDry: later(later(own.gapsDry, gapsThawed), skinDry),
  };
}

/** What is dry last: snow that does not clear by the end in the slowest 5 %, else the skin or the gaps, whichever more often. */
function weakestOf(own: ThawTimes, held: ThawTimes): ThawResult["weakest"] {
  if (timeBandOf(held.skinClear).high === undefined) return "snow";
  const byGaps = own.gapsDry.filter((time, m) => time > held.skinDry[m]).length;
  return 2 * byGaps >= own.gapsDry.length ? "gaps" : "skin";
}

type Statistics = Omit<ThawResult, "melt" | "members" | "cautions" | "assumptions">;

export function thawStatistics(time: Float64Array, runs: readonly ThawRun[]): Statistics {
  const count = time.length;
  const { initial, gap, hangar } = runs[0].model;
  const rows = initial.length;
  const states = runs.map(({ samples }) => samples);
  const sum =
    (...of: readonly number[]) =>
    (y: Float64Array, s: number) =>
      of.reduce((total, row) => total + y[s * rows + row], 0);
  const row = (index: number) => bandSeries(states, count, sum(index));
  const whenBelow = (limit: number, ...of: readonly number[]) =>
    Float64Array.from(states, (y) =>
      timeLastAbove(
        time,
        column(count, (s) => sum(...of)(y, s)),
        limit,
      ),
    );
  const atEnd = (index: number) => bandOf(Float64Array.from(states, (y) => y[(count - 1) * rows + index]));

  const humidity = runs.map(({ model, samples }) =>
    column(count, (s) => {
      const y = samples.subarray(s * rows, (s + 1) * rows);
      return model.pressureVapour(y) / saturationPressureOverLiquid(y[hangar + HANGAR_ROW.tempAir]);
    }),
  );
  const p = PANEL_ROW;
  const dryUpper = whenBelow(SKIN_LIMIT, p.iceUpper, p.waterUpper);
  const dryLower = whenBelow(SKIN_LIMIT, p.iceLower, p.waterLower);
  const own: ThawTimes = {
    skinClear: whenBelow(SKIN_LIMIT, p.iceUpper, p.iceLower),
    skinDry: dryUpper.map((t, m) => Math.max(t, dryLower[m])),
    gapsThawed: whenBelow(GAP_LIMIT, gap + GAP_ROW.ice),
    gapsDry: whenBelow(GAP_LIMIT, gap + GAP_ROW.ice, gap + GAP_ROW.water),
  };
  const cases = heldBySkin(own);
  return {
    skinClear: timeBandOf(cases.skinClear),
    skinDry: timeBandOf(cases.skinDry),
    gapsThawed: timeBandOf(cases.gapsThawed),
    gapsDry: timeBandOf(cases.gapsDry),
    cases,
    weakest: weakestOf(own, cases),
    heaterEnergy: atEnd(hangar + HANGAR_ROW.heat),
    mostHumid: bandOf(Float64Array.from(humidity, (values) => Math.max(...values))),
    ranOff: atEnd(p.ranOff),
    condensed: atEnd(hangar + HANGAR_ROW.condensed),
    series: {
      time,
      tempHangar: row(hangar + HANGAR_ROW.tempAir),
      tempUpper: row(p.tempUpper),
      tempInside: row(p.tempInside),
      tempGap: row(gap + GAP_ROW.temp),
      relativeHumidity: bandSeries(humidity, count, (values, s) => values[s]),
      ice: bandSeries(states, count, sum(p.iceUpper, p.iceLower)),
      waterUpper: row(p.waterUpper),
      waterLower: row(p.waterLower),
      gapIce: row(gap + GAP_ROW.ice),
      gapWater: row(gap + GAP_ROW.water),
      puddle: row(hangar + HANGAR_ROW.puddle),
    },
  };
}

function column(count: number, value: (sample: number) => number): Float64Array {
  return Float64Array.from({ length: count }, (_, s) => value(s));
}
