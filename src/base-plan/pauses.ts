import type { Block } from "./candidate.js";
import { type Answer, afterBlocks, type Ground } from "./response.js";

// Heaters with thermostats and air that rises by itself do not add up. A pause between heating and departure, or between
// two blocks, is therefore played a few times for each kind of course, and the difference from what adds up is carried
// over to other pauses of that kind in proportion: without a pause there is none.

/** [K] at departure after blocks, with pauses corrected. */
export type AfterPauses = (blocks: readonly Block[]) => Float64Array;

/** [s] pauses that are played, for heat that stops early and for heat in two blocks. */
const EARLY_PAUSES = [3600, 8100, 16_200];
const PAUSES_BETWEEN = [7200];

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
    const needed = answer.shortOf(wanted) ?? answer.leadMost / 2;
    return (topUp === 0 ? EARLY_PAUSES : PAUSES_BETWEEN).flatMap((pause) => {
      const lead = answer.leads().find((l) => l >= 1.3 * needed + pause + topUp) ?? answer.leadMost;
      const to = end - topUp - pause;
      if (end - lead >= to) return [];
      const blocks = [{ from: end - lead, to }, ...(topUp === 0 ? [] : [{ from: end - topUp, to: end }])];
      const added = afterBlocks(ground, answer, blocks);
      return [{ pause, temps: ground.play(blocks).map((t, i) => t - added[i]) }];
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
