import fc from "fast-check";
import { expect, test } from "vitest";
import { choose, goTogether } from "../../src/base-plan/choose.js";
import { compareCosts, sumOfCosts } from "../../src/base-plan/costs.js";
import { causeOf } from "../../src/base-plan/explain.js";
import type { Obstacle } from "../../src/base-plan/index.js";
import { solveMilp } from "../../src/node/index.js";
import { bruteForce, type RandomBase, randomBase } from "./random-base.js";

const CASES = { seed: 20260114, numRuns: 300 };
const aBase = fc.integer({ min: 1, max: 2 ** 30 });

function chosenOf(base: RandomBase) {
  return choose(base.fixed, base.lists, base.limits, base.grid, solveMilp);
}

test("the choice is as good as the best of all combinations, and keeps every limit", async () => {
  const seen = { solved: 0, contested: 0, missed: 0 };
  await fc.assert(
    fc.asyncProperty(aBase, async (seed) => {
      const base = randomBase(seed);
      const best = bruteForce(base, base.lists, base.limits);
      const choice = await chosenOf(base);
      if (best === undefined) {
        expect(choice.status).toBe("infeasible");
        return;
      }
      expect(choice.status).toBe("proven");
      const picked = choice.chosen.map((i, a) => base.lists[a][i]);
      expect(sumOfCosts(picked.map((p) => p.costs))).toEqual(best);
      expect(
        goTogether(
          base.fixed,
          picked.map((p) => p.option),
          base.limits,
          base.grid,
        ),
      ).toBe(true);
      const ideal = base.lists.map((list) =>
        list.reduce((a, b) => (compareCosts(b.costs, a.costs) < 0 ? b : a)),
      );
      seen.solved++;
      if (compareCosts(sumOfCosts(ideal.map((p) => p.costs)), best) !== 0) seen.contested++;
      if (picked.some((p) => p.option.candidate.missed)) seen.missed++;
    }),
    CASES,
  );
  // The cases are worth something: in most of them the limits bind, and in many something is missed.
  expect(seen.solved).toBeGreaterThan(280);
  expect(seen.contested).toBeGreaterThan(150);
  expect(seen.missed).toBeGreaterThan(80);
}, 240_000);

test("what is named as the cause is the true one: with it lifted, the best plan is better", async () => {
  let causes = 0;
  await fc.assert(
    fc.asyncProperty(aBase, async (seed) => {
      const base = randomBase(seed);
      const { chosen, status } = await chosenOf(base);
      if (status !== "proven") return;
      const before = sumOfCosts(chosen.map((i, a) => base.lists[a][i].costs));
      for (const a of chosen.keys()) {
        const cause = causeOf({ a, chosen, ...base });
        if (cause === undefined) {
          const own = base.lists[a][chosen[a]].costs;
          const gains = base.lists[a].filter(
            ({ costs }) =>
              compareCosts([...costs.slice(0, 5), 0] as never, [...own.slice(0, 5), 0] as never) < 0,
          );
          expect(gains).toEqual([]);
          continue;
        }
        causes++;
        const lifted = withoutLimits(base, cause.limits);
        const after = bruteForce(lifted, lifted.lists, base.limits);
        expect(after).toBeDefined();
        if (after !== undefined) expect(compareCosts(after, before)).toBeLessThan(0);
      }
    }),
    { ...CASES, numRuns: 150 },
  );
  expect(causes).toBeGreaterThan(60);
}, 240_000);

/** The base with as much of the named limits as anybody could want: what is taken of them no longer counts. */
function withoutLimits(base: RandomBase, named: readonly Obstacle[]): RandomBase {
  const isNamed = ({ of, index }: Obstacle["resource"]) =>
    named.some(({ resource }) => resource.of === of && resource.index === index);
  return {
    ...base,
    fixed: base.fixed.filter((d) => !isNamed(d.resource)),
    lists: base.lists.map((list) =>
      list.map(({ costs, option }) => ({
        costs,
        option: { ...option, demands: option.demands.filter((d) => !isNamed(d.resource)) },
      })),
    ),
  };
}

test("nothing goes together with what is in use beyond the limits for good: said, not thrown", async () => {
  const base = randomBase(1);
  const limits = { ...base.limits, hangar: { bays: 1, moveTime: 600, movePeople: 1 } };
  const bay = { resource: { of: "bay" as const, index: 0 }, from: 0, to: 12, amount: 1 };
  const inside = base.lists.map((list) =>
    list.map(({ costs, option }) => ({ costs, option: { ...option, demands: [bay] } })),
  );
  const choice = await choose([bay], inside, limits, base.grid, solveMilp);
  expect(choice).toEqual({ status: "infeasible", chosen: [] });
});
