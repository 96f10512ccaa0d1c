import type { PlanDocument } from "../../documents/index.js";
import type { BaseState } from "../../logbook/index.js";
import {
  createReplanner,
  type Decision,
  type PlugInAnswer,
  type Replanner,
  type WhatIf,
  type Wish,
} from "../../planning/index.js";
import { planRequest, planResult } from "../../questions/index.js";
import type { Steps } from "../../response/index.js";
import { type AircraftScenario, type DrawnScenario, drawnFrom } from "../../scenario/index.js";
import { firstPlan } from "./first-plan.js";
import type { Pieces } from "./jobs.js";
import type { ReplanAsk, ReplanAsked, ReplanPart } from "./protocol.js";
import { Refused } from "./refused.js";

/** What replanning needs to know of an open base. */
export interface OpenBase {
  readonly state: BaseState;
  /** [ms] the departure asked for, or the one that is wanted; undefined where none is. */
  departure(asked: ReplanAsked, now: number): number | undefined;
  /** [h] from now up to which there is weather. */
  hoursAhead(now: number): number;
  /** The aircraft's scenario over some hours from now. */
  scenario(asked: ReplanAsked, options: { now: number; hours: number; members: number }): AircraftScenario;
}

/** [ms] after which what was played is too old to be read from: the aircraft has gone on cooling or heating. */
const LASTS = 10 * 60_000;
/** [h] that departures may be moved about in, as far as the forecast reaches. */
const HOURS = 42;

interface Kept {
  readonly state: BaseState;
  readonly members: number;
  readonly made: number;
  readonly context: DrawnScenario;
  readonly wish: Wish;
  readonly asItStands: Replanner;
  /** The last other cover or wind tried. */
  tried: { readonly key: string; readonly replanner: Replanner } | undefined;
}

/** One aircraft of a question. */
interface Turn {
  readonly aircraft: string;
  readonly kept: Kept;
  readonly replanner: Replanner;
  readonly wish: Wish;
}

/** Replans aircraft; what was played for each is kept between questions. */
export class Replanning {
  readonly #kept = new Map<string, Kept>();

  /** First answers for all that is asked; then decisions, whole plans, and what makes the next first answers faster. */
  *replan(base: OpenBase, ask: ReplanAsk, tell: (part: ReplanPart) => void): Pieces<null> {
    const turns: Turn[] = [];
    for (const asked of ask.aircraft) {
      try {
        const turn = this.#turnOf(base, ask, asked);
        yield;
        const answer = turn.replanner.first(turn.wish);
        turns.push(turn);
        const { basis, members } = answer;
        tell({ aircraft: asked.id, grade: "first", basis, plan: asFirstPlan(turn, answer, members) });
      } catch (error) {
        if (!(error instanceof Refused)) throw error;
        tell({ aircraft: asked.id, grade: "refused", reasons: error.reasons });
      }
      yield;
    }
    if (ask.until === "first") return null;
    yield "waits";
    const decisions: { readonly turn: Turn; readonly decision: Decision }[] = [];
    for (const turn of turns) {
      const decision = yield* turn.replanner.decide(turn.wish);
      decisions.push({ turn, decision });
      const { members } = turn.kept;
      tell({
        aircraft: turn.aircraft,
        grade: "decided",
        plan: asFirstPlan(turn, decision.answer, members),
      });
    }
    if (ask.until === "decided") return null;
    for (const { turn, decision } of decisions) {
      tell({ aircraft: turn.aircraft, grade: "whole", plan: yield* wholePlan(turn, decision) });
    }
    for (const { kept } of turns) yield* kept.asItStands.prepare();
    for (const { kept } of turns) yield* kept.asItStands.prepareWhatIfs();
    return null;
  }

  #turnOf(base: OpenBase, ask: ReplanAsk, asked: ReplanAsked): Turn {
    const kept = this.#keptOf(base, ask, asked);
    const change: WhatIf = {
      ...(asked.covers === undefined ? {} : { coversOn: asked.covers }),
      ...(ask.windFactor === undefined ? {} : { windFactor: ask.windFactor }),
    };
    const wish = wishOf(kept, asked);
    if (Object.keys(change).length === 0) {
      kept.tried = undefined;
      return { aircraft: asked.id, kept, replanner: kept.asItStands, wish };
    }
    const key = JSON.stringify(change);
    if (kept.tried?.key !== key) kept.tried = { key, replanner: kept.asItStands.whatIf(change) };
    return { aircraft: asked.id, kept, replanner: kept.tried.replanner, wish };
  }

  #keptOf(base: OpenBase, ask: ReplanAsk, asked: ReplanAsked): Kept {
    const { now, members } = ask;
    const known = this.#kept.get(asked.id);
    const isGood =
      known?.state === base.state &&
      known.members === members &&
      Math.abs(now - known.made) < LASTS &&
      reaches(known, asked);
    if (known !== undefined && isGood) return known;
    const made = { ...keptFrom(base, ask, asked), state: base.state, members, made: now };
    this.#kept.set(asked.id, made);
    return made;
  }
}

function keptFrom(
  base: OpenBase,
  { now, members }: ReplanAsk,
  asked: ReplanAsked,
): Pick<Kept, "context" | "wish" | "asItStands" | "tried"> {
  const departure = base.departure(asked, now);
  if (departure === undefined) throw new Refused(["no departure is wanted"]);
  const least = (departure - now) / 3_600_000;
  const hours = Math.min(HOURS, Math.floor(base.hoursAhead(now)));
  if (hours <= least) throw new Refused([least < HOURS ? TOO_SHORT : TOO_FAR]);
  const read = base.scenario(asked, { now, hours, members });
  if (read.want === undefined) throw new Refused(["no departure is wanted"]);
  const context = drawnFrom(read);
  const asItStands = createReplanner(planRequest(context, read.want));
  return { context, wish: read.want.wish, asItStands, tried: undefined };
}

const TOO_FAR = "the departure is too far ahead to plan";
const TOO_SHORT = "no forecast reaches from now to the departure";

function reaches({ asItStands }: Kept, { departure }: ReplanAsked): boolean {
  const { start, duration } = asItStands.request.scenario;
  return departure === undefined || departure / 1000 <= start + duration;
}

/** The wish with another departure or chance; shortly before a departure there is less time for the habit. */
function wishOf({ wish, asItStands }: Kept, { departure, chance = wish.chance }: ReplanAsked): Wish {
  if (departure === undefined) return { ...wish, chance };
  const moved = departure / 1000 - asItStands.request.scenario.start;
  const most = 60 * Math.floor(moved / 60 / 2);
  if (!(most > 0)) throw new Refused(["the departure is not ahead"]);
  const unplugBefore = Math.min(wish.unplugBefore, most);
  const coverOffBefore = Math.min(wish.coverOffBefore, unplugBefore);
  return { ...wish, chance, departure: moved, unplugBefore, coverOffBefore };
}

function readFor({ kept, replanner, wish }: Turn): AircraftScenario {
  return { ...kept.context.read, scenario: replanner.requestFor(wish).scenario };
}

function asFirstPlan(turn: Turn, answer: PlugInAnswer, members: number) {
  return firstPlan(answer, turn.wish.chance, members, readFor(turn));
}

function* wholePlan(turn: Turn, decision: Decision): Steps<PlanDocument> {
  const { replanner, wish, kept } = turn;
  const plan = yield* replanner.elaborate(wish, decision);
  yield;
  const want = { wish, heaters: replanner.request.heaters };
  return planResult(plan, want, { ...kept.context, read: readFor(turn) });
}
