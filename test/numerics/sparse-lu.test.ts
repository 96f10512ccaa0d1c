import fc from "fast-check";
import { Matrix, solve as solveDense } from "ml-matrix";
import { describe, expect, test } from "vitest";
import {
  checkPattern,
  createSparseLu,
  densePattern,
  eliminationPlan,
  type SparsityPattern,
} from "../../src/numerics/index.js";

/** Rates of a random heat network with loss to the outside: J of the equations, so that shift·I - J is an M-matrix. */
interface RandomNetwork {
  readonly size: number;
  readonly members: number;
  readonly pattern: SparsityPattern;
  /** [nonzero][member] */
  readonly values: Float64Array;
  readonly shift: number;
  readonly rhs: Float64Array;
}

const networks: fc.Arbitrary<RandomNetwork> = fc
  .record({ size: fc.integer({ min: 1, max: 12 }), members: fc.integer({ min: 1, max: 5 }) })
  .chain(({ size, members }) =>
    fc
      .record({
        links: fc.array(fc.tuple(fc.nat(size - 1), fc.nat(size - 1)), { maxLength: 3 * size }),
        numbers: fc.array(fc.double({ min: 1e-4, max: 1e3, noNaN: true }), {
          minLength: 400,
          maxLength: 400,
        }),
        signs: fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: 60, maxLength: 60 }),
        shift: fc.double({ min: 1e-6, max: 1e3, noNaN: true }),
      })
      .map(({ links, numbers, signs, shift }) => {
        const pattern = patternOf(size, links);
        const values = new Float64Array(pattern.column.length * members);
        let next = 0;
        for (let i = 0; i < size; i++) {
          for (let m = 0; m < members; m++) {
            let sum = numbers[next++ % numbers.length];
            for (let k = pattern.rowStart[i]; k < pattern.rowStart[i + 1]; k++) {
              if (pattern.column[k] === i) continue;
              const rate = numbers[next++ % numbers.length];
              values[k * members + m] = rate;
              sum += rate;
            }
            values[(pattern.rowStart[i] + rowOf(pattern, i).indexOf(i)) * members + m] = -sum;
          }
        }
        const rhs = Float64Array.from({ length: size * members }, (_, k) => signs[k % signs.length]);
        return { size, members, pattern, values, shift, rhs };
      }),
  );

describe("createSparseLu", () => {
  test("solves random M-matrices as a dense solver does", () => {
    fc.assert(
      fc.property(networks, ({ size, members, pattern, values, shift, rhs }) => {
        const lu = createSparseLu(pattern, members, rhs.length);
        lu.memory.set(rhs);
        expect(lu.factorise(shift, values)).toBe(true);
        lu.solve(0);
        for (let m = 0; m < members; m++) {
          const matrix = Matrix.eye(size)
            .mul(shift)
            .sub(denseOf(pattern, values, members, m));
          const b = Matrix.columnVector(Array.from({ length: size }, (_, i) => rhs[i * members + m]));
          const expected = solveDense(matrix, b).to1DArray();
          const scale = Math.max(1e-12, ...expected.map(Math.abs));
          expected.forEach((value, i) => {
            expect(Math.abs(lu.memory[i * members + m] - value) / scale).toBeLessThan(1e-9);
          });
        }
      }),
      { numRuns: 150 },
    );
  });
  test("vectors at other places of its memory are left alone", () => {
    const lu = createSparseLu(densePattern(2), 1, 6);
    lu.memory.set([9, 9, 3, 4, 8, 8]);
    expect(lu.factorise(2, Float64Array.of(1, -1, 0, 0))).toBe(true);
    lu.solve(2);
    // [1 1; 0 2] x = [3, 4]
    expect(Array.from(lu.memory.subarray(0, 6))).toEqual([9, 9, 1, 2, 8, 8]);
  });
  test.each([
    ["zero pivot", 1, [1, 0, 0, 0]],
    ["pivot zero only after elimination", 0, [-1, -1, -1, -1]],
    ["NaN", 1, [Number.NaN, 0, 0, 0]],
    ["infinite", 1, [0, 0, 0, Number.NEGATIVE_INFINITY]],
  ])("%s: refused", (_, shift, values) => {
    expect(createSparseLu(densePattern(2), 1, 2).factorise(shift, Float64Array.from(values))).toBe(false);
  });
  test("one bad member is enough to refuse", () => {
    const lu = createSparseLu(densePattern(1), 3, 3);
    expect(lu.factorise(1, Float64Array.of(-1, 1, -1))).toBe(false);
    expect(lu.factorise(1, Float64Array.of(-1, -1, -1))).toBe(true);
  });
});

describe("eliminationPlan", () => {
  test("is made once per pattern object", () => {
    const pattern = densePattern(3);
    expect(eliminationPlan(pattern)).toBe(eliminationPlan(pattern));
    expect(eliminationPlan(densePattern(3))).not.toBe(eliminationPlan(pattern));
  });
  test("a tree has no fill-in, whatever the numbering", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 30 }), fc.infiniteStream(fc.nat(1000)), (size, numbers) => {
        const shuffled = Array.from({ length: size }, (_, i) => i);
        for (let i = size - 1; i > 0; i--) {
          const j = numbers.next().value % (i + 1);
          [shuffled[i], shuffled[j]] = [shuffled[j], shuffled[i]];
        }
        const links = Array.from({ length: size - 1 }, (_, i) => [
          shuffled[i + 1],
          shuffled[numbers.next().value % (i + 1)],
        ]);
        const pattern = patternOf(size, links);
        expect(eliminationPlan(pattern).entries).toBe(pattern.column.length);
      }),
      { numRuns: 100 },
    );
  });
  test("a star is eliminated from its tips", () => {
    const pattern = patternOf(
      6,
      [1, 2, 3, 4, 5].map((tip) => [0, tip]),
    );
    const plan = eliminationPlan(pattern);
    expect(plan.entries).toBe(pattern.column.length);
    expect(Array.from(plan.order).indexOf(0)).toBeGreaterThanOrEqual(4);
  });
  test("a ring of n fills n - 3 links", () => {
    const n = 9;
    const pattern = patternOf(
      n,
      Array.from({ length: n }, (_, i) => [i, (i + 1) % n]),
    );
    expect(eliminationPlan(pattern).entries).toBe(pattern.column.length + 2 * (n - 3));
  });
});

describe("checkPattern", () => {
  test.each([
    ["no rows", [0], [], /invalid pattern.rowStart/],
    ["row starts that miss the end", [0, 1], [0, 0], /invalid pattern.rowStart/],
    ["column outside", [0, 1], [1], /invalid pattern.column: 1 in row 0/],
    ["columns not ascending", [0, 2, 4], [1, 0, 0, 1], /invalid pattern.column: 0 in row 0/],
    ["missing diagonal", [0, 1, 2], [0, 0], /missing pattern diagonal: row 1/],
  ])("%s", (_, rowStart, column, message) => {
    const pattern = { rowStart: Int32Array.from(rowStart), column: Int32Array.from(column) };
    expect(() => checkPattern(pattern)).toThrow(message);
    expect(() => eliminationPlan(pattern)).toThrow(RangeError);
  });
  test("a full matrix passes", () => {
    expect(() => checkPattern(densePattern(4))).not.toThrow();
  });
});

/** Symmetric pattern with a diagonal. */
function patternOf(size: number, links: readonly (readonly number[])[]): SparsityPattern {
  const rows = Array.from({ length: size }, (_, i) => new Set([i]));
  for (const [a, b] of links) {
    rows[a].add(b);
    rows[b].add(a);
  }
  const sorted = rows.map((row) => [...row].sort((a, b) => a - b));
  const rowStart = new Int32Array(size + 1);
  sorted.forEach((row, i) => {
    rowStart[i + 1] = rowStart[i] + row.length;
  });
  return { rowStart, column: Int32Array.from(sorted.flat()) };
}

function rowOf({ rowStart, column }: SparsityPattern, i: number): number[] {
  return Array.from(column.subarray(rowStart[i], rowStart[i + 1]));
}

function denseOf(pattern: SparsityPattern, values: Float64Array, members: number, m: number): Matrix {
  const size = pattern.rowStart.length - 1;
  const matrix = Matrix.zeros(size, size);
  for (let i = 0; i < size; i++) {
    for (let k = pattern.rowStart[i]; k < pattern.rowStart[i + 1]; k++) {
      matrix.set(i, pattern.column[k], values[k * members + m]);
    }
  }
  return matrix;
}
