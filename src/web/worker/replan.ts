import {
  issueText,
  type NowDocument,
  type PlanDocument,
  planDocument,
  type ResultContext,
  type ScenarioDocument,
  usedKit,
  type ReadScenario,
} from "../../documents/index.js";
import type { BaseState } from "../../logbook/index.js";
import { drawnFrom, scenarioFrom } from "../../pipeline.js";
import { createReplanner, type Replanner, type Steps, type WhatIf, type Wish } from "../../planning/index.js";
import { allCriteria } from "../../readiness/index.js";
import { firstPlan } from "./first-plan.js";
import type { Pieces } from "./jobs.js";
import type { ReplanAsk, ReplanPart } from "./protocol.js";
import { Refused } from "./refused.js";

/** What replanning needs to know of an open base. */
export interface OpenBase {
  readonly state: BaseState;
  estimate(aircraft: string): NowDocument | undefined;
  /** The aircraft's scenario from now, over as many hours as departures may be moved about in. */
  scenario(aircraft: string, hours: number, members: number, until: number): ScenarioDocument;
}

/** [ms] after which what was played is too old to be read from: the aircraft has gone on cooling or heating. */
const LASTS = 10 * 60_000;
/** [h] that departures may be moved about in, as far as the forecast reaches, and what is looked at after the last. */
const HOURS = [42, 36, 30, 24, 18, 12, 8, 5, 3, 2];

interface Kept {
  readonly state: BaseState;
  readonly estimate: NowDocument | undefined;
  readonly members: number;
  readonly made: number;
  readonly context: ResultContext;
  readonly want: { readonly wish: Wish; readonly heaters: readonly string[] };
  readonly asItStands: Replanner;
  /** The last other cover or wind tried. */
  tried: { readonly key: string; readonly replanner: Replanner } | undefined;
}

interface Turn {
  readonly aircraft: string;
  readonly kept: Kept;
  readonly replanner: Replanner;
  readonly wish: Wish;
}

/** Keeps what was played for each aircraft between questions. */
export class Replanning {
  readonly #kept = new Map<string, Kept>();

  /** First answers for all that is asked, one piece each; then the decisions, the plans, and what makes the next faster. */
  *replan(base: OpenBase, ask: ReplanAsk, tell: (part: ReplanPart) => void): Pieces<null> {
    const turns: Turn[] = [];
    for (const asked of ask.aircraft) {
      const turn = this.#turn(base, ask, asked);
      const { basis, ...answer } = turn.replanner.first(turn.wish);
      const members = basis === "few-members" ? FEW : turn.kept.context.draws.members;
      turns.push(turn);
      tell({ aircraft: turn.aircraft, grade: "first", basis, plan: partOf(turn, answer, members) });
      yield;
    }
    if (ask.until === "first") return null;
    yield "waits";
    const decisions = new Map<Turn, Decided>();
    for (const turn of turns) {
      const decision = yield* turn.replanner.decide(turn.wish);
      decisions.set(turn, decision);
      const { members } = turn.kept.context.draws;
      tell({ aircraft: turn.aircraft, grade: "decided", plan: partOf(turn, decision.answer, members) });
    }
    if (ask.until === "decided") return null;
    for (const [turn, decision] of decisions) {
      tell({ aircraft: turn.aircraft, grade: "whole", plan: yield* wholePlan(turn, decision) });
    }
    for (const { kept } of turns) yield* kept.asItStands.prepare();
    return null;
  }

  #turn(base: OpenBase, ask: ReplanAsk, asked: ReplanAsk["aircraft"][number]): Turn {
    const kept = this.#keptOf(base, ask, asked);
    const change: WhatIf = {
      ...(asked.covers === undefined ? {} : { coversOn: asked.covers }),
      ...(ask.windFactor === undefined ? {} : { windFactor: ask.windFactor }),
    };
    const key = JSON.stringify(change);
    if (key !== "{}" && kept.tried?.key !== key) {
      kept.tried = { key, replanner: kept.asItStands.whatIf(change) };
    }
    const replanner = key === "{}" || kept.tried === undefined ? kept.asItStands : kept.tried.replanner;
    return { aircraft: asked.id, kept, replanner, wish: wishOf(kept, asked) };
  }

  #keptOf(base: OpenBase, { now, members }: ReplanAsk, asked: ReplanAsk["aircraft"][number]): Kept {
    const known = this.#kept.get(asked.id);
    const estimate = base.estimate(asked.id);
    if (
      known !== undefined &&
      known.state === base.state &&
      known.estimate === estimate &&
      known.members === members &&
      Math.abs(now - known.made) < LASTS &&
      reaches(known, asked)
    ) {
      return known;
    }
    const kept = made(base, { now, members, asked, estimate });
    this.#kept.set(asked.id, kept);
    return kept;
  }
}

/** Members of first answers of the basis "few-members"; as the replanner has it. */
const FEW = 40;

type Decided = ReturnType<Replanner["decide"]> extends Steps<infer T> ? T : never;

function made(
  base: OpenBase,
  {
    now,
    members,
    asked,
    estimate,
  }: {
    readonly now: number;
    readonly members: number;
    readonly asked: ReplanAsk["aircraft"][number];
    readonly estimate: NowDocument | undefined;
  },
): Kept {
  const until = ((asked.departure ?? now) - now) / 3_600_000;
  let refusal: Refused | undefined;
  for (const hours of HOURS.filter((h) => h > until)) {
    try {
      const read = scenarioFrom(base.scenario(asked.id, hours, members, asked.departure ?? 0), {});
      if (!read.ok) throw new Refused(read.issues.map(issueText));
      const { want } = read;
      if (want === undefined) throw new Refused(["no departure is wanted"]);
      const context = drawnFrom(read);
      const asItStands = createReplanner({
        scenario: read.scenario,
        wish: want.wish,
        heaters: want.heaters,
        criteria: allCriteria(read.scenario.installation, usedKit(read), read.limits),
        draws: context.draws,
      });
      return { state: base.state, estimate, members, made: now, context, want, asItStands, tried: undefined };
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      // The forecast may not reach so far: fewer hours are tried.
      refusal = error;
    }
  }
  throw refusal ?? new Refused(["the departure is too far ahead to plan"]);
}

function reaches({ asItStands }: Kept, { departure }: ReplanAsk["aircraft"][number]): boolean {
  if (departure === undefined) return true;
  const { start, duration } = asItStands.request.scenario;
  return departure / 1000 <= start + duration;
}

/** The wish with another departure or chance; shortly before the departure there is less time for the habit. */
function wishOf({ want, asItStands }: Kept, { departure, chance }: ReplanAsk["aircraft"][number]): Wish {
  const { wish } = want;
  if (departure === undefined) return { ...wish, ...(chance === undefined ? {} : { chance }) };
  const moved = departure / 1000 - asItStands.request.scenario.start;
  if (!(moved > 0)) throw new Refused(["the departure is not ahead"]);
  const most = 60 * Math.floor(moved / 60 / 2);
  const unplugBefore = Math.min(wish.unplugBefore, most);
  return {
    ...wish,
    departure: moved,
    unplugBefore,
    coverOffBefore: Math.min(wish.coverOffBefore, unplugBefore),
    ...(chance === undefined ? {} : { chance }),
  };
}

/** [s] looked beyond a departure, as the replanner has it. */
const BEYOND = 6 * 3600;

function readFor({ kept, replanner, wish }: Turn): ReadScenario {
  const { scenario } = replanner.request;
  const duration = Math.min(scenario.duration, wish.departure + BEYOND);
  return { ...kept.context.read, scenario: { ...scenario, duration } };
}

function partOf(turn: Turn, answer: Parameters<typeof firstPlan>[0], members: number) {
  return firstPlan(answer, turn.wish.chance, members, readFor(turn));
}

function* wholePlan(turn: Turn, decision: Decided): Steps<PlanDocument> {
  const plan = yield* turn.replanner.elaborate(turn.wish, decision);
  yield;
  const want = { wish: turn.wish, heaters: turn.kept.want.heaters };
  return planDocument(plan, want, { ...turn.kept.context, read: readFor(turn) });
}
