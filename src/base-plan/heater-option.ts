import { centralRun, heatingImpact, type PlanRequest, type Ranking } from "../planning/index.js";
import type { Aim } from "../readiness/index.js";
import {
  type Block,
  type ByAim,
  chancesOf,
  createDepartureResponse,
  createHeatResponse,
  type DepartureResponse,
  finished,
  type HeatResponse,
  latestPlugIn,
  overheats,
} from "../response/index.js";
import { type Draws, timelineOf } from "../simulation/index.js";
import type { Candidate, Course, Holder, Stay } from "./candidate.js";
import { changesOf, playedScenario, withCart } from "./course-run.js";
import type { CoursePlayer, PlayedCourse } from "./exact.js";
import { type HeaterRules, keepsRules, onBefore, rulesOf } from "./heater-rules.js";
import { type BaseLimits, type Grid, peopleIn, stepFrom, timeOf } from "./limits.js";
import { type BaseAircraft, exitOf } from "./request.js";

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
export type ChanceMargin = (aim: Aim, shape: Shape) => number;

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
export interface HeaterOption {
  readonly plan: PlanRequest;
  readonly limits: BaseLimits;
  readonly grid: Grid;
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
  /** How it answers to heat, and how it is at departure after heat where it stands. */
  readonly response: HeatResponse;
  readonly atDeparture: DepartureResponse;
  /** How likely each line is reached with temperatures [K] at departure. */
  chances(temps: Float64Array): ByAim<number>;
  /** Whether heat in blocks breaks a ceiling in the middle estimate. */
  isTooHot(blocks: readonly Block[]): boolean;
  /** Heat where it stands, played over all members. */
  played(blocks: readonly Block[]): PlayedCourse;
  /** [s] wet hours of a course, in the middle estimate. */
  wetTime(course: Pick<Course, "blocks" | "stay">): number;
  /** [s] about the lead that is needed when it is heated until the end. */
  usualLead(): number;
  /** Whether anybody is there in a step. */
  attended(step: number): boolean;
  /** Whether its heaters are on only as long, and where, they may be. */
  isAllowed(course: Pick<Course, "blocks" | "stay">): boolean;
  /** Where it stands until it is pulled out for its departure. */
  readonly stay: Stay | undefined;
  candidate(
    course: Partial<Course> & { readonly blocks: readonly Block[] },
    shape: Shape,
    outcome: Outcome,
    margin: ChanceMargin,
  ): ShapedCandidate;
}

/** [s] longest that it is heated only to be warm through: an engine that is not by then gains hardly more. Project judgement. */
export const WARM_MOST = 12 * 3600;
/**
 * [s] between plug-ins that are played, and leads that are kept. Heat until the end is read to 1 K and heat with pauses to
 * 2 K, as `test/base-plan/response.test.ts` measures against courses played.
 */
const RESPONSE = {
  spacing: 3 * 3600,
  step: 600,
  leads: [
    0, 900, 1800, 2700, 3600, 5400, 7200, 10_800, 14_400, 18_000, 21_600, 28_800, 36_000, 50_400, 86_400,
  ],
};
/** [s] longest step of the water's balance: to rank courses; what is chosen is balanced by the minute. */
const WATER_STEP = 600;

const NOTHING = { circuit: undefined, cart: undefined, givesUpOutlet: false };

export function heaterOptionOf(
  aircraft: BaseAircraft,
  holder: Holder,
  limits: BaseLimits,
  grid: Grid,
  draws: Draws,
  cart: number | undefined,
  play: CoursePlayer,
): HeaterOption {
  const plan = withCart(aircraft, limits, cart);
  const { scenario, wish, criteria, heaters } = plan;
  const { departure } = wish;
  const exit = exitOf(plan, limits);
  const inside = scenario.initial.configuration.place === "hangar";
  const stay: Stay | undefined = inside ? { from: undefined, to: exit } : undefined;
  const onFor = onBefore(scenario);
  const rules = rulesOf(scenario.kit.heaters.filter((h) => heaters.includes(h.id)));
  const unplug = Math.min(holder.unplug, departure - rules.pause);
  const end = inside ? Math.min(unplug, exit) : unplug;
  const moveTime = limits.hangar?.moveTime ?? 0;
  const response = createHeatResponse({ scenario: switchedOff(plan), heaters }, draws, RESPONSE);
  const { parts, members } = response;
  const atDeparture = createDepartureResponse({
    response,
    end: Math.max(0, end),
    departure,
    usualLead,
    timeline: (blocks) =>
      timelineOf(scenario.initial.configuration, changesOf(plan, { blocks, heaters, stay }, limits)),
  });
  const hot = new Map<number, boolean>();
  let lead: number | undefined;
  let ranking: Ranking | undefined;

  const chances = (temps: Float64Array) => chancesOf(criteria, { temps, parts, members });

  function isHotAfter(on: number): boolean {
    const known = hot.get(on);
    if (known !== undefined) return known;
    const temps = atDeparture.heated({ from: Math.max(0, end - on), to: end });
    const is = overheats(criteria, { temps, parts, members });
    hot.set(on, is);
    return is;
  }

  /** Warm through where that can be had, else the least. */
  function usualLead(): number {
    if (lead !== undefined) return lead;
    const range = { first: stepFrom(grid, Math.max(0, end - WARM_MOST)), last: stepFrom(grid, end) - 1 };
    const latest = (aim: Aim) => {
      const plannable = (step: number) =>
        chances(atDeparture.after([{ from: timeOf(grid, step), to: end }]))[aim];
      const found = finished(latestPlugIn({ step: grid.width, plannable }, wish.chance, range));
      return found?.reached ? end - timeOf(grid, found.index) : undefined;
    };
    lead = latest("warm-through") ?? latest("least") ?? WARM_MOST / 2;
    return lead;
  }

  return {
    ...{ plan, limits, grid, cart, inside, rules, unplug, end, exit, stay, response, atDeparture, chances },
    usualLead,
    played: (blocks) => play({ ...NOTHING, cart, heaters, blocks, stay }),
    isOn: onFor !== undefined,
    byHand: !aircraft.switched || cart !== undefined,
    isTooHot: (blocks) => blocks.some(({ from, to }) => isHotAfter(to - from)),
    wetTime(course) {
      ranking ??= { run: centralRun(scenario), waterStep: WATER_STEP };
      const played = playedScenario(plan, { ...NOTHING, heaters, ...course }, limits);
      const request = { ...plan, heaters: [], wish: { ...wish, pulledOut: false }, scenario: played };
      return heatingImpact(request, undefined, ranking).wetTime;
    },
    attended: (step) => peopleIn(limits, grid, step) > 0,
    isAllowed: (course) => keepsRules(rules, { course, onFor, departure, moveTime }),
    candidate(course, shape, { chances: read, energy, wet, tooHot }, margin) {
      const misses = (aim: Aim) => tooHot || read[aim] < Math.min(1, wish.chance + margin(aim, shape));
      const heated = course.blocks.reduce((sum, b) => sum + b.to - b.from, 0);
      return {
        circuit: undefined,
        cart: course.blocks.length > 0 ? cart : undefined,
        heaters,
        stay,
        givesUpOutlet: false,
        ...course,
        shape,
        chance: tooHot ? 0 : read.least,
        missed: misses("least"),
        missesWarm: misses("warm-through"),
        harm: heated + wet,
        energy,
      };
    },
  };
}

/** The aircraft as it stands, with what is on going off at the start. */
function switchedOff({ scenario }: PlanRequest): PlanRequest["scenario"] {
  const on = [...scenario.initial.configuration.heatersOn];
  if (on.length === 0) return scenario;
  const off = { at: 0, change: { do: "unplug", heaters: on } } as const;
  return { ...scenario, events: [...scenario.events, off] };
}
