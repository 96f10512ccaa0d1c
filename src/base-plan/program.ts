import type { BinaryProgram, ProgramRow } from "./milp.js";
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

/**
 * The choice as a program, with a column for every option, list by list: one option of each list, no row overfilled, and
 * no settled sum exceeded.
 * @param room what is left in each row
 * @param bounds sums of costs that are settled: the first, the second and so on
 */
export function programOf(
  { stages, weights }: JoinedStages,
  terms: readonly (readonly Term[])[],
  rows: readonly number[],
  room: Float64Array,
  bounds: readonly number[],
): BinaryProgram {
  const options = terms.flat();
  const above = (stage: number) => terms.flatMap((list) => aboveLeast(list, stage));
  const costs = new Array<number>(options.length).fill(0);
  stages.forEach((stage, k) => {
    above(stage).forEach((cost, c) => {
      costs[c] += weights[k] * cost;
    });
  });
  let first = 0;
  const oneOfEach = terms.map(({ length }) => {
    const columns = Array.from({ length }, (_, i) => first + i);
    first += length;
    return { columns, coefficients: columns.map(() => 1), least: 1, most: 1 };
  });
  return {
    costs,
    rows: [
      ...oneOfEach,
      ...rows.map((r) =>
        atMost(
          options.map(({ amounts }) => amounts[r]),
          room[r] + SLACK,
        ),
      ),
      ...bounds.map((bound, stage) => {
        const least = terms.reduce((s, list) => s + Math.min(...list.map(({ costs: c }) => c[stage])), 0);
        return atMost(above(stage), bound - least + 0.5);
      }),
    ],
  };
}

function atMost(all: readonly number[], most: number): ProgramRow {
  const columns: number[] = [];
  all.forEach((amount, c) => {
    if (amount !== 0) columns.push(c);
  });
  return { columns, coefficients: columns.map((c) => all[c]), least: Number.NEGATIVE_INFINITY, most };
}
