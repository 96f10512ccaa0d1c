import { PLUG_IN_STEP, plugInGrid, timeOf } from "../response/index.js";
import { type Draws, type EnsembleRun, prepareRun, someMembers } from "../simulation/index.js";
import { plugInRange } from "./decision.js";
import { type Past, pastMargins } from "./first-reading.js";
import { USUAL_LEAD } from "./first-search.js";
import type { PlanRequest } from "./request.js";
import { type Carriers, decisiveCarriers, firstCarriers } from "./spread.js";

/** Few members and a run of theirs. */
export interface FewMembers {
  readonly carriers: Carriers;
  readonly draws: Draws;
  readonly run: EnsembleRun;
}

/** Members played for a first answer where more are known of a situation alike. */
const CARRIERS = 16;

/**
 * Few members to play for all of a request's: those on whom the answer hangs, as far as the past tells.
 * @param wanted the request with the wish that is asked for
 * @param near [grid index] a plug-in near the answer
 */
export function chooseFewMembers(
  { draws, scenario }: PlanRequest,
  past: Past | undefined,
  wanted: PlanRequest,
  near: number | undefined,
): FewMembers {
  const { members } = draws;
  const count = Math.min(CARRIERS, members);
  const carriers =
    past === undefined
      ? firstCarriers(count, members)
      : decisiveCarriers(count, pastMargins(past, wanted, rankingTime(wanted, near)), wanted.wish.chance);
  const ofFew = someMembers(draws, carriers.members);
  return { carriers, draws: ofFew, run: prepareRun(scenario, ofFew) };
}

/** [s] moment of plugging in at which members are ranked: the guess, or a usual lead. */
function rankingTime(request: PlanRequest, near: number | undefined): number | undefined {
  if (request.heaters.length === 0) return undefined;
  const { first, last } = plugInRange(request);
  const usual = Math.round(last - USUAL_LEAD / PLUG_IN_STEP);
  return timeOf(plugInGrid(request.scenario.start), Math.max(first, Math.min(last, near ?? usual)));
}
