import type { PlanRequest } from "../planning/index.js";
import type { Aim } from "../readiness/index.js";
import type { Draws } from "../simulation/index.js";
import type { Block, Candidate, Course, Holder, Stay } from "./candidate.js";
import { type ByAim, withCart } from "./course-run.js";
import { type HeaterRules, keepsRules, onBefore, rulesOf } from "./heater-rules.js";
import { type BaseLimits, type Grid, peopleIn } from "./limits.js";
import { STOPS } from "./pauses.js";
import { type BaseAircraft, exitOf } from "./request.js";
import { type Answer, type Ground, groundOf } from "./response.js";

/** How a course is made, for what its predictions are worth. */
export type Shape = "none" | "through" | "early" | "twice" | "moved";

/** A candidate with what its chance was worth when it was read between courses played. */
export interface ShapedCandidate extends Candidate {
  readonly shape: Shape;
}

/** How much is looked at. */
export interface Scope {
  /** Whether others want the same circuits: if not, heat in turns is not looked at. */
  readonly contested: boolean;
  /** Whether those that can be warm through are looked at on both lines: the least is for when not all can have more. */
  readonly bothLines: boolean;
  /** Whether it may be moved into or out of the hangar early, and be heated by carts. */
  readonly moves: boolean;
}

/** What is added to the wanted chance on a line of a shape, for what its predictions turned out to be short of. */
export type Caution = (aim: Aim, shape: Shape) => number;

/** Starts before the latest that are kept for when somebody is too busy then. */
export const SPARE_STARTS = 5;

/** What a course brings, as read between courses played. */
export interface Outcome {
  readonly chances: ByAim<number>;
  /** [J] */
  readonly energy: number;
  /** [s] */
  readonly wet: number;
  readonly tooHot: boolean;
}

/** One set of heaters of one aircraft: its own alone, or a cart's beside them. */
export interface Way {
  readonly plan: PlanRequest;
  readonly limits: BaseLimits;
  readonly grid: Grid;
  readonly holder: Holder;
  /** Index into the carts. */
  readonly cart: number | undefined;
  /** It stands in the hangar at the start. */
  readonly inside: boolean;
  /** Its heaters are on at the start. */
  readonly isOn: boolean;
  /** Heat comes and goes with somebody there. */
  readonly byHand: boolean;
  /** What its heaters allow: a burner makes carbon monoxide, and never runs in a hangar. */
  readonly rules: HeaterRules;
  /** [s] when heat ends at the latest, wherever it stands. */
  readonly unplug: number;
  /** [s] when heat ends at the latest, where it stands. */
  readonly end: number;
  /** [s] when it is out of the hangar at the latest. */
  readonly exit: number;
  /** [s] up to when a move can begin. */
  readonly movedUntil: number;
  readonly stay: Stay | undefined;
  readonly ground: Ground;
  /** The answer to heat until `end`; played at first use, from as far back as is asked for. */
  heat(): Answer;
  /** Whether anybody is there in a step. */
  attended(step: number): boolean;
  /** Whether its heaters are on only as long, and where, they may be. */
  isAllowed(course: Pick<Course, "blocks" | "stay">): boolean;
  candidate(
    course: Partial<Course> & { readonly blocks: readonly Block[] },
    shape: Shape,
    outcome: Outcome,
    caution: Caution,
  ): ShapedCandidate;
}

export function wayOf(
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
  const onFor = onBefore(scenario);
  const isOn = onFor !== undefined;
  const rules = rulesOf(scenario.kit.heaters.filter((h) => plan.heaters.includes(h.id)));
  const unplug = Math.min(holder.unplug, wish.departure - rules.pause);
  const end = inside ? Math.min(unplug, exit) : unplug;
  const movedUntil = inside ? exit : exit - (limits.hangar?.moveTime ?? 0);
  const ground = groundOf(plan, draws, limits, stay, [...new Set([end, movedUntil])]);
  let heat: Answer | undefined;
  return {
    ...{ plan, limits, grid, holder, cart, inside, isOn, rules, unplug, end, exit, movedUntil, stay, ground },
    byHand: !aircraft.switched || cart !== undefined,
    heat() {
      if (heat === undefined) {
        heat = ground.answer((t) => ({ blocks: [{ from: t, to: end }], stay }), end, STOPS);
      }
      return heat;
    },
    attended: (step) => peopleIn(limits, grid, step) > 0,
    isAllowed: (course) =>
      keepsRules(rules, { course, onFor, departure: wish.departure, moveTime: limits.hangar?.moveTime ?? 0 }),
    candidate(course, shape, { chances, energy, wet, tooHot }, caution) {
      const misses = (aim: Aim) => tooHot || chances[aim] < Math.min(1, wish.chance + caution(aim, shape));
      const heated = course.blocks.reduce((sum, b) => sum + b.to - b.from, 0);
      return {
        circuit: undefined,
        cart: course.blocks.length > 0 ? cart : undefined,
        heaters: plan.heaters,
        stay,
        givesUpOutlet: false,
        ...course,
        shape,
        chance: tooHot ? 0 : chances.least,
        missed: misses("least"),
        missesWarm: misses("warm-through"),
        harm: heated + wet,
        energy,
      };
    },
  };
}
