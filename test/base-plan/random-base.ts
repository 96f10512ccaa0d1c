import { heaterById } from "../../src/aircraft/index.js";
import type { Candidate, Holder } from "../../src/base-plan/candidate.js";
import { goTogether, type Priced } from "../../src/base-plan/choose.js";
import { type Costs, compareCosts, costsOf, sumOfCosts } from "../../src/base-plan/costs.js";
import type { BaseLimits } from "../../src/base-plan/index.js";
import { type Grid, gridOf } from "../../src/base-plan/limits.js";
import { optionsOf, parkedDemands } from "../../src/base-plan/rows.js";
import { createRandom, type Random } from "../../src/numerics/index.js";

/** A small base with courses of made-up worth: everything about sharing is as it is, only the engines are not played. */
export interface RandomBase {
  readonly limits: BaseLimits;
  readonly grid: Grid;
  readonly holders: readonly Holder[];
  readonly lists: readonly (readonly Priced[])[];
  readonly fixed: ReturnType<typeof parkedDemands>;
  readonly parked: readonly { readonly id: string; readonly name: string }[];
}

const STEP = 3600;
const STEPS = 12;

export function randomBase(seed: number): RandomBase {
  const random = createRandom(seed);
  const int = (from: number, to: number) => from + Math.floor((to - from + 1) * random.uniform());
  const chance = (share: number) => random.uniform() < share;
  const grid = gridOf(0, STEPS * STEP, STEP);
  const limits = randomLimits(int, chance);
  const parked = limits.hangar !== undefined && chance(0.2) ? [{ id: "parked", name: "Parked" }] : [];
  const count = int(1, 3);
  const holders = Array.from({ length: count }, (): Holder => {
    const unplug = STEP * int(6, 11);
    return {
      switched: chance(0.5),
      connected: undefined,
      unplug,
      exit: unplug,
      heaters: new Map([
        ["own", { ...heaterById("sump-pad-220"), id: "own", attended: chance(0.1) }],
        ["cart", { ...heaterById("ducted-electric-1500"), id: "cart" }],
      ]),
    };
  });
  const lists = holders.map((holder) => {
    const candidates = [
      nothing(random),
      ...Array.from({ length: int(1, 6) }, () => randomCandidate(random, holder, limits)),
    ];
    return optionsOf(candidates, holder, limits, grid).map((option) => ({
      option,
      costs: costsOf(option.candidate, holder, limits, grid, {
        count,
        told: undefined,
        isNight: (t) => t < 6 * STEP,
      }),
    }));
  });
  return { limits, grid, holders, lists, parked, fixed: parkedDemands(parked, grid) };
}

function randomLimits(int: (a: number, b: number) => number, chance: (p: number) => boolean): BaseLimits {
  const circuits = Array.from({ length: int(1, 2) }, (_, i) => ({
    id: `c${i}`,
    name: `Circuit ${i}`,
    breaker: 16,
    currentMost: [0.96, 1.2, 2, 7.5, 8][int(0, 4)],
    voltage: 230,
    outlets: int(1, 2),
    generator: chance(0.2),
    available: chance(0.2) ? [{ from: int(0, 4) * STEP, to: int(6, 12) * STEP }] : undefined,
  }));
  return {
    circuits,
    carts: [{ id: "cart", heater: heaterById("ducted-electric-1500"), count: 1, moveTime: STEP / 2 }],
    hangar: chance(0.6) ? { bays: 1, moveTime: STEP / 3, movePeople: int(1, 2) } : undefined,
    people: chance(0.5)
      ? undefined
      : [
          { from: 0, to: int(1, 5) * STEP, count: int(1, 2) },
          { from: int(4, 7) * STEP, to: 12 * STEP, count: 1 },
        ],
  };
}

function nothing(random: Random): Candidate {
  const chance = 0.6 * random.uniform();
  return {
    circuit: undefined,
    cart: undefined,
    heaters: ["own"],
    blocks: [],
    stay: undefined,
    givesUpOutlet: false,
    chance,
    missed: true,
    missesWarm: true,
    harm: 0,
    energy: 0,
  };
}

function randomCandidate(random: Random, holder: Holder, limits: BaseLimits): Candidate {
  const int = (from: number, to: number) => from + Math.floor((to - from + 1) * random.uniform());
  const last = holder.unplug / STEP;
  const cart = random.uniform() < 0.25 ? 0 : undefined;
  const from = int(0, last - 2);
  const to = random.uniform() < 0.5 ? last : int(from + 1, last - 1);
  const again =
    to < last - 1 && random.uniform() < 0.4 ? [{ from: holder.unplug - STEP, to: holder.unplug }] : [];
  const stay =
    limits.hangar !== undefined && random.uniform() < 0.3
      ? { from: int(0, 4) * STEP, to: holder.exit }
      : undefined;
  const chance = random.uniform();
  const blocks = [{ from: from * STEP, to: to * STEP }, ...again];
  return {
    circuit: int(0, limits.circuits.length - 1),
    cart,
    heaters: cart === undefined ? ["own"] : ["own", "cart"],
    blocks,
    stay,
    givesUpOutlet: holder.switched && random.uniform() < 0.3,
    chance,
    missed: chance < 0.4,
    missesWarm: chance < 0.7,
    harm: blocks.reduce((sum, b) => sum + b.to - b.from, 0) * random.uniform(),
    energy: 3.6e6 * random.uniform(),
  };
}

/** The least sums of costs over every way to take one course an aircraft; undefined when none goes together. */
export function bruteForce(
  { fixed, grid }: Pick<RandomBase, "fixed" | "grid">,
  lists: readonly (readonly Priced[])[],
  limits: BaseLimits,
): Costs | undefined {
  let best: Costs | undefined;
  const walk = (picked: readonly Priced[]) => {
    const next = lists[picked.length];
    if (next !== undefined) {
      for (const priced of next) walk([...picked, priced]);
      return;
    }
    const options = picked.map((p) => p.option);
    if (!goTogether(fixed, options, limits, grid)) return;
    const costs = sumOfCosts(picked.map((p) => p.costs));
    if (best === undefined || compareCosts(costs, best) < 0) best = costs;
  };
  walk([]);
  return best;
}
