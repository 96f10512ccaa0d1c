import type { Block } from "./candidate.js";
import { stepAt, stepFrom, timeOf } from "./limits.js";
import { afterPausesOf } from "./pauses.js";
import { enoughFor } from "./response.js";
import {
  type Caution,
  type Outcome,
  type Scope,
  type Shape,
  type ShapedCandidate,
  SPARE_STARTS,
  type Way,
} from "./way.js";

/** [steps] between the ends of heating that stops early. */
const END_STRIDE = 2;
/** [s] longest that it is looked at to stop early. */
const EARLY_MOST = 8 * 3600;
/** [steps] between the starts that are looked at first. */
const START_STRIDE = 4;
/** [steps] second blocks that are looked at. */
const TOP_UPS = [3, 9];
const PAUSE_STRIDE = 3;
/** [s] of partial heat, for when the whole cannot be had. */
const PARTIAL_LENGTHS = [3600, 7200, 14_400];
const PARTIAL_ENDS = [0, 3600, 7200, 14_400, 21_600];
/** Courses in which an aircraft is heated where it stands. */
export function coursesOf(way: Way): (scope: Scope, caution: Caution) => ShapedCandidate[] {
  const { plan, ground, inside, isOn, byHand, burns, longest, end, attended, grid } = way;
  const { wish } = plan;
  const known = new Map<string, Outcome>();
  const afterPauses = afterPausesOf(ground, way.heat, wish.chance);
  // With nobody in the way the latest start is the best, and it is the driest too: wet hours need not be known.
  let weighsWet = false;

  function predicted(blocks: readonly Block[], shape: Shape, caution = 0): ShapedCandidate {
    const key = `${weighsWet} ${blocks.map((b) => `${b.from}-${b.to}`).join(" ")}`;
    const outcome = known.get(key) ?? outcomeOf(blocks);
    known.set(key, outcome);
    return way.candidate({ blocks }, shape, outcome, caution);
  }

  function outcomeOf(blocks: readonly Block[]): Outcome {
    const answer = way.heat();
    return {
      chance: ground.chance(afterPauses(blocks)),
      energy: blocks.reduce((s, b) => s + answer.energy(end - b.from) - answer.energy(end - b.to), 0),
      wet: weighsWet && blocks.length > 0 ? answer.wet(end - blocks[0].from) : 0,
      tooHot: blocks.some((b) => b.to - b.from > answer.coolLead()),
    };
  }

  /** Allowed lengths of one block, and as far back as was played. */
  function mayRun(from: number, to: number): boolean {
    return to > from && to - from <= longest && from >= end - way.heat().leadMost;
  }

  /**
   * The latest start with `chance`, looking back from step `k` in strides, and then forward within the last of them: a
   * longer heating is the surer one. Undefined when there is none.
   */
  function latestStart(
    k: number,
    blocksFrom: (from: number) => readonly Block[],
    shape: Shape,
    caution: number,
  ): { readonly step: number; readonly found: ShapedCandidate } | undefined {
    const at = (step: number): ShapedCandidate | undefined => {
      const blocks = blocksFrom(timeOf(grid, step));
      return step >= 0 && mayRun(blocks[0].from, blocks[0].to)
        ? predicted(blocks, shape, caution)
        : undefined;
    };
    let missed = k + 1;
    let step = k;
    let found = at(step);
    while (found?.missed === true) {
      missed = step;
      step -= START_STRIDE;
      while (step < missed - 1 && at(step) === undefined) step++;
      found = at(step);
    }
    if (found === undefined) return undefined;
    while (step + 1 < missed) {
      const later = at(step + 1);
      if (later === undefined || later.missed) break;
      step++;
      found = later;
    }
    return { step, found };
  }

  /** The latest with the wanted chance and, by hand, the latest before it when somebody is there. */
  function withSpares(
    { step, found }: { readonly step: number; readonly found: ShapedCandidate },
    blocksFrom: (from: number) => readonly Block[],
    spares: number,
    caution: number,
  ): ShapedCandidate[] {
    const out = [found];
    let left = attended(step) ? spares : spares + 1;
    for (let k = step - 1; k >= 0 && left > 0; k--) {
      const blocks = blocksFrom(timeOf(grid, k));
      if (!mayRun(blocks[0].from, blocks[0].to)) break;
      if (byHand && !attended(k)) continue;
      out.push(predicted(blocks, found.shape, caution));
      left--;
    }
    return out;
  }

  return ({ contested }, caution) => {
    // Heat that stops early has to begin earlier: the answer must reach further back.
    weighsWet ||= contested;
    if (contested && plan.heaters.length > 0 && !(inside && burns))
      way.heat().reach(enoughFor(wish.chance, 2, 10_800));
    const cautionFor = (shape: Shape) => caution.get(shape) ?? 0;
    const out: ShapedCandidate[] = [];
    if (!(byHand && isOn)) {
      const chance = ground.chance(ground.cold);
      out.push(
        way.candidate(
          { blocks: [] },
          "none",
          { chance, energy: 0, wet: 0, tooHot: false },
          cautionFor("none"),
        ),
      );
    }
    if (plan.heaters.length === 0 || end <= 0 || (inside && burns)) return out;
    const last = stepFrom(grid, end) - 1;
    const fromOn = (blocksFrom: (from: number) => readonly Block[], shape: Shape) => {
      // What is plugged in by hand at the start stays on from the start.
      if (!(byHand && isOn)) return undefined;
      return predicted(blocksFrom(0), shape, cautionFor(shape));
    };
    const through = (from: number) => [{ from, to: end }];
    const running = fromOn(through, "through");
    if (running !== undefined) out.push(running);
    else {
      const wanted = Math.min(1, wish.chance + cautionFor("through"));
      const short = way.heat().shortOf(wanted);
      const near = short === undefined ? undefined : Math.min(last, stepAt(grid, end - short));
      const latest =
        near === undefined ? undefined : latestStart(near, through, "through", cautionFor("through"));
      if (latest !== undefined) {
        out.push(...withSpares(latest, through, byHand ? SPARE_STARTS : 1, cautionFor("through")));
      } else {
        const first = stepFrom(grid, Math.max(0, end - way.heat().leadMost, end - longest));
        for (let k = first; k < last; k += Math.max(1, Math.ceil((last - first) / 8))) {
          out.push(predicted(through(timeOf(grid, k)), "through", cautionFor("through")));
        }
      }
    }
    let from = last;
    for (let k = stepAt(grid, end) - 1; k >= 1 && end - timeOf(grid, k) <= EARLY_MOST; k -= 1) {
      if (!contested && !(byHand && isOn)) break;
      const isEnd = byHand ? attended(k) && (k % END_STRIDE === 0 || !attended(k + 1)) : k % END_STRIDE === 0;
      if (!isEnd) continue;
      const to = timeOf(grid, k);
      const early = (a: number) => [{ from: a, to }];
      const kept = fromOn(early, "early");
      if (kept !== undefined) {
        out.push(kept);
        continue;
      }
      const latest = latestStart(Math.min(from, k - 1), early, "early", cautionFor("early"));
      if (latest === undefined) break;
      from = latest.step;
      out.push(...withSpares(latest, early, byHand ? 1 : 0, cautionFor("early")));
    }
    if (!contested) return out;
    if (!(byHand && isOn)) {
      for (const length of TOP_UPS) {
        const again = stepFrom(grid, end) - length;
        if (byHand && !attended(again)) continue;
        const topUp = { from: timeOf(grid, again), to: end };
        let start = again;
        for (let k = again - PAUSE_STRIDE; k >= 1 && end - timeOf(grid, k) <= EARLY_MOST; k -= PAUSE_STRIDE) {
          if (byHand && !attended(k)) continue;
          const to = timeOf(grid, k);
          const twice = (a: number) => [{ from: a, to }, topUp];
          const latest = latestStart(Math.min(start, k - 1), twice, "twice", cautionFor("twice"));
          if (latest === undefined) break;
          start = latest.step;
          out.push(...withSpares(latest, twice, byHand ? 1 : 0, cautionFor("twice")));
        }
      }
      for (const before of PARTIAL_ENDS) {
        for (const length of PARTIAL_LENGTHS) {
          const to = before === 0 ? end : timeOf(grid, stepAt(grid, end - before));
          const a = timeOf(grid, Math.max(0, stepAt(grid, to - length)));
          if (!mayRun(a, to)) continue;
          out.push(predicted([{ from: a, to }], before === 0 ? "through" : "early", cautionFor("early")));
        }
      }
    }
    return out;
  };
}
