import type { Candidate, Course, Holder } from "./candidate.js";
import { choose, type Priced } from "./choose.js";
import type { BaseLimits, Grid } from "./limits.js";
import type { BaseRequest } from "./request.js";
import { optionsOf, parkedDemands } from "./rows.js";

/** A limit, or two, that was lifted to see what comes of it. */
export interface Lift {
  readonly changes: readonly LimitChange[];
  /** Indices of the aircraft that are missed now and would not be. */
  readonly rescues: readonly {
    readonly aircraft: number;
    readonly chance: number;
    readonly course: Course;
  }[];
}

export type LimitChange =
  | { readonly of: "outlet"; readonly circuit: number; readonly to: number }
  | { readonly of: "breaker"; readonly circuit: number; readonly to: number }
  | { readonly of: "bay"; readonly to: number }
  | { readonly of: "cart"; readonly cart: number; readonly to: number }
  | { readonly of: "people" }
  | { readonly of: "generator-hours"; readonly circuit: number };

export interface LiftRequest {
  readonly lists: readonly (readonly Priced[])[];
  readonly chosen: readonly number[];
  readonly request: BaseRequest;
  readonly grid: Grid;
  readonly holders: readonly Holder[];
  readonly onTry: () => void;
}

/** [A] the usual sizes of circuit breakers: IEC 60898-1 preferred ratings, from memory; 15, 30 as in North America. */
const BREAKERS = [6, 10, 13, 15, 16, 20, 25, 30, 32, 40, 50, 63, 80, 100, 125];

/**
 * Lifts each limit by the next size up, one at a time and, where none alone helps, two at a time, and chooses anew:
 * what makes a missed departure possible is listed, with its chance as read between courses played.
 */
export async function triedLifts(work: LiftRequest): Promise<Lift[]> {
  const single = liftable(work.request.limits).map((change) => [change]);
  const found = await tried(work, single);
  if (found.length > 0) return found;
  const pairs = single.flatMap(([a], i) => single.slice(i + 1).map(([b]) => [a, b]));
  return tried(work, pairs);
}

async function tried(work: LiftRequest, all: readonly (readonly LimitChange[])[]): Promise<Lift[]> {
  const lifts: Lift[] = [];
  for (const changes of all) {
    work.onTry();
    const rescues = await rescuedBy(work, changes);
    if (rescues.length > 0) lifts.push({ changes, rescues });
  }
  return lifts.sort((a, b) => b.rescues.length - a.rescues.length);
}

async function rescuedBy(
  { lists, chosen, request, grid, holders }: LiftRequest,
  changes: readonly LimitChange[],
): Promise<Lift["rescues"]> {
  const limits = changes.reduce(lifted, request.limits);
  const again = lists.map((list, a) => {
    const options = optionsOf<Candidate>(
      list.map((p) => p.option.candidate),
      holders[a],
      limits,
      grid,
    );
    return list.map((priced, i) => ({ costs: priced.costs, option: options[i] }));
  });
  const choice = await choose(parkedDemands(request.parked, grid), again, limits, grid, request.solveMilp, 1);
  if (choice.status !== "proven") return [];
  const missed = (list: readonly Priced[], i: number) => list[i].option.candidate.missed;
  const count = (picks: readonly number[]) => picks.filter((i, a) => missed(lists[a], i)).length;
  if (count(choice.chosen) >= count(chosen)) return [];
  return choice.chosen.flatMap((i, a) => {
    if (missed(lists[a], i) || !missed(lists[a], chosen[a])) return [];
    const course = lists[a][i].option.candidate;
    return [{ aircraft: a, chance: course.chance, course }];
  });
}

function liftable({ circuits, carts, hangar, people }: BaseLimits): LimitChange[] {
  return [
    ...circuits.flatMap((circuit, index): LimitChange[] => {
      const next = BREAKERS.find((size) => size > circuit.breaker);
      return [
        { of: "outlet", circuit: index, to: circuit.outlets + 1 },
        ...(next === undefined ? [] : [{ of: "breaker" as const, circuit: index, to: next }]),
        ...(circuit.available === undefined ? [] : [{ of: "generator-hours" as const, circuit: index }]),
      ];
    }),
    ...(hangar === undefined ? [] : [{ of: "bay" as const, to: hangar.bays + 1 }]),
    ...carts.map((cart, index) => ({ of: "cart" as const, cart: index, to: cart.count + 1 })),
    ...(people === undefined ? [] : [{ of: "people" as const }]),
  ];
}

/** The limits with one of them lifted. */
function lifted(limits: BaseLimits, change: LimitChange): BaseLimits {
  const circuits = (index: number, part: Partial<BaseLimits["circuits"][number]>) => ({
    ...limits,
    circuits: limits.circuits.map((c, i) => (i === index ? { ...c, ...part } : c)),
  });
  switch (change.of) {
    case "outlet":
      return circuits(change.circuit, { outlets: change.to });
    case "breaker": {
      const { breaker, currentMost } = limits.circuits[change.circuit];
      return circuits(change.circuit, {
        breaker: change.to,
        currentMost: (currentMost / breaker) * change.to,
      });
    }
    case "generator-hours":
      return circuits(change.circuit, { available: undefined });
    case "bay":
      return limits.hangar === undefined
        ? limits
        : { ...limits, hangar: { ...limits.hangar, bays: change.to } };
    case "cart":
      return {
        ...limits,
        carts: limits.carts.map((c, i) => (i === change.cart ? { ...c, count: change.to } : c)),
      };
    case "people":
      return { ...limits, people: undefined };
  }
}
