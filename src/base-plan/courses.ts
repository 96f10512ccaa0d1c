import type { Aim } from "../readiness/index.js";
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
/** [steps] within which the heaters' shortest time on is looked for. */
const SHORTEST_MOST = 24;
/** [steps] second blocks that are looked at. */
const TOP_UPS = [3, 9];
/** [s] longest that it is heated only to be warm through: an engine that is not by then gains hardly more. Project judgement. */
const WARM_MOST = 12 * 3600;
/** [steps] the first of two blocks, at least: nobody walks out for less. */
const FIRST_LEAST = 3;
const PAUSE_STRIDE = 3;
/** [s] of partial heat, for when the whole cannot be had. */
const PARTIAL_LENGTHS = [3600, 7200, 14_400];
const PARTIAL_ENDS = [0, 3600, 7200, 14_400, 21_600];
/** Courses in which an aircraft is heated where it stands. */
export function coursesOf(way: Way): (scope: Scope, aim: Aim, caution: Caution) => ShapedCandidate[] {
  const { plan, ground, inside, isOn, byHand, rules, end, attended, grid } = way;
  const { wish } = plan;
  const cannot = plan.heaters.length === 0 || end <= 0 || (inside && rules.outdoors);
  // What is plugged in by hand at the start is on from the start.
  const isFixed = byHand && isOn;
  const known = new Map<string, Outcome>();
  const afterPauses = afterPausesOf(ground, way.heat, wish.chance);
  // With nobody in the way the latest start is the best, and it is the driest too: wet hours need not be known.
  let weighsWet = false;

  function outcomeOf(blocks: readonly Block[]): Outcome {
    const key = `${weighsWet} ${blocks.map((b) => `${b.from}-${b.to}`).join(" ")}`;
    const read = known.get(key);
    if (read !== undefined) return read;
    const answer = way.heat();
    const outcome = {
      chances: ground.chances(afterPauses(blocks)),
      energy: blocks.reduce((s, b) => s + answer.energy(end - b.from) - answer.energy(end - b.to), 0),
      wet: weighsWet && blocks.length > 0 ? answer.wet(end - blocks[0].from) : 0,
      tooHot: blocks.some((b) => b.to - b.from > answer.coolLead()),
    };
    known.set(key, outcome);
    return outcome;
  }

  /** Allowed by its heaters, and as far back as was played. */
  function mayRun(blocks: readonly Block[]): boolean {
    return (
      blocks.every((b) => b.to > b.from) && blocks[0].from >= end - way.heat().leadMost && isAllowed(blocks)
    );
  }

  function isAllowed(blocks: readonly Block[]): boolean {
    return way.isAllowed({ blocks, stay: way.stay });
  }

  /** What is on already goes off when somebody is first there, whatever that means for how long it was on. */
  function switchedOff(): readonly Block[] {
    let k = 1;
    while (k < stepAt(grid, end) && !attended(k)) k++;
    return [{ from: 0, to: Math.min(end, timeOf(grid, k)) }];
  }

  function search(scope: Scope, aim: Aim, caution: Caution): ShapedCandidate[] {
    const misses = (c: ShapedCandidate) => (aim === "least" ? c.missed : c.missesWarm);
    const predicted = (blocks: readonly Block[], shape: Shape): ShapedCandidate =>
      way.candidate({ blocks }, shape, outcomeOf(blocks), caution);

    /**
     * The latest start with the wanted chance, looking back from step `k` in strides, and then forward within the last
     * of them: a longer heating is the surer one. Undefined when there is none.
     */
    function latestStart(
      k: number,
      blocksFrom: (from: number) => readonly Block[],
      shape: Shape,
    ): { readonly step: number; readonly found: ShapedCandidate } | undefined {
      const at = (step: number): ShapedCandidate | undefined => {
        if (step < 0) return undefined;
        const blocks = blocksFrom(timeOf(grid, step));
        return mayRun(blocks) ? predicted(blocks, shape) : undefined;
      };
      let latest = k;
      // The heaters' shortest time on: the latest start that keeps to it.
      while (latest > k - SHORTEST_MOST && at(latest) === undefined) latest--;
      let missed = latest + 1;
      let step = latest;
      let found = at(step);
      while (found !== undefined && misses(found)) {
        missed = step;
        step -= START_STRIDE;
        while (step < missed - 1 && at(step) === undefined) step++;
        found = at(step);
      }
      if (found === undefined) return undefined;
      while (step + 1 < missed) {
        const later = at(step + 1);
        if (later === undefined || misses(later)) break;
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
    ): ShapedCandidate[] {
      const out = [found];
      let left = attended(step) ? spares : spares + 1;
      for (let k = step - 1; k >= 0 && left > 0; k--) {
        const blocks = blocksFrom(timeOf(grid, k));
        if (!mayRun(blocks)) break;
        if (byHand && !attended(k)) continue;
        out.push(predicted(blocks, found.shape));
        left--;
      }
      return out;
    }

    /** Heat until it is unplugged. */
    function heatedThrough(): ShapedCandidate[] {
      const through = (from: number) => [{ from, to: end }];
      if (isFixed) return isAllowed(through(0)) ? [predicted(through(0), "through")] : [];
      const last = stepFrom(grid, end) - 1;
      const short = way.heat().shortOf(aim, Math.min(1, wish.chance + caution(aim, "through")));
      const near = short === undefined ? undefined : Math.min(last, stepAt(grid, end - short));
      const latest = near === undefined ? undefined : latestStart(near, through, "through");
      if (latest !== undefined) return withSpares(latest, through, byHand ? SPARE_STARTS : 1);
      const first = stepFrom(grid, Math.max(0, end - way.heat().leadMost, end - rules.longest));
      const out: ShapedCandidate[] = [];
      for (let k = first; k < last; k += Math.max(1, Math.ceil((last - first) / 8))) {
        const blocks = through(timeOf(grid, k));
        if (mayRun(blocks)) out.push(predicted(blocks, "through"));
      }
      return out;
    }

    /** Heat that stops before it has to. */
    function heatedEarly(): ShapedCandidate[] {
      if (!scope.contested && !isFixed) return [];
      const out: ShapedCandidate[] = [];
      let from = stepFrom(grid, end) - 1;
      for (let k = stepAt(grid, end) - 1; k >= 1 && (isFixed || end - timeOf(grid, k) <= EARLY_MOST); k--) {
        const isEnd = byHand
          ? attended(k) && (k % END_STRIDE === 0 || !attended(k + 1))
          : k % END_STRIDE === 0;
        if (!isEnd) continue;
        const to = timeOf(grid, k);
        const early = (a: number) => [{ from: a, to }];
        if (isFixed) {
          if (isAllowed(early(0))) out.push(predicted(early(0), "early"));
          continue;
        }
        const latest = latestStart(Math.min(from, k - 1), early, "early");
        if (latest === undefined) break;
        from = latest.step;
        out.push(...withSpares(latest, early, byHand ? 1 : 0));
      }
      return out;
    }

    /** Heat in two blocks, and the second of them at the end. */
    function heatedTwice(): ShapedCandidate[] {
      const out: ShapedCandidate[] = [];
      for (const length of TOP_UPS) {
        const again = stepFrom(grid, end) - length;
        if (again < 0 || (byHand && !attended(again))) continue;
        const topUp = { from: timeOf(grid, again), to: end };
        let start = again;
        for (let k = again - PAUSE_STRIDE; k >= 1 && end - timeOf(grid, k) <= EARLY_MOST; k -= PAUSE_STRIDE) {
          if (byHand && !attended(k)) continue;
          const to = timeOf(grid, k);
          const twice = (a: number) => [{ from: a, to }, topUp];
          const latest = latestStart(Math.min(start, k - FIRST_LEAST), twice, "twice");
          if (latest === undefined) break;
          start = latest.step;
          out.push(...withSpares(latest, twice, byHand ? 1 : 0));
        }
      }
      return out;
    }

    /** Some heat, for when enough cannot be had. */
    function heatedInPart(): ShapedCandidate[] {
      return PARTIAL_ENDS.flatMap((before) =>
        PARTIAL_LENGTHS.flatMap((length) => {
          const to = before === 0 ? end : timeOf(grid, stepAt(grid, end - before));
          const blocks = [{ from: timeOf(grid, Math.max(0, stepAt(grid, to - length))), to }];
          return mayRun(blocks) ? [predicted(blocks, before === 0 ? "through" : "early")] : [];
        }),
      );
    }

    const out = [...heatedThrough(), ...heatedEarly()];
    if (isFixed) return out.length > 0 ? out : [predicted(switchedOff(), "early")];
    if (!scope.contested) return out;
    return [...out, ...heatedTwice(), ...heatedInPart()];
  }

  return (scope, aim, caution) => {
    weighsWet ||= scope.contested;
    const cold = { chances: ground.chances(ground.cold), energy: 0, wet: 0, tooHot: false };
    const none = isFixed ? [] : [way.candidate({ blocks: [] }, "none", cold, caution)];
    if (cannot || none.some((c) => !c.missed)) return none;
    // Heat that stops early has to begin earlier: the answer must reach further back.
    const wanted = Math.min(1, wish.chance + caution(aim, "through"));
    const most = aim === "least" ? undefined : WARM_MOST;
    if (scope.contested) way.heat().reach(enoughFor(aim, wish.chance, 2, 10_800), most);
    // By hand somebody may be there only some time before the latest start.
    else way.heat().reach(enoughFor(aim, wanted, byHand ? 1.2 : 1, 0), most);
    return [...none, ...search(scope, aim, caution)];
  };
}
