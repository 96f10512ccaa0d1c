import type { Demand } from "./candidate.js";
import type { Priced } from "./choose.js";
import { type Costs, compareCosts } from "./costs.js";
import { type BaseLimits, capacityOf, type Grid, type Resource, resourceKey, timeOf } from "./limits.js";
import type { ParkedAircraft } from "./request.js";
import { addLoad, excess, type Load } from "./rows.js";

/** What stands between an aircraft and a better course. With all of it lifted, the plan as a whole is better. */
export interface Cause {
  /** One limit where lifting it alone helps this aircraft, the others doing what they do; else all that are in the way. */
  readonly limits: readonly Obstacle[];
  /** Index into the aircraft's list: what it would do. */
  readonly instead: number;
}

/** A limit and who takes it up. Times are [s] since the start. */
export interface Obstacle {
  readonly resource: Resource;
  /** When it would be overfilled: first and last. */
  readonly from: number;
  readonly to: number;
  /** Of the resource, there. */
  readonly capacity: number;
  /** What all together would take, at most. */
  readonly wanted: number;
  /** Indices of the aircraft that have it. */
  readonly holders: readonly number[];
  /** Aircraft that stay in a bay for good. */
  readonly parked: readonly ParkedAircraft[];
}

export interface CauseRequest {
  readonly a: number;
  readonly lists: readonly (readonly Priced[])[];
  readonly chosen: readonly number[];
  readonly fixed: readonly Demand[];
  readonly parked: readonly ParkedAircraft[];
  readonly limits: BaseLimits;
  readonly grid: Grid;
}

/** Undefined when the aircraft does the best it can do at all: no other course is less short, less harmful or cheaper. */
export function causeOf(request: CauseRequest): Cause | undefined {
  const { a, lists, chosen, fixed, limits, grid } = request;
  const own = lists[a][chosen[a]].costs;
  const others: Load = new Map();
  addLoad(others, fixed, grid);
  chosen.forEach((i, b) => {
    if (b !== a) addLoad(others, lists[b][i].option.demands, grid);
  });
  const better = lists[a].flatMap(({ option, costs }, index) => {
    if (compareGain(costs, own) >= 0) return [];
    const over = excess(others, option.demands, limits, grid);
    const keys = [...new Set(over.map(({ resource }) => resourceKey(resource)))];
    return [{ index, costs, keys, over }];
  });
  if (better.length === 0) return undefined;
  // One limit alone is the clearest; among those, what brings the most, with the fewest steps in the way.
  const [best] = better.sort(
    (p, q) =>
      Number(p.keys.length > 1) - Number(q.keys.length > 1) ||
      compareCosts(p.costs, q.costs) ||
      p.over.length - q.over.length,
  );
  const resources = new Map(best.over.map(({ resource }) => [resourceKey(resource), resource]));
  return {
    instead: best.index,
    limits: [...resources.values()].map((resource) => obstacle(request, resource, best, others)),
  };
}

/** Effort does not count: nobody asks why they have less to do. */
function compareGain(a: Costs, b: Costs): number {
  for (let i = 0; i < a.length - 1; i++) if (a[i] !== b[i]) return a[i] - b[i];
  return 0;
}

function obstacle(
  { a, lists, chosen, parked, limits, grid }: CauseRequest,
  resource: Resource,
  best: {
    readonly index: number;
    readonly over: readonly { readonly resource: Resource; readonly step: number }[];
  },
  others: Load,
): Obstacle {
  const key = resourceKey(resource);
  const steps = best.over.filter((o) => resourceKey(o.resource) === key).map((o) => o.step);
  const own: Load = new Map();
  addLoad(own, lists[a][best.index].option.demands, grid);
  const takenAt = (k: number) => (own.get(key)?.[k] ?? 0) + (others.get(key)?.[k] ?? 0);
  const holders = chosen.flatMap((i, b) => {
    const takes = lists[b][i].option.demands.some(
      (d) => resourceKey(d.resource) === key && steps.some((k) => k >= d.from && k < d.to),
    );
    return b !== a && takes ? [b] : [];
  });
  const first = Math.min(...steps);
  const last = Math.max(...steps);
  return {
    resource,
    from: timeOf(grid, first),
    to: timeOf(grid, last + 1),
    capacity: capacityOf(limits, grid, resource, first),
    wanted: Math.max(...steps.map(takenAt)),
    holders,
    parked: resource.of === "bay" ? parked : [],
  };
}
