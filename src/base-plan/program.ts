import type { Term } from "./reduce.js";
import { SLACK } from "./rows.js";

/** Neighbouring stages solved as one, each weighing more than all that the next can come to. */
export interface JoinedStages {
  readonly stages: readonly number[];
  readonly weights: readonly number[];
}

/** Greatest sum of an objective: whole numbers up to it are far from what the solver's tolerances blur. */
const OBJECTIVE_MOST = 50_000;

/** As many of the stages from `first` up to before `end` as can be weighed against each other. */
export function joinedStages(terms: readonly (readonly Term[])[], first: number, end: number): JoinedStages {
  const mostAt = (stage: number) =>
    terms.reduce((sum, list) => sum + Math.max(...aboveLeast(list, stage)), 0);
  let joined = { stages: [first], weights: [1], most: mostAt(first) };
  for (let stage = first + 1; stage < end; stage++) {
    const more = mostAt(stage);
    const most = joined.most * (more + 1) + more;
    if (most > OBJECTIVE_MOST) break;
    const weights = [...joined.weights.map((weight) => weight * (more + 1)), 1];
    joined = { stages: [...joined.stages, stage], weights, most };
  }
  return joined;
}

/** What each option costs more than the list's cheapest: one of them is chosen anyway. */
function aboveLeast(list: readonly Term[], stage: number): number[] {
  const least = Math.min(...list.map(({ costs }) => costs[stage]));
  return list.map(({ costs }) => costs[stage] - least);
}

export function nameOf(a: number, i: number): string {
  return `x${a}_${i}`;
}

/**
 * The choice as a program in the CPLEX LP format: one option of each list, no row overfilled, and no settled sum exceeded.
 * @param room what is left in each row
 * @param bounds sums of costs that are settled: the first, the second and so on
 */
export function programOf(
  { stages, weights }: JoinedStages,
  terms: readonly (readonly Term[])[],
  rows: readonly number[],
  room: Float64Array,
  bounds: readonly number[],
): string {
  const names = terms.map((list, a) => list.map((_, i) => nameOf(a, i)));
  const sum = (coefficientOf: (term: Term, a: number, i: number) => number): string[] => {
    const used: string[] = [];
    terms.forEach((list, a) => {
      list.forEach((term, i) => {
        const c = coefficientOf(term, a, i);
        if (c !== 0) used.push(`${c} ${names[a][i]}`);
      });
    });
    return used;
  };
  const above = Array.from({ length: stages[stages.length - 1] + 1 }, (_, stage) =>
    terms.map((list) => aboveLeast(list, stage)),
  );
  const atMost = (used: readonly string[], most: number) =>
    used.length === 0 ? [] : [`${written(used)} <= ${most}`];
  const constraints = [
    ...names.map((list) => `${written(list)} = 1`),
    ...rows.flatMap((r) =>
      atMost(
        sum(({ amounts }) => amounts[r]),
        room[r] + SLACK,
      ),
    ),
    ...bounds.flatMap((bound, stage) => {
      const least = terms.reduce((s, list) => s + Math.min(...list.map(({ costs }) => costs[stage])), 0);
      return atMost(
        sum((_, a, i) => above[stage][a][i]),
        bound - least + 0.5,
      );
    }),
  ];
  const objective = sum((_, a, i) =>
    weights.reduce((cost, weight, k) => cost + weight * above[stages[k]][a][i], 0),
  );
  return [
    "Minimize",
    ` obj: ${written(objective.length === 0 ? [`0 ${names[0][0]}`] : objective)}`,
    "Subject To",
    ...constraints.map((line, i) => ` c${i}: ${line}`),
    "Binary",
    ...names.flat().map((name) => ` ${name}`),
    "End",
    "",
  ].join("\n");
}

/** A sum over several lines: lines of the format may not be endless. */
function written(terms: readonly string[]): string {
  const lines: string[] = [];
  for (let i = 0; i < terms.length; i += TERMS_A_LINE)
    lines.push(terms.slice(i, i + TERMS_A_LINE).join(" + "));
  return lines.join("\n  + ");
}

const TERMS_A_LINE = 20;
