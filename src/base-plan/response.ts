import { centralRun, type PlanRequest, type Ranking, tollOf } from "../planning/index.js";
import { type Aim, marginOf } from "../readiness/index.js";
import { NumericalFailure } from "../response/index.js";
import {
  type Draws,
  ENSEMBLE_TOLERANCE,
  type EnsembleRun,
  prepareRun,
  sampleAt,
  timelineOf,
  trajectory,
} from "../simulation/index.js";
import type { Block, Course, Stay } from "./candidate.js";
import { type ByAim, changesOf, playedScenario, readyMembers, shareOf } from "./course-run.js";
import type { BaseLimits } from "./limits.js";

// How an aircraft at departure answers to heat from some time on. It is played at a few times and read between them; heat
// that stops early, or comes in two blocks, is put together from the same answers, as if the engine were linear, and
// corrected by what a few such courses really bring. That is near enough to choose; what is chosen is played as it is.

/** What is done from a time on until departure; the same shape for all times. */
export type CourseFrom = (t: number) => Pick<Course, "blocks" | "stay">;

/** The aircraft as it stands, with nothing done, and answers to what may be done, from times before one of the `untils`. */
export interface Ground {
  readonly plan: PlanRequest;
  readonly parts: readonly string[];
  readonly members: number;
  /** [K] at departure, nothing done, parts x members. */
  readonly cold: Float64Array;
  /** How likely each line is reached with temperatures [K] at departure. */
  chances(temps: Float64Array): ByAim<number>;
  /** [K] at departure after blocks, from a time [s] in their midst with its state [K]. */
  goOn(blocks: readonly Block[], from: number, state: Float64Array): Float64Array;
  /**
   * The answer to `course`; nothing of it is played yet.
   * @param stops [s] before `until`: the states there are kept, for what stops then
   */
  answer(course: CourseFrom, until: number, stops?: readonly number[]): Answer;
}

/** A time played. */
export interface Node {
  /** [s] before the end of the answer. */
  readonly lead: number;
  /** [K] at departure, less what it is with nothing done. */
  readonly rise: Float64Array;
  readonly chances: ByAim<number>;
  /** [J] middle of the members. */
  readonly energy: number;
  /** A ceiling is broken in the middle estimate. */
  readonly tooHot: boolean;
  /** [K] states by time [s] before `until`. */
  readonly kept: ReadonlyMap<number, Float64Array>;
}

/** The answer to something done from a time on; leads are [s] before `until`. */
export interface Answer {
  readonly until: number;
  /** Plays on, from ever longer leads up to `most` [s], until a node is `enough` or there is no more time. */
  reach(enough: (node: Node) => boolean, most?: number): void;
  /** [s] the longest lead played; 0 when there is no time for it. */
  readonly leadMost: number;
  /** [s] leads played, ascending. */
  leads(): number[];
  /** [s] the longest lead played that has less than a chance, up to the first that has it; undefined when none has it. */
  shortOf(aim: Aim, chance: number): number | undefined;
  /** [K] the state so long [s] before `until`, in what was played from a lead; undefined where it was not kept. */
  stateAt(lead: number, stop: number): Float64Array | undefined;
  /** Adds `factor` times the rise of a lead to `temps`. */
  add(lead: number, factor: number, temps: Float64Array): void;
  /** [J] */
  energy(lead: number): number;
  /** [s] wet hours. */
  wet(lead: number): number;
  /** [s] the longest lead that keeps under the ceilings. */
  coolLead(): number;
}

/** [s] leads that are played: each twice the one before, as the rise bends. */
const LEADS = [2700, 5400, 10_800, 21_600, 43_200, 86_400];
/** [s] of the water's balance: read between, to rank courses; what is chosen is balanced by the minute. */
const WATER_STEP = 600;
/** [s] scale over which an engine warms: between leads, the rise is read linearly in 1 - exp(-lead / scale). */
const WARMING = 14_400;

export function groundOf(
  plan: PlanRequest,
  draws: Draws,
  limits: BaseLimits,
  stay: Stay | undefined,
  untils: readonly number[],
): Ground {
  const { scenario, wish, criteria } = plan;
  const { departure } = wish;
  const run = prepareRun(scenario, draws);
  const parts = run.network.parts.map((p) => p.name);
  const { members } = run;
  const unplug = departure - wish.unplugBefore;
  const starts = untils.flatMap((until) => leadsOf(until).map((lead) => until - lead));
  const marks = [...new Set([0, ...starts, unplug, departure])].sort((a, b) => a - b);
  const soak = play(run, plan, { blocks: [], heaters: plan.heaters, stay }, limits, run.initial, marks);
  const cold = sampleAt(soak, departure);
  const ceilings = criteria.filter((c) => c.judged === "while-heating");

  let central: Ranking | undefined;
  function ranking(): Ranking {
    central ??= { run: centralRun(scenario), waterStep: WATER_STEP };
    return central;
  }

  function chances(temps: Float64Array): ByAim<number> {
    const ready = readyMembers(criteria, temps, parts, members);
    return { least: shareOf(ready.least), "warm-through": shareOf(ready["warm-through"]) };
  }

  function nodeAt(course: CourseFrom, until: number, lead: number, stops: readonly number[]): Node {
    const from = until - lead;
    const done = { ...course(from), heaters: plan.heaters };
    const hot = done.blocks.at(-1)?.to ?? departure;
    const within = stops.filter((stop) => stop < lead);
    const times = [...new Set([from, ...within.map((stop) => until - stop), hot, departure])];
    times.sort((a, b) => a - b);
    const played = play(run, plan, done, limits, sampleAt(soak, from), times);
    const temps = sampleAt(played, departure);
    const atUnplug = sampleAt(played, hot);
    const energy = played.energy.subarray(played.energy.length - members);
    return {
      lead,
      rise: temps.map((t, i) => t - cold[i]),
      chances: chances(temps),
      energy: middle(energy),
      tooHot: done.blocks.length > 0 && ceilings.some((c) => brokenInTheMiddle(c, atUnplug)),
      kept: new Map(within.map((stop) => [stop, Float64Array.from(sampleAt(played, until - stop))])),
    };
  }

  function brokenInTheMiddle(criterion: (typeof criteria)[number], temps: Float64Array): boolean {
    const values = new Float64Array(members);
    criterion.values({ temps, parts, members }, values);
    return marginOf(criterion, middle(values)) < 0;
  }

  return {
    plan,
    parts,
    members,
    cold,
    chances,
    goOn(blocks, from, state) {
      const done = { blocks, stay, heaters: plan.heaters };
      return sampleAt(play(run, plan, done, limits, state, [from, departure]), departure);
    },
    answer(course, until, stops = []) {
      const wet = (lead: number) =>
        tollOf(
          {
            ...plan,
            heaters: [],
            wish: { ...wish, pulledOut: false },
            scenario: playedScenario(
              plan,
              { ...NOTHING, heaters: plan.heaters, ...course(until - lead) },
              limits,
            ),
          },
          undefined,
          ranking(),
        ).wetTime;
      return answerOf(until, (lead) => nodeAt(course, until, lead, stops), wet);
    },
  };
}

const NOTHING: Course = {
  circuit: undefined,
  cart: undefined,
  heaters: [],
  blocks: [],
  stay: undefined,
  givesUpOutlet: false,
};

/** Leads that fit in before `until`; the last goes back to the start. */
function leadsOf(until: number): number[] {
  const fitting = LEADS.filter((lead) => lead < until);
  return fitting.length < LEADS.length && until > 0 ? [...fitting, until] : fitting;
}

function play(
  run: EnsembleRun,
  plan: PlanRequest,
  course: Pick<Course, "blocks" | "heaters" | "stay">,
  limits: BaseLimits,
  state: Float64Array,
  sampleTimes: readonly number[],
) {
  const timeline = timelineOf(plan.scenario.initial.configuration, changesOf(plan, course, limits));
  const played = trajectory(run, { state, timeline, sampleTimes, tolerance: ENSEMBLE_TOLERANCE });
  if (played.status !== "completed") throw new NumericalFailure(`${played.status}: ${played.remedy}`);
  return played;
}

function answerOf(until: number, nodeAt: (lead: number) => Node, wetTime: (lead: number) => number): Answer {
  const leads = leadsOf(until);
  const nodes: Node[] = [];
  let settled = false;
  let wetAtNodes: readonly { readonly lead: number; readonly wet: number }[] = [];
  const bend = (lead: number) => 1 - Math.exp(-lead / WARMING);
  /** The nodes on either side of a lead, and how far the lead lies towards the later one. */
  const locate = (lead: number, scale: (lead: number) => number) => {
    const i = nodes.findIndex((node) => node.lead >= lead);
    const k = i < 0 ? nodes.length - 1 : i;
    const before = k === 0 ? 0 : scale(nodes[k - 1].lead);
    const weight = Math.min(1, (scale(lead) - before) / (scale(nodes[k].lead) - before));
    return { before: nodes[k - 1], after: nodes[k], weight };
  };
  return {
    until,
    reach(enough, most = Number.POSITIVE_INFINITY) {
      if (nodes.some(enough)) return;
      for (const lead of leads.slice(nodes.length)) {
        const last = nodes.at(-1);
        if (last !== undefined && (settled || lead > most)) return;
        const node = nodeAt(lead);
        settled = last !== undefined && meanOf(node.rise) < SETTLED * meanOf(last.rise);
        nodes.push(node);
        wetAtNodes = [];
        if (enough(node)) return;
      }
    },
    get leadMost() {
      return nodes.at(-1)?.lead ?? 0;
    },
    leads: () => nodes.map((node) => node.lead),
    shortOf(aim, chance) {
      const first = nodes.findIndex((node) => node.chances[aim] >= chance);
      return first < 0 ? undefined : (nodes[first - 1]?.lead ?? 0);
    },
    stateAt: (lead, stop) => nodes.find((node) => node.lead === lead)?.kept.get(stop),
    add(lead, factor, temps) {
      if (!(lead > 0)) return;
      const { before, after, weight } = locate(lead, bend);
      for (let i = 0; i < temps.length; i++) {
        temps[i] +=
          factor * (weight * after.rise[i] + (before === undefined ? 0 : (1 - weight) * before.rise[i]));
      }
    },
    energy(lead) {
      if (!(lead > 0)) return 0;
      const { before, after, weight } = locate(lead, (l) => l);
      return weight * after.energy + (before === undefined ? 0 : (1 - weight) * before.energy);
    },
    wet(lead) {
      const last = nodes.at(-1);
      if (last === undefined) return 0;
      if (wetAtNodes.length === 0) wetAtNodes = wetPoints(last.lead, wetTime);
      const i = Math.max(
        1,
        wetAtNodes.findIndex((p) => p.lead >= lead),
      );
      const [a, b] = [wetAtNodes[i - 1], wetAtNodes[i]];
      return a.wet + ((Math.min(lead, b.lead) - a.lead) / (b.lead - a.lead)) * (b.wet - a.wet);
    },
    coolLead() {
      const hot = nodes.findIndex((node) => node.tooHot);
      return hot < 0 ? Number.POSITIVE_INFINITY : (nodes[hot - 1]?.lead ?? 0);
    },
  };
}

/** Rise over that of the lead before, up to which the engine counts as warmed through: more time brings nothing. */
const SETTLED = 1.03;

function meanOf(values: Float64Array): number {
  return Math.abs(values.reduce((sum, v) => sum + v, 0)) / values.length;
}

/** Wet hours grow with heating: where the longest is dry, so are the others. */
function wetPoints(most: number, wetTime: (lead: number) => number) {
  const longest = wetTime(most);
  if (longest === 0) {
    return [
      { lead: 0, wet: 0 },
      { lead: most, wet: 0 },
    ];
  }
  return [0, most / 2].map((lead) => ({ lead, wet: wetTime(lead) })).concat({ lead: most, wet: longest });
}

function middle(values: Float64Array): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.floor(sorted.length / 2)];
}

/** Temperatures [K] at departure after heat in blocks, put together from the answer to heat from a time on. */
export function afterBlocks(ground: Ground, heat: Answer, blocks: readonly Block[]): Float64Array {
  const temps = Float64Array.from(ground.cold);
  for (const { from, to } of blocks) {
    heat.add(heat.until - from, 1, temps);
    heat.add(heat.until - to, -1, temps);
  }
  return temps;
}

/** Enough: a lead so many times, and so much, longer than the first that has the wanted chance. */
export function enoughFor(aim: Aim, wanted: number, times: number, more: number): (node: Node) => boolean {
  let reached: number | undefined;
  return ({ lead, chances }) => {
    if (reached === undefined && chances[aim] >= wanted) reached = lead;
    return reached !== undefined && lead >= Math.max(times * reached, reached + more);
  };
}
