import type { Aim } from "../readiness/index.js";
import {
  type Block,
  finished,
  latestPlugIn,
  type PlugInChances,
  refinePlugIn,
  type SearchRange,
  settlePlugIn,
} from "../response/index.js";
import {
  type ChanceMargin,
  type HeaterOption,
  type Outcome,
  type Scope,
  type Shape,
  type ShapedCandidate,
  SPARE_STARTS,
  WARM_MOST,
} from "./heater-option.js";
import { stepAt, stepFrom, timeOf } from "./limits.js";
import { wetCurve } from "./wet-curve.js";

/** [steps] between the ends of heating that stops early. */
const END_STRIDE = 2;
/** [s] Longest early stop considered. */
const EARLY_MOST = 8 * 3600;
/** [steps] around the start found for the end before, in which the next one is looked for first. */
const START_STRIDE = 4;
/** [steps] second blocks that are looked at. */
const TOP_UPS = [3, 9];
/** [steps] the first of two blocks, at least: nobody walks out for less. */
const FIRST_LEAST = 3;
const PAUSE_STRIDE = 3;
/** [s] of partial heat, for when the whole cannot be had. */
const PARTIAL_LENGTHS = [3600, 7200, 14_400];
const PARTIAL_ENDS = [0, 3600, 7200, 14_400, 21_600];
/** [steps] that all members may move what few found: where they want more heat than that, more brings hardly anything. */
const EARLIER_MOST = 6;
const LATER_MOST = 48;
/** [s] Lead beyond which a chance hardly grows any more, and a few members too few cost hours: all of them tell then. */
const LONG = 4 * 3600;
/** Starts tried where none is enough. */
const SHORT_TRIES = 8;

export type CoursesOf = (scope: Scope, aim: Aim, margin: ChanceMargin) => ShapedCandidate[];

/** Courses in which an aircraft is heated where it stands. */
export function coursesOf(option: HeaterOption): CoursesOf {
  const { plan, atDeparture, inside, isOn, byHand, rules, end } = option;
  const cannot = plan.heaters.length === 0 || end <= 0 || (inside && rules.outdoors);
  // What is plugged in by hand at the start is on from the start.
  const isFixed = byHand && isOn;
  const outcomes = new Map<string, Outcome>();
  // With nobody in the way the latest start is the best, and it is the driest too: wet hours need not be known.
  let weighsWet = false;
  const wetAt = wetThrough(option);

  return (scope, aim, margin) => {
    weighsWet ||= scope.contested;
    const cold = { chances: option.chances(atDeparture.cold), energy: 0, wet: 0, tooHot: false };
    const none = isFixed ? [] : [option.candidate({ blocks: [] }, "none", cold, margin)];
    if (cannot || none.some((c) => !c.missed)) return none;
    const { contested } = scope;
    const look: Look = { option, aim, margin, outcomes, weighsWet, contested, wetAt };
    if (isFixed) {
      const out = heatedOn(look);
      return [...none, ...(out.length > 0 ? out : [predicted(look, switchedOff(option), "early")])];
    }
    const out = [...none, ...heatedThrough(look)];
    if (!scope.contested) return out;
    return [...out, ...heatedEarly(look), ...heatedTwice(look), ...heatedInPart(look)];
  };
}

/** One look at what an aircraft may do. */
interface Look {
  readonly option: HeaterOption;
  readonly aim: Aim;
  readonly margin: ChanceMargin;
  /** By blocks and by whether wet hours were counted. */
  readonly outcomes: Map<string, Outcome>;
  readonly weighsWet: boolean;
  /** Others want the same circuits. */
  readonly contested: boolean;
  /** [s] wet hours by lead [s]. */
  readonly wetAt: (lead: number) => number;
}

/** Blocks by the time at which the first of them starts. */
type BlocksFrom = (from: number) => readonly Block[];

interface Start {
  readonly step: number;
  readonly found: ShapedCandidate;
}

function outcomeOf(look: Look, blocks: readonly Block[]): Outcome {
  const { option, outcomes, weighsWet, wetAt } = look;
  const key = `${weighsWet} ${blocks.map((b) => `${b.from}-${b.to}`).join(" ")}`;
  const known = outcomes.get(key);
  if (known !== undefined) return known;
  const outcome = {
    chances: option.chances(option.atDeparture.after(blocks)),
    energy: option.atDeparture.energy(blocks),
    wet: weighsWet && blocks.length > 0 ? wetAt(option.end - blocks[0].from) : 0,
    tooHot: option.isTooHot(blocks),
  };
  outcomes.set(key, outcome);
  return outcome;
}

function predicted(look: Look, blocks: readonly Block[], shape: Shape): ShapedCandidate {
  return look.option.candidate({ blocks }, shape, outcomeOf(look, blocks), look.margin);
}

/** [s] the earliest start that is looked at. */
function earliest({ option: { end, rules }, aim }: Look): number {
  return Math.max(0, end - (aim === "least" ? Math.min(rules.longest, end) : WARM_MOST));
}

function mayRun(look: Look, blocks: readonly Block[]): boolean {
  const { option } = look;
  return (
    blocks.every((b) => b.to > b.from) &&
    blocks[0].from >= earliest(look) &&
    option.isAllowed({ blocks, stay: option.stay })
  );
}

/** Steps up to `k` in which heat may start. */
function startsUpTo(look: Look, k: number, blocksFrom: BlocksFrom): SearchRange {
  const { grid } = look.option;
  const may = (step: number) => mayRun(look, blocksFrom(timeOf(grid, step)));
  const least = Math.max(0, stepFrom(grid, earliest(look)));
  let last = k;
  // The heaters' shortest time on: the latest start that keeps to it.
  while (last >= least && !may(last)) last--;
  if (last < least) return { first: 0, last: -1 };
  let first = last;
  while (first > least && may(first - 1)) first--;
  return { first, last };
}

/** The latest start up to step `k` with the wanted chance; undefined when there is none. */
function latestStart(
  look: Look,
  k: number,
  blocksFrom: BlocksFrom,
  shape: Shape,
  near: number,
): Start | undefined {
  const { option, aim, margin } = look;
  const { grid, plan } = option;
  const blocksAt = (step: number) => blocksFrom(timeOf(grid, step));
  const range = startsUpTo(look, k, blocksFrom);
  const { first, last } = range;
  if (first > last) return undefined;
  const wanted = Math.min(1, plan.wish.chance + margin(aim, shape));
  const within = Math.max(first, Math.min(last, near));
  const found = finished(refinePlugIn(readChances(look, blocksAt), wanted, range, within, START_STRIDE));
  if (found?.reached !== true) return undefined;
  return { step: found.index, found: predicted(look, blocksAt(found.index), shape) };
}

/** Chances as read between courses played. */
function readChances(look: Look, blocksAt: (step: number) => readonly Block[]): PlugInChances {
  return {
    step: look.option.grid.width,
    plannable(step) {
      const { tooHot, chances } = outcomeOf(look, blocksAt(step));
      return tooHot ? 0 : chances[look.aim];
    },
  };
}

/** The latest with the wanted chance and, by hand, the latest before it when somebody is there. */
function withSpares(
  look: Look,
  { step, found }: Start,
  blocksFrom: BlocksFrom,
  spares: number,
): ShapedCandidate[] {
  const { byHand, attended, grid } = look.option;
  const out = [found];
  let left = attended(step) ? spares : spares + 1;
  for (let k = step - 1; k >= 0 && left > 0; k--) {
    const blocks = blocksFrom(timeOf(grid, k));
    if (!mayRun(look, blocks)) break;
    if (byHand && !attended(k)) continue;
    out.push(predicted(look, blocks, found.shape));
    left--;
  }
  return out;
}

/** The latest start of heat until the end, settled with all members as the plan of one aircraft is; among others only a long one. */
function latestThrough(look: Look, last: number, through: BlocksFrom): Start | undefined {
  const { option, aim, contested } = look;
  const { grid, plan } = option;
  const range = startsUpTo(look, last, through);
  if (range.first > range.last) return undefined;
  const blocksAt = (step: number) => through(timeOf(grid, step));
  const few = readChances(look, blocksAt);
  const all: PlugInChances = {
    step: grid.width,
    plannable(step) {
      const { verdict } = option.played(blocksAt(step));
      if (verdict.tooHot.length > 0) return 0;
      return aim === "least" ? verdict.chance : verdict.warm.chance;
    },
  };
  const { chance: wanted } = plan.wish;
  const found = finished(latestPlugIn(few, wanted, range));
  if (found?.reached !== true) return undefined;
  const read = { ...found, chance: few.plannable(found.index) };
  if (contested && option.end - timeOf(grid, found.index) <= LONG) {
    return { step: found.index, found: predicted(look, blocksAt(found.index), "through") };
  }
  const near = {
    first: Math.max(range.first, found.index - EARLIER_MOST),
    last: Math.min(range.last, found.index + LATER_MOST),
  };
  const settled = finished(settlePlugIn(all, wanted, near, read));
  if (settled?.reached !== true) return undefined;
  return { step: settled.index, found: predicted(look, blocksAt(settled.index), "through") };
}

/** Heat until it is unplugged. */
function heatedThrough(look: Look): ShapedCandidate[] {
  const { grid, end, byHand } = look.option;
  const through = (from: number) => [{ from, to: end }];
  const last = stepFrom(grid, end) - 1;
  const latest = latestThrough(look, last, through);
  if (latest !== undefined) return withSpares(look, latest, through, byHand ? SPARE_STARTS : 1);
  const first = stepFrom(grid, earliest(look));
  const out: ShapedCandidate[] = [];
  for (let k = first; k < last; k += Math.max(1, Math.ceil((last - first) / SHORT_TRIES))) {
    const blocks = through(timeOf(grid, k));
    if (mayRun(look, blocks)) out.push(predicted(look, blocks, "through"));
  }
  return out;
}

/** Steps in which heat may end before it has to, the latest first. */
function earlyEnds({ byHand, attended, grid, end }: HeaterOption, most: number): number[] {
  const ends: number[] = [];
  for (let k = stepAt(grid, end) - 1; k >= 1 && end - timeOf(grid, k) <= most; k--) {
    const isStride = k % END_STRIDE === 0;
    if (byHand ? attended(k) && (isStride || !attended(k + 1)) : isStride) ends.push(k);
  }
  return ends;
}

/** Heat that is on from the start, until it is unplugged or before. */
function heatedOn(look: Look): ShapedCandidate[] {
  const { option } = look;
  const tos = [option.end, ...earlyEnds(option, Number.POSITIVE_INFINITY).map((k) => timeOf(option.grid, k))];
  return tos.flatMap((to) => {
    const blocks = [{ from: 0, to }];
    if (!option.isAllowed({ blocks, stay: option.stay })) return [];
    return [predicted(look, blocks, to === option.end ? "through" : "early")];
  });
}

/** What is on already goes off when somebody is first there, whatever that means for how long it was on. */
function switchedOff({ grid, end, attended }: HeaterOption): readonly Block[] {
  let k = 1;
  while (k < stepAt(grid, end) && !attended(k)) k++;
  return [{ from: 0, to: Math.min(end, timeOf(grid, k)) }];
}

/** Heat that stops before it has to. */
function heatedEarly(look: Look): ShapedCandidate[] {
  const { option } = look;
  const out: ShapedCandidate[] = [];
  let near = stepFrom(option.grid, option.end) - 1;
  for (const k of earlyEnds(option, EARLY_MOST)) {
    const to = timeOf(option.grid, k);
    const early = (from: number) => [{ from, to }];
    const latest = latestStart(look, k - 1, early, "early", near);
    if (latest === undefined) break;
    near = latest.step;
    out.push(...withSpares(look, latest, early, option.byHand ? 1 : 0));
  }
  return out;
}

/** Heat in two blocks, and the second of them at the end. */
function heatedTwice(look: Look): ShapedCandidate[] {
  const { grid, end, byHand, attended } = look.option;
  const out: ShapedCandidate[] = [];
  for (const length of TOP_UPS) {
    const again = stepFrom(grid, end) - length;
    if (again < 0 || (byHand && !attended(again))) continue;
    const topUp = { from: timeOf(grid, again), to: end };
    let near = again;
    for (let k = again - PAUSE_STRIDE; k >= 1 && end - timeOf(grid, k) <= EARLY_MOST; k -= PAUSE_STRIDE) {
      if (byHand && !attended(k)) continue;
      const to = timeOf(grid, k);
      const twice = (from: number) => [{ from, to }, topUp];
      const latest = latestStart(look, k - FIRST_LEAST, twice, "twice", near);
      if (latest === undefined) break;
      near = latest.step;
      out.push(...withSpares(look, latest, twice, byHand ? 1 : 0));
    }
  }
  return out;
}

/** Some heat, for when enough cannot be had. */
function heatedInPart(look: Look): ShapedCandidate[] {
  const { grid, end } = look.option;
  return PARTIAL_ENDS.flatMap((before) =>
    PARTIAL_LENGTHS.flatMap((length) => {
      const to = before === 0 ? end : timeOf(grid, stepAt(grid, end - before));
      const blocks = [{ from: timeOf(grid, Math.max(0, stepAt(grid, to - length))), to }];
      return mayRun(look, blocks) ? [predicted(look, blocks, before === 0 ? "through" : "early")] : [];
    }),
  );
}

/** [s] heat that comes in turns begins earlier: wet hours are worked out so much, and so many times, further back. */
const WET_MORE = 10_800;
const WET_TIMES = 2;

/** [s] wet hours of heat until the end, by lead. */
function wetThrough(option: HeaterOption): (lead: number) => number {
  const { end, stay } = option;
  return wetCurve(
    () => Math.min(end, Math.max(WET_TIMES * option.usualLead(), option.usualLead() + WET_MORE)),
    (lead) => option.wetTime({ blocks: lead > 0 ? [{ from: end - lead, to: end }] : [], stay }),
  );
}
