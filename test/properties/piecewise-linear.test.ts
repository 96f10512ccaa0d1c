import fc from "fast-check";
import { expect, test } from "vitest";
import { interpolateTable, type Table } from "../../src/properties/piecewise-linear.js";

const TABLE: Table = [
  [-1, 4],
  [0, 2],
  [3, 2],
  [5, -6],
];

test("hits every point, runs straight between them and holds the ends", () => {
  for (const [x, y] of TABLE) expect(interpolateTable(TABLE, x)).toBe(y);
  expect(interpolateTable(TABLE, -0.5)).toBe(3);
  expect(interpolateTable(TABLE, 4)).toBe(-2);
  expect(interpolateTable(TABLE, -100)).toBe(4);
  expect(interpolateTable(TABLE, 100)).toBe(-6);
});

test("is monotone where the table is, and inverse on a strictly monotone one", () => {
  const rising = fc
    .uniqueArray(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 8 })
    .chain((xs) => {
      const sorted = xs.toSorted((a, b) => a - b);
      return fc
        .array(fc.integer({ min: 1, max: 50 }), { minLength: sorted.length, maxLength: sorted.length })
        .map((steps) => {
          let y = 0;
          return sorted.map((x, i) => {
            y += steps[i]!;
            return [x, y] as const;
          });
        });
    });
  fc.assert(
    fc.property(rising, fc.double({ min: 0, max: 1, noNaN: true }), (table, share) => {
      const low = table[0]![0];
      const high = table.at(-1)![0];
      const x = low + share * (high - low);
      const y = interpolateTable(table, x);
      expect(interpolateTable(table, x + 1)).toBeGreaterThanOrEqual(y);
      const inverse = table.map(([from, to]) => [to, from] as const);
      expect(interpolateTable(inverse, y)).toBeCloseTo(x, 6);
    }),
  );
});
