import type { Aim } from "../readiness/index.js";
import { type ByAim, finished, narrowPlugIn } from "../response/index.js";
import type { ColdCase } from "./cold-case.js";

/** The least lead that makes a case ready with the wanted chance, or the least that comes near the best there is. */
export interface LeadFound {
  /** "not-required": every part is past the maker's limit without heat, with the wanted chance. */
  readonly status: "ready" | "not-required" | "not-reached";
  /** The line aimed at: warm through where the kit reaches it with the wanted chance, else the least. */
  readonly aim: Aim;
  /** [s] from plug-in to departure; 0: no heat. */
  readonly lead: number;
  /** Index of the tried lead next above it; -1: no heat. */
  readonly index: number;
  /** Chances [0..1] at that lead: that it may be started, and that it is warm through. */
  readonly chance: number;
  readonly warmChance: number;
  /** Chance of a start without heat. */
  readonly unheated: number;
}

/** What is lost against the longest lead for a shorter one, where no lead is enough; project judgement. */
const NEAR_BEST = 0.03;
/** [s] of a search's grid, so that it begins at the shortest lead: leads grow by themselves. */
const SEARCH_STEP = 3600;

interface Target {
  readonly aim: Aim;
  readonly chance: number;
}

/**
 * The least lead for a wanted chance, found as a plan's latest plug-in is; straight between the two leads tried around it,
 * never below the shortest. Leads that break a ceiling in the middle aircraft are no candidates.
 * @param leads [s] ascending, those of the case
 */
export function leastLead(cold: ColdCase, leads: readonly number[], wanted: number): LeadFound {
  const none = cold.chances(-1);
  const longest = leads.findLastIndex((_, index) => !cold.isTooHot(index));
  const target = targetOf(none, cold.chances(longest), wanted);
  const isBare = longest < 0 || none.least >= wanted || none[target.aim] >= target.chance;
  const index = isBare ? -1 : shortestFor(cold, longest, target);
  const found = cold.chances(index);
  const status = none.least >= wanted ? "not-required" : found.least >= wanted ? "ready" : "not-reached";
  return {
    status,
    aim: target.aim,
    lead: index < 0 ? 0 : between(cold, leads, index, target),
    index,
    chance: found.least,
    warmChance: found["warm-through"],
    unheated: none.least,
  };
}

/** Index of the shortest lead for the target; the longest is enough for it. */
function shortestFor(cold: ColdCase, longest: number, { aim, chance }: Target): number {
  const plannable = (index: number) => cold.chances(index)[aim];
  return finished(narrowPlugIn({ step: SEARCH_STEP, plannable }, chance, longest, -1)) ?? longest;
}

/** Warm through where the longest lead has it; otherwise the least, or near the best there is. */
function targetOf(bare: ByAim<number>, most: ByAim<number>, wanted: number): Target {
  if (bare.least >= wanted) return { aim: "least", chance: wanted };
  if (most["warm-through"] >= wanted) return { aim: "warm-through", chance: wanted };
  return { aim: "least", chance: most.least >= wanted ? wanted : Math.max(0, most.least - NEAR_BEST) };
}

function between(cold: ColdCase, leads: readonly number[], index: number, { aim, chance }: Target): number {
  if (index === 0) return leads[0]!;
  const [below, above] = [index - 1, index].map((i) => cold.chances(i)[aim]);
  const share = above! > below! ? (chance - below!) / (above! - below!) : 1;
  return leads[index - 1]! + Math.min(1, Math.max(0, share)) * (leads[index]! - leads[index - 1]!);
}
