import fc from "fast-check";
import { expect, test } from "vitest";
import type { Costs } from "../../src/base-plan/costs.js";
import { compareCosts, sumOfCosts } from "../../src/base-plan/costs.js";
import { reduced, type Term } from "../../src/base-plan/reduce.js";

const ROWS = 4;
const amounts = fc.array(fc.integer({ min: 0, max: 2 }), { minLength: ROWS, maxLength: ROWS });
const upTo = (max: number) => fc.integer({ min: 0, max });
const costs = fc.tuple(upTo(2), upTo(1), upTo(1), upTo(3), upTo(3), upTo(2));
const list = fc.array(fc.record({ costs, amounts }), { minLength: 1, maxLength: 5 });
const program = fc.record({
  lists: fc.array(list, { minLength: 1, maxLength: 3 }),
  room: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: ROWS, maxLength: ROWS }),
});

/** The least sum of costs over every combination that overfills none of the rows; undefined where none is possible. */
function best(
  terms: readonly (readonly Term[])[],
  rows: readonly number[],
  room: Float64Array,
): Costs | undefined {
  const all = terms.reduce<Term[][]>(
    (partial, options) => partial.flatMap((chosen) => options.map((term) => [...chosen, term])),
    [[]],
  );
  const possible = all.filter((chosen) =>
    rows.every((r) => chosen.reduce((sum, term) => sum + term.amounts[r], 0) <= room[r]),
  );
  const sums = possible.map((chosen) => sumOfCosts(chosen.map((term) => term.costs)));
  return sums.length === 0 ? undefined : sums.reduce((a, b) => (compareCosts(b, a) < 0 ? b : a));
}

test("what is left of a program has the same best choice, whatever sums of it are settled", () => {
  const seen = { rows: 0, options: 0 };
  fc.assert(
    fc.property(program, ({ lists, room: left }) => {
      const room = Float64Array.from(left);
      const rows = [...room.keys()];
      const terms = lists.map((options) =>
        options.map((o, index): Term => ({ index, costs: o.costs, amounts: Float64Array.from(o.amounts) })),
      );
      const least = best(terms, rows, room);
      for (let settled = 0; settled <= 6; settled++) {
        if (settled > 0 && least === undefined) break;
        const small = reduced(terms, rows, room, least?.slice(0, settled) ?? []);
        expect(best(small.terms, small.rows, room)).toEqual(least);
        seen.rows += rows.length - small.rows.length;
        seen.options += terms.flat().length - small.terms.flat().length;
      }
    }),
    { seed: 20261127, numRuns: 1000 },
  );
  expect(seen.rows).toBeGreaterThan(5000);
  expect(seen.options).toBeGreaterThan(5000);
});
