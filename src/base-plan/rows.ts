import { type Candidate, type Demand, demandsOf, type Holder } from "./candidate.js";
import { type BaseLimits, capacityOf, type Grid, type Resource, resourceKey } from "./limits.js";
import type { ParkedAircraft } from "./request.js";

/** One resource in one step, and what each candidate takes of it. */
export interface Row {
  readonly resource: Resource;
  readonly key: string;
  readonly step: number;
  readonly capacity: number;
}

/** A candidate as the choice among all sees it. */
export interface Option<C extends Candidate = Candidate> {
  readonly candidate: C;
  readonly demands: readonly Demand[];
}

/** Amounts of resource and step, added up. */
export type Load = Map<string, Float64Array>;

/** Room for rounding in sums of amperes. */
export const SLACK = 1e-9;

export function optionsOf<C extends Candidate>(
  candidates: readonly C[],
  holder: Holder,
  limits: BaseLimits,
  grid: Grid,
): Option<C>[] {
  return candidates.map((candidate) => ({
    candidate,
    demands: demandsOf(candidate, holder, limits, grid),
  }));
}

/** Bays that are taken for good. */
export function parkedDemands(parked: readonly ParkedAircraft[], grid: Grid): Demand[] {
  return parked.map(() => ({ resource: { of: "bay", index: 0 }, from: 0, to: grid.steps, amount: 1 }));
}

export function addLoad(load: Load, demands: readonly Demand[], grid: Grid): void {
  for (const { resource, from, to, amount } of demands) {
    const key = resourceKey(resource);
    const row = load.get(key) ?? new Float64Array(grid.steps);
    load.set(key, row);
    for (let k = from; k < to; k++) row[k] += amount;
  }
}

const loads = new WeakMap<readonly Demand[], Load>();

/** What demands come to, added up once: they are asked for in every round. */
function loadOf(demands: readonly Demand[], grid: Grid): Load {
  const known = loads.get(demands);
  if (known !== undefined) return known;
  const load: Load = new Map();
  addLoad(load, demands, grid);
  loads.set(demands, load);
  return load;
}

/** Where a load and demands on top of it are more than there is. */
export function excess(
  load: Load,
  demands: readonly Demand[],
  limits: BaseLimits,
  grid: Grid,
): { readonly resource: Resource; readonly step: number }[] {
  const own = loadOf(demands, grid);
  const resources = new Map(demands.map(({ resource }) => [resourceKey(resource), resource]));
  const beyond: { readonly resource: Resource; readonly step: number }[] = [];
  for (const [key, row] of own) {
    const resource = resources.get(key);
    if (resource === undefined) continue;
    const others = load.get(key);
    for (let step = 0; step < row.length; step++) {
      if (!(row[step] > 0)) continue;
      if (row[step] + (others?.[step] ?? 0) > capacityOf(limits, grid, resource, step) + SLACK)
        beyond.push({ resource, step });
    }
  }
  return beyond;
}

const alone = new WeakMap<readonly Demand[], { readonly limits: BaseLimits; readonly possible: boolean }>();

/** Whether a candidate could be had if nobody else were there. */
export function isPossibleAlone({ demands }: Option, limits: BaseLimits, grid: Grid): boolean {
  const known = alone.get(demands);
  if (known?.limits === limits) return known.possible;
  const possible = excess(new Map(), demands, limits, grid).length === 0;
  alone.set(demands, { limits, possible });
  return possible;
}

/**
 * Rows that some choice of options, one an aircraft, would overfill; what no choice can overfill limits nothing. Between two
 * steps in which a demand begins loads only fall: those steps tell all, and those in which there is less than before.
 */
export function liveRows(
  fixed: readonly Demand[],
  options: readonly (readonly Option[])[],
  limits: BaseLimits,
  grid: Grid,
): Row[] {
  const most: Load = new Map();
  const begun = new Map<string, { readonly resource: Resource; readonly steps: Set<number> }>();
  const begin = ({ resource, from }: Demand) => {
    const key = resourceKey(resource);
    const known = begun.get(key) ?? { resource, steps: new Set() };
    begun.set(key, known);
    known.steps.add(from);
  };
  addLoad(most, fixed, grid);
  for (const list of options) {
    const own: Load = new Map();
    for (const { demands } of list) {
      demands.forEach(begin);
      for (const [key, row] of loadOf(demands, grid)) {
        const best = own.get(key) ?? new Float64Array(grid.steps);
        own.set(key, best);
        for (let k = 0; k < row.length; k++) if (row[k] > best[k]) best[k] = row[k];
      }
    }
    for (const [key, row] of own) {
      const sum = most.get(key) ?? new Float64Array(grid.steps);
      most.set(key, sum);
      for (let k = 0; k < row.length; k++) sum[k] += row[k];
    }
  }
  for (const { resource, from } of fixed) begun.get(resourceKey(resource))?.steps.add(from);
  return [...begun].flatMap(([key, { resource, steps }]) => {
    const capacityAt = (step: number) => capacityOf(limits, grid, resource, step);
    const row = most.get(key) ?? new Float64Array(grid.steps);
    return [...row.keys()].flatMap((step) => {
      const capacity = capacityAt(step);
      const tells = steps.has(step) || (step > 0 && capacity < capacityAt(step - 1));
      return tells && row[step] > capacity + SLACK ? [{ resource, key, step, capacity }] : [];
    });
  });
}

/** What demands take of each row. */
export function amountsOn(rows: readonly Row[], demands: readonly Demand[], grid: Grid): Float64Array {
  const amounts = new Float64Array(rows.length);
  const load = loadOf(demands, grid);
  if (load.size === 0) return amounts;
  let [resource, own] = [rows[0]?.key, load.get(rows[0]?.key)];
  rows.forEach(({ key, step }, r) => {
    if (key !== resource) [resource, own] = [key, load.get(key)];
    if (own !== undefined) amounts[r] = own[step];
  });
  return amounts;
}
