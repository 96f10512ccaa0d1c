import type { Demand } from "./candidate.js";
import type { Contender, List } from "./contender.js";
import { bestOfRoom } from "./fill.js";
import type { BaseLimits, Grid } from "./limits.js";
import { addLoad, excess, type Load } from "./rows.js";

/** The choice, and what to choose among. */
export interface Filled {
  readonly lists: readonly List[];
  readonly chosen: readonly number[];
}

export interface FillRequest extends Filled {
  readonly contenders: readonly Contender[];
  readonly fixed: readonly Demand[];
  readonly limits: BaseLimits;
  readonly grid: Grid;
  readonly progress: () => void;
}

/** Times that everyone is looked at anew. */
const FILL_ROUNDS = 3;
/** Aircraft that may be asked to give way to one that is missed. */
const MOST_GIVING_WAY = 3;

/**
 * Gives what is free to those that are missed, the earliest departure first, until nobody gains any more. The best that
 * each could do with the base to itself comes into its list too, so that what stands in its way is known.
 */
export function filledUp(request: FillRequest): Filled {
  const { contenders, lists, chosen, fixed, limits, grid, progress } = request;
  const all = lists.map((list) => [...list]);
  const picks = [...chosen];
  const optionOf = (a: number) => all[a][picks[a]].option;
  const courseOf = (a: number) => contenders[a].played(optionOf(a).candidate).course;
  const missed = [...contenders.keys()]
    .filter((a) => contenders[a].played(optionOf(a).candidate).missed)
    .sort((a, b) => contenders[a].holder.unplug - contenders[b].holder.unplug);

  /** What all take together, but for some. */
  function loadWithout(...left: readonly number[]): Load {
    const load: Load = new Map();
    addLoad(load, fixed, grid);
    for (const b of picks.keys()) if (!left.includes(b)) addLoad(load, optionOf(b).demands, grid);
    return load;
  }

  function fill(a: number): boolean {
    progress();
    const better = bestOfRoom(contenders[a], courseOf(a), { limits, grid, others: loadWithout(a) });
    if (better === undefined) return false;
    picks[a] = all[a].push(contenders[a].priced(better)) - 1;
    return true;
  }

  function fillAll(): void {
    for (let round = 0; round < FILL_ROUNDS; round++) if (!missed.map(fill).some((gained) => gained)) return;
  }

  /** With the base to itself; undefined where that is no better. */
  function alone(a: number): List[number] | undefined {
    const others: Load = new Map();
    addLoad(others, fixed, grid);
    const best = bestOfRoom(contenders[a], courseOf(a), { limits, grid, others });
    return best === undefined ? undefined : contenders[a].priced(best);
  }

  /** Whoever is in the way of a missed aircraft gets what that leaves, where both together are then less short. */
  function giveWay(a: number, ideal: List[number]): boolean {
    const inTheWay = [...picks.keys()].filter((b) => {
      const { cart, stay } = courseOf(b);
      const beside: Load = new Map();
      addLoad(beside, optionOf(b).demands, grid);
      const canMove = cart === undefined && stay?.from === undefined;
      return b !== a && canMove && excess(beside, ideal.option.demands, limits, grid).length > 0;
    });
    return inTheWay.slice(0, MOST_GIVING_WAY).some((b) => {
      const others = loadWithout(a, b);
      if (excess(others, ideal.option.demands, limits, grid).length > 0) return false;
      addLoad(others, ideal.option.demands, grid);
      const idle = { ...courseOf(b), blocks: [], circuit: undefined, givesUpOutlet: false };
      const left = bestOfRoom(contenders[b], idle, { limits, grid, others });
      progress();
      if (left === undefined) return false;
      const given = contenders[b].priced(left);
      const before = all[a][picks[a]].costs[0] + all[b][picks[b]].costs[0];
      if (ideal.costs[0] + given.costs[0] >= before) return false;
      picks[a] = all[a].push(ideal) - 1;
      picks[b] = all[b].push(given) - 1;
      return true;
    });
  }

  fillAll();
  const ideals = missed.map((a) => ({ a, ideal: alone(a) }));
  for (const { a, ideal } of ideals) {
    if (ideal === undefined) continue;
    all[a].push(ideal);
    if (!ideal.option.candidate.missed && giveWay(a, ideal)) fillAll();
  }
  return { lists: all, chosen: picks };
}
