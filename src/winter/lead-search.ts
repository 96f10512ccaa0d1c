import type { LeadCases } from "./lead-cases.js";

/** The least lead that makes a case ready with the wanted chance, or the least that comes near the best there is. */
export interface LeadFound {
  /** [s] from plug-in to departure; 0: no heat needed. */
  readonly lead: number;
  /** Chance [0..1] at the tried lead next above it. */
  readonly chance: number;
  /** Index of that lead among those tried; -1: no heat. */
  readonly index: number;
  readonly reached: boolean;
  /** Heating that long breaks a ceiling in the middle estimate. */
  readonly tooHot: boolean;
}

/** What is lost against the longest lead for a shorter one, where no lead is enough; project judgement. */
const NEAR_BEST = 0.03;

/**
 * The least lead for a wanted chance in all cases at once, by halving; straight between the two leads tried around it.
 * Chances are taken to grow with the lead, which heating beyond a ceiling does not: such a case is marked.
 * @param leads [s] ascending, those of `cases`
 */
export function leastLeads(cases: LeadCases, leads: readonly number[], wanted: number): LeadFound[] {
  const count = cases.groups.groups;
  const all = (value: number) => new Array<number>(count).fill(value);
  const last = leads.length - 1;
  const none = cases.readinessAt(all(-1)).map(({ chance }) => chance);
  const most = cases.readinessAt(all(last)).map(({ chance }) => chance);
  const targets = most.map((chance) => (chance >= wanted ? wanted : Math.max(0, chance - NEAR_BEST)));
  const low = all(-1);
  const high = all(last);
  const chances = new Map(none.map((chance, c) => [`${c}:-1`, chance]));
  const note = (indices: readonly number[]) => {
    cases.readinessAt(indices).forEach(({ chance }, c) => {
      chances.set(`${c}:${indices[c]}`, chance);
    });
  };
  note(all(last));
  while (low.some((from, c) => high[c]! - from > 1)) {
    const middle = low.map((from, c) => (high[c]! - from > 1 ? (from + high[c]!) >> 1 : high[c]!));
    note(middle);
    middle.forEach((at, c) => {
      if (high[c]! - low[c]! <= 1) return;
      if (chances.get(`${c}:${at}`)! >= targets[c]!) high[c] = at;
      else low[c] = at;
    });
  }
  const indices = high.map((at, c) => (none[c]! >= targets[c]! ? -1 : at));
  const verdicts = cases.readinessAt(indices);
  return indices.map((index, c) => {
    const { chance, tooHot } = verdicts[c]!;
    const reached = chance >= wanted;
    if (index < 0) return { lead: 0, chance, index, reached, tooHot };
    const before = low[c]!;
    const lower = chances.get(`${c}:${before}`)!;
    const from = before < 0 ? Math.min(...leads) / 2 : leads[before]!;
    const share = chance > lower ? (targets[c]! - lower) / (chance - lower) : 1;
    const lead = from + Math.min(1, Math.max(0, share)) * (leads[index]! - from);
    return { lead, chance, index, reached, tooHot };
  });
}
