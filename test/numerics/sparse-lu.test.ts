import fc from "fast-check";
import { Matrix, solve as solveDense } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { eliminationPlan } from "../../src/numerics/elimination.js";
import {
  createRowLayout,
  createRowMemory,
  createSparseLu,
  densePattern,
  planSparseLu,
  type SparsityPattern,
  WORD,
} from "../../src/numerics/index.js";
import { checkPattern } from "../../src/numerics/sparsity.js";

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
        // A source that senses another part makes a nonzero on one side of the diagonal alone.
        missing: fc.array(fc.tuple(fc.nat(size - 1), fc.nat(size - 1)), { maxLength: size }),
      })
      .map(({ links, numbers, signs, shift, missing }) => {
        const pattern = without(patternOf(size, links), missing);
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

const memory = createRowMemory();

/** Factors behind so many numbers at the start of the memory. */
function luWithRoom(pattern: SparsityPattern, members: number, room: number) {
  const layout = createRowLayout();
  layout.take(room);
  const plan = planSparseLu(pattern, members, layout);
  memory.install(layout);
  return { ...createSparseLu(plan, memory), vector: () => memory.floats.subarray(0, room) };
}

describe("createSparseLu", () => {
  test("solves random M-matrices as a dense solver does", () => {
    fc.assert(
      fc.property(networks, ({ size, members, pattern, values, shift, rhs }) => {
        const lu = luWithRoom(pattern, members, rhs.length);
        lu.vector().set(rhs);
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
            expect(Math.abs(lu.vector()[i * members + m] - value) / scale).toBeLessThan(1e-9);
          });
        }
      }),
      { numRuns: 150 },
    );
  });
  test("on each of the 4096 patterns of four rows, symmetric or not, as a dense solver does", () => {
    const size = 4;
    const away = Array.from({ length: size * size }, (_, k) => [Math.floor(k / size), k % size] as const);
    const places = away.filter(([i, j]) => i !== j);
    const rhs = [1, -2, 3, 0.5];
    for (let chosen = 0; chosen < 2 ** places.length; chosen++) {
      const isThere = (i: number, j: number) =>
        i === j || ((chosen >> places.findIndex(([a, b]) => a === i && b === j)) & 1) === 1;
      const rows = Array.from({ length: size }, (_, i) => [0, 1, 2, 3].filter((j) => isThere(i, j)));
      const pattern = {
        rowStart: Int32Array.from({ length: size + 1 }, (_, i) => rows.slice(0, i).flat().length),
        column: Int32Array.from(rows.flat()),
      };
      const values = Float64Array.from(
        rows.flatMap((row, i) => row.map((j) => (i === j ? -5 - i : 1 + 0.3 * i - 0.2 * j))),
      );
      const lu = luWithRoom(pattern, 1, size);
      lu.vector().set(rhs);
      expect(lu.factorise(0.5, values)).toBe(true);
      lu.solve(0);
      const matrix = Matrix.eye(size)
        .mul(0.5)
        .sub(denseOf(pattern, values, 1, 0));
      solveDense(matrix, Matrix.columnVector(rhs))
        .to1DArray()
        .forEach((value, i) => {
          expect(Math.abs(lu.vector()[i] - value)).toBeLessThan(1e-12);
        });
    }
  });
  test("vectors at other places of its memory are left alone", () => {
    const lu = luWithRoom(densePattern(2), 1, 6);
    lu.vector().set([9, 9, 3, 4, 8, 8]);
    expect(lu.factorise(2, Float64Array.of(1, -1, 0, 0))).toBe(true);
    lu.solve(2 * WORD);
    // [1 1; 0 2] x = [3, 4]
    expect(Array.from(lu.vector())).toEqual([9, 9, 1, 2, 8, 8]);
  });
  test.each([
    ["zero pivot", 1, [1, 0, 0, 0]],
    ["pivot zero only after elimination", 0, [-1, -1, -1, -1]],
    ["NaN", 1, [Number.NaN, 0, 0, 0]],
    ["infinite", 1, [0, 0, 0, Number.NEGATIVE_INFINITY]],
  ])("%s: refused", (_, shift, values) => {
    expect(luWithRoom(densePattern(2), 1, 2).factorise(shift, Float64Array.from(values))).toBe(false);
  });
  test("one bad member is enough to refuse", () => {
    const lu = luWithRoom(densePattern(1), 3, 3);
    expect(lu.factorise(1, Float64Array.of(-1, 1, -1))).toBe(false);
    expect(lu.factorise(1, Float64Array.of(-1, -1, -1))).toBe(true);
  });
});

/** A pattern less some places off the diagonal. */
function without(pattern: SparsityPattern, places: readonly (readonly [number, number])[]): SparsityPattern {
  const rows = Array.from({ length: pattern.rowStart.length - 1 }, (_, i) =>
    rowOf(pattern, i).filter((j) => j === i || !places.some(([a, b]) => a === i && b === j)),
  );
  const rowStart = Int32Array.from([0, ...rows.map((_, i) => rows.slice(0, i + 1).flat().length)]);
  return { rowStart, column: Int32Array.from(rows.flat()) };
}

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
