import type { Demand } from "./candidate.js";
import { type Costs, compareCosts } from "./costs.js";
import type { BaseLimits, Grid } from "./limits.js";
import type { SolveMilp } from "./milp.js";
import { type JoinedStages, joinedStages, programOf } from "./program.js";
import { type Reduced, reduced, type Term } from "./reduce.js";
import { addLoad, amountsOn, excess, isPossibleAlone, type Load, liveRows, type Option } from "./rows.js";

/** An option with its costs. */
export interface Priced<O extends Option = Option> {
  readonly option: O;
  readonly costs: Costs;
}

export interface Choice {
  readonly status: "proven" | "infeasible" | "stopped";
  /** One option an aircraft, by index into its list; empty unless proven. */
  readonly chosen: readonly number[];
}

/**
 * Chooses one option for every aircraft so that no resource is overfilled in any step and the sums of costs are least,
 * the first before the second and so on. Exact: each stage, or a few of small whole numbers weighed as one, is solved
 * without a gap, and its sum holds for the next; a stage whose sum cannot be less is not solved. Where nobody is in
 * another's way, everyone's own best is the answer and nothing has to be solved.
 */
export async function choose(
  fixed: readonly Demand[],
  lists: readonly (readonly Priced[])[],
  limits: BaseLimits,
  grid: Grid,
  solveMilp: SolveMilp,
  stages: number = lists[0]?.[0]?.costs.length ?? 0,
): Promise<Choice> {
  const possible = possibleAlone(lists, limits, grid);
  if (possible.some((list) => list.length === 0)) return { status: "infeasible", chosen: [] };
  const own = bestTogether(fixed, lists, possible, limits, grid);
  if (own !== undefined) return { status: "proven", chosen: own };
  const open = possible.map((list, a) => list.map((i) => lists[a][i].option));
  const rows = liveRows(fixed, open, limits, grid);
  const taken = amountsOn(rows, fixed, grid);
  const room = Float64Array.from(rows, ({ capacity }, r) => capacity - taken[r]);
  let left: Reduced = {
    terms: possible.map((list, a) =>
      list.map((index, k) => ({
        index,
        costs: lists[a][index].costs,
        amounts: amountsOn(rows, open[a][k].demands, grid),
      })),
    ),
    rows: [...rows.keys()],
  };
  const bounds: number[] = [];
  let picked: readonly Term[] = [];
  while (bounds.length < stages) {
    left = reduced(left.terms, left.rows, room, bounds);
    const joined = joinedStages(left.terms, bounds.length, stages);
    if (picked.length === 0 || !joined.stages.every((s) => sumAt(picked, s) === leastSum(left.terms, s))) {
      const answer = await solved(joined, left, room, bounds, solveMilp);
      if (typeof answer === "string") return { status: answer, chosen: [] };
      picked = answer;
    }
    for (const stage of joined.stages) bounds.push(sumAt(picked, stage));
  }
  return { status: "proven", chosen: picked.map(({ index }) => index) };
}

async function solved(
  joined: JoinedStages,
  { terms, rows }: Reduced,
  room: Float64Array,
  bounds: readonly number[],
  solveMilp: SolveMilp,
): Promise<readonly Term[] | "infeasible" | "stopped"> {
  const answer = await solveMilp(programOf(joined, terms, rows, room, bounds));
  if (answer.status !== "optimal") return answer.status;
  let first = 0;
  const picked = terms.map((list) => {
    const own = answer.values.subarray(first, first + list.length);
    first += list.length;
    return list[own.findIndex((value) => value > 0.5)] as Term | undefined;
  });
  return picked.every((term) => term !== undefined) ? picked : "stopped";
}

/** The best option of each, as if it had the base to itself; undefined where they do not go together. */
export function everyonesBest(
  fixed: readonly Demand[],
  lists: readonly (readonly Priced[])[],
  limits: BaseLimits,
  grid: Grid,
): readonly number[] | undefined {
  return bestTogether(fixed, lists, possibleAlone(lists, limits, grid), limits, grid);
}

function bestTogether(
  fixed: readonly Demand[],
  lists: readonly (readonly Priced[])[],
  possible: readonly (readonly number[])[],
  limits: BaseLimits,
  grid: Grid,
): readonly number[] | undefined {
  if (possible.some((list) => list.length === 0)) return undefined;
  const own = possible.map((list, a) => list.reduce((best, i) => (better(lists[a], i, best) ? i : best)));
  const options = own.map((i, a) => lists[a][i].option);
  return goTogether(fixed, options, limits, grid) ? own : undefined;
}

function possibleAlone(lists: readonly (readonly Priced[])[], limits: BaseLimits, grid: Grid): number[][] {
  return lists.map((list) => [...list.keys()].filter((i) => isPossibleAlone(list[i].option, limits, grid)));
}

function sumAt(picked: readonly Term[], stage: number): number {
  return picked.reduce((sum, { costs }) => sum + costs[stage], 0);
}

/** What everyone's least comes to, whoever is in whose way. */
function leastSum(terms: readonly (readonly Term[])[], stage: number): number {
  return terms.reduce((sum, list) => sum + Math.min(...list.map(({ costs }) => costs[stage])), 0);
}

/** Cheaper, or as cheap and listed before. */
function better(list: readonly Priced[], i: number, best: number): boolean {
  const order = compareCosts(list[i].costs, list[best].costs);
  return order < 0 || (order === 0 && i < best);
}

export function goTogether(
  fixed: readonly Demand[],
  options: readonly Option[],
  limits: BaseLimits,
  grid: Grid,
): boolean {
  const load: Load = new Map();
  addLoad(load, fixed, grid);
  return options.every((option) => {
    if (excess(load, option.demands, limits, grid).length > 0) return false;
    addLoad(load, option.demands, grid);
    return true;
  });
}
