import { createHeatResponse, type ReadResponse } from "../response/index.js";
import { firstMembers, prepareRun } from "../simulation/index.js";
import { chooseFewMembers, type FewMembers } from "./few-members.js";
import { type FirstAnswer, firstAnswer } from "./first-answer.js";
import type { Past } from "./first-reading.js";
import type { PlanRequest } from "./request.js";
import { firstCarriers } from "./spread.js";

/**
 * How sure a first answer is of itself:
 * - "looked-up": all members, read between courses played before;
 * - "carried-over": few members played in this situation, the others moved along with them from a situation alike;
 * - "few-members": few members only.
 * What each misses by is measured in test/planning/replanner.test.ts and benchmarks/replan.mjs.
 */
export type Basis = "looked-up" | "carried-over" | "few-members";

export interface BasedAnswer extends FirstAnswer {
  readonly basis: Basis;
  /** Members that the chance is counted over. */
  readonly members: number;
}

/** What is known when a situation is first asked about. */
export interface AnswerMemory {
  /** All members, played in a situation alike. */
  readonly alike: Past | undefined;
  /** Few members in this situation, where they were played already. */
  readonly ofFew?: Pick<FewMembers, "carriers" | "draws"> & { readonly response: ReadResponse };
}

/** First answers to a request's wishes, by the best there is to read. */
export interface BasedAnswers {
  /**
   * @param all all members, where they are played through
   * @param near [grid index] a plug-in near the answer
   */
  answer(wanted: PlanRequest, near: number | undefined, all: Past | undefined): BasedAnswer;
  alike(): Past | undefined;
  /** From now on everything is read from all members. */
  forget(): void;
}

/** Members that are played where they are all there is. */
const FEW = 40;

export function createBasedAnswers(
  request: PlanRequest,
  { alike: known, ofFew }: AnswerMemory,
): BasedAnswers {
  const { draws, scenario } = request;
  let alike = known;
  let few: ReadResponse | undefined;
  let played: FewMembers | undefined;

  function lookedUp(wanted: PlanRequest, near: number | undefined, all: Past): BasedAnswer {
    // The few play the last minutes only: they are chosen anew for each departure.
    const { carriers, run } = chooseFewMembers(request, all, wanted, near);
    const sources = { response: all.response, past: all, few: run, carriers };
    return { ...firstAnswer(wanted, sources, near), basis: "looked-up", members: draws.members };
  }

  function carriedOver(
    wanted: PlanRequest,
    near: number | undefined,
    past: Past,
    { draws: fewDraws, run, carriers }: FewMembers,
  ): BasedAnswer {
    few ??= ofFew?.response ?? createHeatResponse(request, fewDraws);
    const sources = { response: few, past, few: run, carriers };
    return { ...firstAnswer(wanted, sources, near), basis: "carried-over", members: draws.members };
  }

  function byFew(
    wanted: PlanRequest,
    near: number | undefined,
    { draws: own, run }: FewMembers,
  ): BasedAnswer {
    const fewDraws = firstMembers(draws, FEW);
    few ??= createHeatResponse(request, fewDraws);
    const carriers = firstCarriers(own.members, fewDraws.members);
    const sources = { response: few, few: run, carriers };
    const answer = firstAnswer({ ...wanted, draws: fewDraws }, sources, near);
    return { ...answer, basis: "few-members", members: fewDraws.members };
  }

  return {
    answer(wanted, near, all) {
      if (all !== undefined) return lookedUp(wanted, near, all);
      played ??=
        ofFew === undefined
          ? chooseFewMembers(request, alike, wanted, near)
          : { ...ofFew, run: prepareRun(scenario, ofFew.draws) };
      return alike === undefined ? byFew(wanted, near, played) : carriedOver(wanted, near, alike, played);
    },
    alike: () => alike,
    forget() {
      few = undefined;
      alike = undefined;
      played = undefined;
    },
  };
}
