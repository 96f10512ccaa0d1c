import { type Draws, firstMembers } from "../simulation/index.js";
import type { Block, Candidate, Course, Holder, Stay } from "./candidate.js";
import { withCart } from "./course-run.js";
import { type BaseLimits, type Grid, peopleIn, stepAt, stepFrom, timeOf } from "./limits.js";
import { afterPausesOf } from "./pauses.js";
import { type BaseAircraft, exitOf, holderOf } from "./request.js";
import { type Answer, type CourseFrom, groundOf, type Node } from "./response.js";

/** Members that look among courses; all of them judge what is chosen. */
export const SCOUTS = 40;

/** How a course is made, for what its predictions are worth. */
export type Shape = "none" | "through" | "early" | "twice" | "moved";

/** A candidate with what its chance was worth when it was read between courses played. */
export interface ShapedCandidate extends Candidate {
  readonly shape: Shape;
}

/** The courses of one aircraft that are worth a thought. */
export interface CourseFinder {
  readonly aircraft: BaseAircraft;
  readonly holder: Holder;
  /**
   * @param caution added to the wanted chance of each shape, for what its predictions turned out to be short of
   * @param moves whether it may be moved into or out of the hangar early, and be heated by carts
   */
  candidates(options: FinderOptions): ShapedCandidate[];
}

export interface FinderOptions {
  readonly caution: ReadonlyMap<Shape, number>;
  readonly moves: boolean;
  /** Whether others want the same circuits: if not, heat in turns is not looked at. */
  readonly contested: boolean;
}

/** [steps] between the ends of heating that stops early. */
const END_STRIDE = 2;
/** [s] longest that it is looked at to stop early. */
const EARLY_MOST = 8 * 3600;
/** [steps] second blocks that are looked at. */
const TOP_UPS = [3, 9];
const PAUSE_STRIDE = 3;
/** [s] of partial heat, for when the whole cannot be had. */
const PARTIAL_LENGTHS = [3600, 7200, 14_400];
const PARTIAL_ENDS = [0, 3600, 7200, 14_400, 21_600];
/** [steps] */
const HOURLY = 6;
/** Plug-in times before the latest that are kept for when somebody is too busy then. */
const SPARE_STARTS = 5;

export function courseFinder(aircraft: BaseAircraft, limits: BaseLimits, grid: Grid): CourseFinder {
  const holder = holderOf(aircraft, limits);
  const draws = firstMembers(aircraft.plan.draws, SCOUTS);
  const ways = new Map<number | undefined, Way>();
  const wayWith = (cart: number | undefined): Way => {
    const known = ways.get(cart) ?? wayOf(aircraft, holder, limits, grid, draws, cart);
    ways.set(cart, known);
    return known;
  };
  return {
    aircraft,
    holder,
    candidates(options) {
      const own = wayWith(undefined);
      const found = own.courses(options);
      if (options.moves) {
        found.push(...own.moved(options));
        const isOn = aircraft.plan.scenario.initial.configuration.heatersOn.size > 0;
        for (const cart of isOn ? [] : aircraft.carts) {
          const way = wayWith(cart);
          found.push(...way.courses(options), ...way.moved(options));
        }
      }
      return found.flatMap((candidate) => onCircuits(candidate, aircraft, holder, limits));
    },
  };
}

/** The same on every circuit that it reaches and, with a switch, with its plug left in or pulled as soon as it can be. */
function onCircuits(
  candidate: ShapedCandidate,
  { circuits, connected, switched }: BaseAircraft,
  { heaters, unplug }: Holder,
  limits: BaseLimits,
): ShapedCandidate[] {
  const { blocks, cart } = candidate;
  if (blocks.length === 0) return [candidate];
  const needsOutlet = candidate.heaters.some((id) => {
    const heater = heaters.get(id);
    return heater !== undefined && (heater.elements.length > 0 || heater.duct?.energy === "electric");
  });
  if (!needsOutlet) return [candidate];
  const reached = connected === undefined ? circuits : [connected];
  const early = switched && cart === undefined && (blocks.at(-1)?.to ?? unplug) < unplug;
  return reached.flatMap((circuit) => {
    const there = { ...candidate, circuit };
    return early && !limits.circuits[circuit].generator
      ? [there, { ...there, givesUpOutlet: true }]
      : [there];
  });
}

/** What a course brings, as read between courses played. */
interface Outcome {
  readonly chance: number;
  /** [J] */
  readonly energy: number;
  /** [s] */
  readonly wet: number;
  readonly tooHot: boolean;
}

/** One set of heaters. */
interface Way {
  courses(options: FinderOptions): ShapedCandidate[];
  moved(options: FinderOptions): ShapedCandidate[];
}

function wayOf(
  aircraft: BaseAircraft,
  holder: Holder,
  limits: BaseLimits,
  grid: Grid,
  draws: Draws,
  cart: number | undefined,
): Way {
  const plan = withCart(aircraft, limits, cart);
  const { scenario, wish } = plan;
  const exit = exitOf(plan, limits);
  const inside = scenario.initial.configuration.place === "hangar";
  const stay: Stay | undefined = inside ? { from: undefined, to: exit } : undefined;
  const end = inside ? Math.min(holder.unplug, exit) : holder.unplug;
  const byHand = !aircraft.switched || cart !== undefined;
  const longest =
    3600 *
    Math.min(
      ...scenario.kit.heaters.filter((h) => plan.heaters.includes(h.id)).map((h) => h.longest_on_h),
      1e6,
    );
  // A burner makes carbon monoxide: never in a hangar.
  const burns = scenario.kit.heaters.some((h) => plan.heaters.includes(h.id) && h.duct?.energy === "fuel");
  const isOn = scenario.initial.configuration.heatersOn.size > 0;
  const movedUntil = inside ? exit : exit - (limits.hangar?.moveTime ?? 0);
  const ground = groundOf(plan, draws, limits, stay, [...new Set([end, movedUntil])]);
  const known = new Map<string, Outcome>();
  const moves: { readonly course: CourseFrom; readonly answer: Answer }[] = [];
  let heat: Answer | undefined;
  const afterPauses = afterPausesOf(ground, heatAnswer, wish.chance);
  // With nobody in the way the latest start is the best, and it is the driest too: wet hours need not be known.
  let weighsWet = false;

  function candidate(
    course: Partial<Course> & { readonly blocks: readonly Block[] },
    shape: Shape,
    { chance, energy, wet, tooHot }: Outcome,
    caution = 0,
  ): ShapedCandidate {
    const heated = course.blocks.reduce((sum, b) => sum + b.to - b.from, 0);
    return {
      circuit: undefined,
      cart: course.blocks.length > 0 ? cart : undefined,
      heaters: plan.heaters,
      stay,
      givesUpOutlet: false,
      ...course,
      shape,
      chance: tooHot ? 0 : chance,
      missed: tooHot || chance < Math.min(1, wish.chance + caution),
      harm: heated + wet,
      energy,
    };
  }

  function heatAnswer(): Answer {
    if (heat === undefined) {
      heat = ground.answer((t) => ({ blocks: [{ from: t, to: end }], stay }), end);
      heat.reach(enoughFor(wish.chance, 1.2, 0));
    }
    return heat;
  }

  function predicted(blocks: readonly Block[], shape: Shape, caution = 0): ShapedCandidate {
    const key = `${weighsWet} ${blocks.map((b) => `${b.from}-${b.to}`).join(" ")}`;
    const outcome = known.get(key) ?? outcomeOf(blocks);
    known.set(key, outcome);
    return candidate({ blocks }, shape, outcome, caution);
  }

  function outcomeOf(blocks: readonly Block[]): Outcome {
    const answer = heatAnswer();
    return {
      chance: ground.chance(afterPauses(blocks)),
      energy: blocks.reduce((s, b) => s + answer.energy(end - b.from) - answer.energy(end - b.to), 0),
      wet: weighsWet && blocks.length > 0 ? answer.wet(end - blocks[0].from) : 0,
      tooHot: blocks.some((b) => b.to - b.from > answer.coolLead()),
    };
  }

  /** Allowed lengths of one block, and as far back as was played. */
  function mayRun(from: number, to: number): boolean {
    return to > from && to - from <= longest && from >= end - heatAnswer().leadMost;
  }

  /** The latest start with `chance`, looking back from step `k`; undefined when there is none. */
  function latestStart(
    k: number,
    blocksFrom: (from: number) => readonly Block[],
    shape: Shape,
    caution: number,
  ): { readonly step: number; readonly found: ShapedCandidate } | undefined {
    for (let step = k; step >= 0; step--) {
      const blocks = blocksFrom(timeOf(grid, step));
      if (!mayRun(blocks[0].from, blocks[0].to)) return undefined;
      const found = predicted(blocks, shape, caution);
      if (!found.missed) return { step, found };
    }
    return undefined;
  }

  const attended = (step: number) => peopleIn(limits, grid, step) > 0;

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

  return {
    courses({ caution, contested }) {
      // Heat that stops early has to begin earlier: the answer must reach further back.
      weighsWet ||= contested;
      if (contested && plan.heaters.length > 0 && !(inside && burns))
        heatAnswer().reach(enoughFor(wish.chance, 2, 10_800));
      const cautionFor = (shape: Shape) => caution.get(shape) ?? 0;
      const out: ShapedCandidate[] = [];
      if (!(byHand && isOn)) {
        const chance = ground.chance(ground.cold);
        out.push(
          candidate({ blocks: [] }, "none", { chance, energy: 0, wet: 0, tooHot: false }, cautionFor("none")),
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
        const short = heatAnswer().shortOf(wanted);
        const near = short === undefined ? undefined : Math.min(last, stepAt(grid, end - short));
        const latest =
          near === undefined ? undefined : latestStart(near, through, "through", cautionFor("through"));
        if (latest !== undefined) {
          out.push(...withSpares(latest, through, byHand ? SPARE_STARTS : 1, cautionFor("through")));
        } else {
          const first = stepFrom(grid, Math.max(0, end - heatAnswer().leadMost, end - longest));
          for (let k = first; k < last; k += Math.max(1, Math.ceil((last - first) / 8))) {
            out.push(predicted(through(timeOf(grid, k)), "through", cautionFor("through")));
          }
        }
      }
      let from = last;
      for (let k = stepAt(grid, end) - 1; k >= 1 && end - timeOf(grid, k) <= EARLY_MOST; k -= 1) {
        if (!contested && !(byHand && isOn)) break;
        const isEnd = byHand
          ? attended(k) && (k % END_STRIDE === 0 || !attended(k + 1))
          : k % END_STRIDE === 0;
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
          for (
            let k = again - PAUSE_STRIDE;
            k >= 1 && end - timeOf(grid, k) <= EARLY_MOST;
            k -= PAUSE_STRIDE
          ) {
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
    },

    moved({ caution }) {
      const { hangar } = limits;
      // What somebody plugged in stays where it is until it is unplugged.
      if (hangar === undefined || (byHand && isOn)) return [];
      const more = caution.get("moved") ?? 0;
      const { moveTime } = hangar;
      const heats = plan.heaters.length > 0 && (inside || !burns);
      const cold = (t: number) =>
        inside
          ? { blocks: [], stay: { from: undefined, to: t } }
          : { blocks: [], stay: { from: t, to: exit } };
      const warm = (t: number) => {
        const to = inside ? holder.unplug : Math.min(holder.unplug, exit);
        return { ...cold(t), blocks: t + moveTime < to ? [{ from: t + moveTime, to }] : [] };
      };
      if (moves.length === 0) {
        for (const course of [cold, ...(heats ? [warm] : [])]) {
          const answer = ground.answer(course, movedUntil);
          answer.reach(inside ? () => false : enoughFor(wish.chance, 1.2, 0));
          moves.push({ course, answer });
        }
      }
      return moves.flatMap(({ course, answer }) => {
        if (answer.leadMost === 0) return [];
        const out: ShapedCandidate[] = [];
        const first = stepFrom(grid, movedUntil - answer.leadMost);
        for (let k = stepAt(grid, movedUntil); k >= Math.max(0, first); k--) {
          const t = timeOf(grid, k);
          const lead = movedUntil - t;
          if (!(lead > 0)) continue;
          const done = course(t);
          if (done.blocks.some((b) => b.to - b.from > longest)) break;
          // Leaving a bay early makes room for others: any hour will do. Coming in, the latest that is enough.
          if (inside && !(attended(k) && (k % HOURLY === 0 || !attended(k + 1)))) continue;
          if (!inside && out.length > 0 && !attended(k)) continue;
          const temps = Float64Array.from(ground.cold);
          answer.add(lead, 1, temps);
          const found = candidate(
            done,
            "moved",
            {
              chance: ground.chance(temps),
              energy: answer.energy(lead),
              wet: answer.wet(lead),
              tooHot: lead > answer.coolLead(),
            },
            more,
          );
          if (found.missed && !inside) continue;
          out.push(found);
          if (!inside && out.length > SPARE_STARTS) break;
        }
        return out;
      });
    },
  };
}

/** Enough: a lead so many times, and so much, longer than the first that has the wanted chance. */
function enoughFor(wanted: number, times: number, more: number): (node: Node) => boolean {
  let reached: number | undefined;
  return ({ lead, chance }) => {
    if (reached === undefined && chance >= wanted) reached = lead;
    return reached !== undefined && lead >= Math.max(times * reached, reached + more);
  };
}
