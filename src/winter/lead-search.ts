import type { Aim } from "../readiness/index.js";
import type { LeadCases } from "./lead-cases.js";
import type { Readiness } from "./readiness-count.js";

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

interface Target {
  readonly aim: Aim;
  readonly chance: number;
}

/**
 * The least lead for a wanted chance in all cases at once, by halving; straight between the two leads tried around it, never
 * below the shortest. Chances are taken to grow with the lead; leads that break a ceiling in the middle aircraft are no
 * candidates.
 * @param leads [s] ascending, those of `cases`
 */
export function leastLeads(cases: LeadCases, leads: readonly number[], wanted: number): LeadFound[] {
  const count = cases.groups.groups;
  const all = (value: number) => new Array<number>(count).fill(value);
  const none = cases.readinessAt(all(-1));
  const last = none.map((_, c) => longestCool(cases, c, leads.length - 1));
  const most = cases.readinessAt(last);
  const targets = none.map((bare, c) => targetOf(bare, most[c]!, wanted));
  const has = (ready: Readiness, { aim, chance }: Target) =>
    (aim === "least" ? ready.chance : ready.warmChance) >= chance;
  const low = all(-1);
  const high = last.map((at, c) => (bareEnough(none[c]!, targets[c]!, wanted) ? -1 : at));
  while (low.some((from, c) => high[c]! - from > 1)) {
    const middle = low.map((from, c) => (high[c]! - from > 1 ? (from + high[c]!) >> 1 : high[c]!));
    cases.readinessAt(middle).forEach((ready, c) => {
      if (high[c]! - low[c]! <= 1) return;
      if (has(ready, targets[c]!)) high[c] = middle[c]!;
      else low[c] = middle[c]!;
    });
  }
  const found = cases.readinessAt(high);
  const below = cases.readinessAt(low);
  return high.map((index, c) => {
    const { chance, warmChance } = found[c]!;
    const unheated = none[c]!.chance;
    const status = unheated >= wanted ? "not-required" : chance >= wanted ? "ready" : "not-reached";
    const { aim } = targets[c]!;
    const common = { status, aim, index, chance, warmChance, unheated } as const;
    if (index < 0) return { ...common, lead: 0 };
    if (low[c]! < 0) return { ...common, lead: leads[index]! };
    return { ...common, lead: between(leads, low[c]!, index, targets[c]!, below[c]!, found[c]!) };
  });

  function bareEnough(bare: Readiness, target: Target, enough: number): boolean {
    return bare.chance >= enough || has(bare, target);
  }
}

/** The longest lead that breaks no ceiling; -1 where every one does. */
function longestCool(cases: LeadCases, c: number, last: number): number {
  for (let index = last; index >= 0; index--) if (!cases.isTooHot(c, index)) return index;
  return -1;
}

/** Warm through where the longest lead has it; otherwise the least, or near the best there is. */
function targetOf(bare: Readiness, most: Readiness, wanted: number): Target {
  if (bare.chance >= wanted) return { aim: "least", chance: wanted };
  if (most.warmChance >= wanted) return { aim: "warm-through", chance: wanted };
  return { aim: "least", chance: most.chance >= wanted ? wanted : Math.max(0, most.chance - NEAR_BEST) };
}

function between(
  leads: readonly number[],
  low: number,
  high: number,
  { aim, chance }: Target,
  below: Readiness,
  above: Readiness,
): number {
  const of = (ready: Readiness) => (aim === "least" ? ready.chance : ready.warmChance);
  const share = of(above) > of(below) ? (chance - of(below)) / (of(above) - of(below)) : 1;
  return leads[low]! + Math.min(1, Math.max(0, share)) * (leads[high]! - leads[low]!);
}
