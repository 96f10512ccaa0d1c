import { interpolateLinear } from "../numerics/index.js";
import type { BandSeries } from "./ensemble.js";
import { waterInGap } from "./gap.js";
import { type RefreezeReport, type RefreezeResult, refreezeCheck } from "./refreeze.js";
import type { ThawResult } from "./thaw.js";
import { SKIN_LIMIT } from "./thaw-statistics.js";
import type { RollOut, ThawStay } from "./thaw-stay.js";

/** The aircraft at roll-out: middle temperatures [K], and water [kg/m2] in the middle and in the wettest 5 % of the cases. */
export interface LeavingState {
  readonly tempSkin: number;
  readonly tempInside: number;
  readonly tempGap: number;
  readonly snow: MiddleAndHigh;
  readonly film: MiddleAndHigh;
  readonly gapWater: MiddleAndHigh;
}

export interface MiddleAndHigh {
  readonly middle: number;
  readonly high: number;
}

/** What follows the roll-out, for either wetness. */
export interface LeavingReport {
  readonly rollOut: RollOut;
  readonly state: LeavingState;
  readonly middle: RefreezeResult;
  readonly wettest: RefreezeResult;
}

/** The roll-out as wet as the middle case leaves, and as wet as the wettest 5 % do; the remedy when it fails. */
export function leavingReport(
  read: ThawStay,
  rollOut: RollOut,
  { series }: ThawResult,
): LeavingReport | { readonly remedy: string } {
  const state = stateAt(series, rollOut.at, waterInGap(read.request.gap));
  const middle = refreezing(read, rollOut, state, "middle");
  if (middle.result === undefined) return middle;
  const wettest = refreezing(read, rollOut, state, "high");
  if (wettest.result === undefined) return wettest;
  return { rollOut, state, middle: middle.result, wettest: wettest.result };
}

/**
 * The aircraft `at` seconds after it came in; the solver leaves masses a hair below nothing. The highs of a gap's ice and
 * water are added, which is on the wet side, and beside a skin that is not dry a gap counts as holding all that it can.
 */
function stateAt(series: ThawResult["series"], at: number, fullGap: number): LeavingState {
  const value = (band: BandSeries, which: keyof MiddleAndHigh) =>
    interpolateLinear(series.time, band[which], at);
  const both = (of: (which: keyof MiddleAndHigh) => number) => ({
    middle: Math.max(0, of("middle")),
    high: Math.max(0, of("high")),
  });
  const snow = both((w) => value(series.ice, w));
  const film = both((w) => Math.max(value(series.waterUpper, w), value(series.waterLower, w)));
  return {
    tempSkin: value(series.tempUpper, "middle"),
    tempInside: value(series.tempInside, "middle"),
    tempGap: value(series.tempGap, "middle"),
    snow,
    film,
    gapWater: both((w) => {
      const own = value(series.gapIce, w) + value(series.gapWater, w);
      return snow[w] + film[w] > SKIN_LIMIT ? Math.max(own, fullGap) : own;
    }),
  };
}

/** [-] of the stay's members: the roll-out draws fewer things, and costs as much a member for each of its two runs. */
const MEMBERS_SHARE = 0.5;
/** [kg/m3] */
const DENSITY_WATER = 1000;
/** [kg/m2] wettest skin that is looked at. */
const WETTEST_FILM = 2;

function refreezing(
  { request, site }: ThawStay,
  { at: _, ...outdoors }: RollOut,
  { tempSkin, tempInside, tempGap, film, gapWater }: LeavingState,
  wetness: keyof MiddleAndHigh,
): RefreezeReport {
  const { panel, gap, ensemble } = request;
  return refreezeCheck({
    ...outdoors,
    panel,
    gap: { ...gap, fill: Math.min(1, gapWater[wetness] / (DENSITY_WATER * gap.depth)) },
    tempSkin,
    tempInside,
    tempGap,
    film: Math.min(WETTEST_FILM, film[wetness]),
    site,
    ...(ensemble === undefined
      ? {}
      : { ensemble: { ...ensemble, members: Math.ceil(MEMBERS_SHARE * ensemble.members) } }),
  });
}
