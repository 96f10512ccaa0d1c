import type { Demand } from "./candidate.js";
import { type Costs, compareCosts } from "./costs.js";
import type { BaseLimits, Grid } from "./limits.js";
import type { SolveMilp } from "./milp.js";
import {
  addLoad,
  amountsOn,
  excess,
  isPossibleAlone,
  type Load,
  liveRows,
  type Option,
  type Row,
  SLACK,
} from "./rows.js";

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
 * without a gap, and its sum binds the next; a stage whose sum cannot be less is not solved. Where nobody is in
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
  const { rows, columns, fixedOn } = distinctRows(liveRows(fixed, open, limits, grid), fixed, open);
  const terms = possible.map((list, a) =>
    worthwhile(list.map((i, k) => ({ index: i, costs: lists[a][i].costs, amounts: columns[a][k] }))),
  );
  const bounds: number[] = [];
  let picked: number[] = [];
  for (const joined of joinedStages(terms, stages)) {
    const least = joined.stages.every(
      (stage) => picked.length > 0 && sumAt(terms, picked, stage) === leastSum(terms, stage),
    );
    if (!least) {
      const answer = await solveMilp(programOf(joined, terms, rows, fixedOn, bounds));
      if (answer.status !== "optimal") return { status: answer.status, chosen: [] };
      picked = terms.map((list, a) => list.findIndex((_, i) => (answer.values.get(nameOf(a, i)) ?? 0) > 0.5));
      if (picked.includes(-1)) return { status: "stopped", chosen: [] };
    }
    for (const stage of joined.stages) bounds.push(sumAt(terms, picked, stage));
  }
  return { status: "proven", chosen: picked.map((i, a) => terms[a][i].index) };
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

/** Neighbouring stages solved as one, each weighing more than all that the next can come to. */
interface JoinedStages {
  readonly stages: readonly number[];
  readonly weights: readonly number[];
}

/** Greatest sum of an objective: whole numbers up to it are far from what the solver's tolerances blur. */
const OBJECTIVE_MOST = 50_000;

function joinedStages(terms: readonly (readonly Term[])[], count: number): JoinedStages[] {
  const out: { stages: number[]; weights: number[]; most: number }[] = [];
  for (let stage = 0; stage < count; stage++) {
    const most = terms.reduce((sum, list) => sum + Math.max(...list.map(({ costs }) => costs[stage])), 0);
    const last = out.at(-1);
    const together = last === undefined ? Number.POSITIVE_INFINITY : last.most * (most + 1) + most;
    if (last === undefined || together > OBJECTIVE_MOST) {
      out.push({ stages: [stage], weights: [1], most });
      continue;
    }
    last.weights = [...last.weights.map((weight) => weight * (most + 1)), 1];
    last.stages.push(stage);
    last.most = together;
  }
  return out;
}

function sumAt(terms: readonly (readonly Term[])[], picked: readonly number[], stage: number): number {
  return picked.reduce((sum, i, a) => sum + terms[a][i].costs[stage], 0);
}

/** What everyone's least comes to, whoever is in whose way. */
function leastSum(terms: readonly (readonly Term[])[], stage: number): number {
  return terms.reduce((sum, list) => sum + Math.min(...list.map(({ costs }) => costs[stage])), 0);
}

interface Term {
  readonly index: number;
  readonly costs: Costs;
  readonly amounts: Float64Array;
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

/** Steps in which every option takes the same of a resource say the same thing once. */
function distinctRows(
  rows: readonly Row[],
  fixed: readonly Demand[],
  options: readonly (readonly Option[])[],
): { rows: Row[]; columns: Float64Array[][]; fixedOn: Float64Array } {
  const columns = options.map((list) => list.map(({ demands }) => amountsOn(rows, demands)));
  const fixedOn = amountsOn(rows, fixed);
  const flat = columns.flat();
  const seen = new Set<string>();
  const kept = [...rows.keys()].filter((r) => {
    const key = `${rows[r].capacity - fixedOn[r]}|${flat.map((c) => c[r]).join(",")}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  const pick = (values: Float64Array) => Float64Array.from(kept, (r) => values[r]);
  return {
    rows: kept.map((r) => rows[r]),
    columns: columns.map((list) => list.map(pick)),
    fixedOn: pick(fixedOn),
  };
}

/** Without options that cost no less, and take no less of anything, than another one: its place in any choice is better. */
function worthwhile(terms: readonly Term[]): Term[] {
  const ordered = [...terms].sort((a, b) => compareCosts(a.costs, b.costs) || a.index - b.index);
  const kept: Term[] = [];
  for (const term of ordered) {
    const beaten = kept.some((other) => other.amounts.every((amount, r) => amount <= term.amounts[r]));
    if (!beaten) kept.push(term);
  }
  return kept;
}

function nameOf(a: number, i: number): string {
  return `x${a}_${i}`;
}

function programOf(
  { stages, weights }: JoinedStages,
  terms: readonly (readonly Term[])[],
  rows: readonly Row[],
  fixedOn: Float64Array,
  bounds: readonly number[],
): string {
  const names = terms.map((list, a) => list.map((_, i) => nameOf(a, i)));
  const sum = (coefficient: (term: Term) => number) =>
    terms.flatMap((list, a) =>
      list.flatMap((term, i) => {
        const c = coefficient(term);
        return c === 0 ? [] : [`${c} ${names[a][i]}`];
      }),
    );
  const atMost = (used: readonly string[], most: number) =>
    used.length === 0 ? [] : [`${written(used)} <= ${most}`];
  const constraints = [
    ...names.map((list) => `${written(list)} = 1`),
    ...rows.flatMap((row, r) =>
      atMost(
        sum((t) => t.amounts[r]),
        row.capacity - fixedOn[r] + SLACK,
      ),
    ),
    ...bounds.flatMap((bound, s) =>
      atMost(
        sum((t) => t.costs[s]),
        bound + 0.5,
      ),
    ),
  ];
  const objective = sum((term) =>
    stages.reduce((cost, stage, k) => cost + weights[k] * term.costs[stage], 0),
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
