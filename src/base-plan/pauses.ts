import type { Block } from "./candidate.js";
import { type Answer, afterBlocks, type Ground } from "./response.js";

// Heaters with thermostats and air that rises by itself do not add up. A pause between heating and departure, or between
// two blocks, is therefore played a few times for each kind of course, and the difference from what adds up is carried
// over to other pauses of that kind in proportion: without a pause there is none.

/** [K] at departure after blocks, with pauses corrected. */
export type AfterPauses = (blocks: readonly Block[]) => Float64Array;

/** [s] before the end of heating: where heat stops in the courses that are played. They go on from the answer's own states. */
export const STOPS = [3600, 8100, 16_200];
/** [s] a pause between two blocks is played where it is nearest to this. */
const PAUSE_BETWEEN = 7200;

interface Difference {
  readonly pause: number;
  /** [K] really less added up. */
  readonly temps: Float64Array;
}

/** @param wanted chance whose lead the courses played are near to */
export function afterPausesOf(ground: Ground, heat: () => Answer, wanted: number): AfterPauses {
  const known = new Map<number, readonly Difference[]>();

  function differences(topUp: number): readonly Difference[] {
    const found = known.get(topUp) ?? played(topUp);
    known.set(topUp, found);
    return found;
  }

  function played(topUp: number): Difference[] {
    const answer = heat();
    const end = answer.until;
    const needed =
      answer.shortOf("warm-through", wanted) ?? answer.shortOf("least", wanted) ?? answer.leadMost / 2;
    return stopsFor(topUp).flatMap((stop) => {
      const lead = answer.leads().find((l) => l >= 1.3 * needed + stop) ?? answer.leadMost;
      const state = answer.stateAt(lead, stop);
      if (state === undefined) return [];
      const to = end - stop;
      const blocks = [{ from: end - lead, to }, ...(topUp === 0 ? [] : [{ from: end - topUp, to: end }])];
      const added = afterBlocks(ground, answer, blocks);
      return [{ pause: stop - topUp, temps: ground.goOn(blocks, to, state).map((t, i) => t - added[i]) }];
    });
  }

  return (blocks) => {
    const answer = heat();
    const temps = afterBlocks(ground, answer, blocks);
    const last = blocks.at(-1);
    if (last === undefined) return temps;
    const topUp = blocks.length > 1 ? last.to - last.from : 0;
    const pause = blocks.length > 1 ? last.from - blocks[0].to : answer.until - last.to;
    if (pause <= 0) return temps;
    const points = differences(topUp);
    const i = points.findIndex((p) => p.pause >= pause);
    const after = points[i < 0 ? points.length - 1 : i];
    if (after === undefined) return temps;
    const before = i < 0 ? undefined : points[i - 1];
    const start = before?.pause ?? 0;
    const weight = Math.min(1, (pause - start) / (after.pause - start));
    for (let k = 0; k < temps.length; k++) {
      temps[k] += weight * after.temps[k] + (1 - weight) * (before?.temps[k] ?? 0);
    }
    return temps;
  };
}

function stopsFor(topUp: number): number[] {
  if (topUp === 0) return STOPS;
  const off = (stop: number) => Math.abs(stop - topUp - PAUSE_BETWEEN);
  return [STOPS.reduce((best, stop) => (off(stop) < off(best) ? stop : best))];
}
