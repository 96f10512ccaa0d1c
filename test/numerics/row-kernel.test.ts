import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  abs,
  add,
  createRowLayout,
  createRowMemory,
  div,
  lookUp,
  max,
  mul,
  neg,
  num,
  rowKernel,
  sqrt,
  sub,
  UniformTable,
  WORD,
} from "../../src/numerics/index.js";
import { floor, min } from "../../src/numerics/row-kernel.js";

const memory = createRowMemory();

const EVERYTHING = rowKernel(
  { a: "row", b: "row", out: "row", shared: "shared" } as const,
  ["s"],
  ({ a, b, out, shared, s }, { keep, set }) => {
    const sum = keep(add(a, b, num(0.25)));
    const bounded = max(min(mul(sum, s), num(40)), neg(shared));
    set(out, add(div(bounded, add(abs(b), num(1))), sub(sqrt(abs(a)), floor(b))));
  },
);

/** The same in plain numbers. */
function everything(a: number, b: number, shared: number, s: number): number {
  const bounded = Math.max(Math.min((a + b + 0.25) * s, 40), -shared);
  return bounded / (Math.abs(b) + 1) + (Math.sqrt(Math.abs(a)) - Math.floor(b));
}

const numbers = fc.double({ min: -1e3, max: 1e3, noNaN: true });

describe("rowKernel", () => {
  test("gives every member what plain arithmetic gives, to the last bit, for any number of members", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(numbers, numbers), { minLength: 1, maxLength: 13 }),
        numbers,
        numbers,
        (pairs, shared, s) => {
          const layout = createRowLayout();
          const [a, b, out, after, common] = [0, 0, 0, 0, 0].map(() => layout.take(pairs.length));
          const { at, count } = layout.list(EVERYTHING, [[a, b, out, common]]);
          memory.install(layout);
          const row = (place: number) => memory.floats.subarray(place / WORD, place / WORD + pairs.length);
          row(a).set(pairs.map(([x]) => x));
          row(b).set(pairs.map(([, x]) => x));
          row(after).fill(7);
          row(common)[0] = shared;
          memory.bind(EVERYTHING)(at, count, 0, pairs.length * WORD, s);
          expect(Array.from(row(out))).toEqual(pairs.map(([x, y]) => everything(x, y, shared, s)));
          // Nothing is written beyond the last member.
          expect(row(after).every((value) => value === 7)).toBe(true);
        },
      ),
      { numRuns: 200, seed: 5 },
    );
  });

  test("goes through the passes of a list in turn, in the vector that the call names", () => {
    const shiftUp = rowKernel(
      { to: "vector-row", from: "vector-row" } as const,
      [],
      ({ to, from }, { set }) => {
        set(to, add(to, from));
      },
    );
    const layout = createRowLayout();
    const members = 3;
    const first = layout.take(3 * members);
    const second = layout.take(3 * members);
    const row = members * WORD;
    const { at, count } = layout.list(shiftUp, [
      [row, 0],
      [2 * row, row],
    ]);
    const nothing = layout.list(shiftUp, []);
    memory.install(layout);
    memory.floats.set([1, 2, 3, 10, 20, 30, 100, 200, 300], first / WORD);
    memory.floats.set([1, 2, 3, 10, 20, 30, 100, 200, 300], second / WORD);
    const run = memory.bind(shiftUp);
    run(at, count, second, row);
    run(nothing.at, nothing.count, second, row);
    const vector = (place: number) => Array.from(memory.floats.subarray(place / WORD, place / WORD + 9));
    expect(vector(first)).toEqual([1, 2, 3, 10, 20, 30, 100, 200, 300]);
    expect(vector(second)).toEqual([1, 2, 3, 11, 22, 33, 111, 222, 333]);
  });

  test("no member's NaN touches another", () => {
    const layout = createRowLayout();
    const [a, b, out, common] = [4, 4, 4, 1].map((n) => layout.take(n));
    const { at, count } = layout.list(EVERYTHING, [[a, b, out, common]]);
    memory.install(layout);
    memory.floats.set([1, Number.NaN, 3, 4], a / WORD);
    memory.floats.set([1, 2, Number.NaN, 4], b / WORD);
    memory.floats[common / WORD] = 1;
    memory.bind(EVERYTHING)(at, count, 0, 4 * WORD, 2);
    const found = Array.from(memory.floats.subarray(out / WORD, out / WORD + 4));
    expect(found).toEqual([everything(1, 1, 1, 2), Number.NaN, Number.NaN, everything(4, 4, 1, 2)]);
  });

  test.each([
    ["too few operands", [[0, 8, 16]]],
    ["too many", [[0, 8, 16, 24, 32]]],
  ])("a list with %s is refused", (_, passes) => {
    expect(() => createRowLayout().list(EVERYTHING, passes)).toThrow(/invalid passes/);
  });

  test("what is shared cannot be written", () => {
    expect(() =>
      rowKernel({ shared: "shared" } as const, [], ({ shared }, { set }) => set(shared, num(1))),
    ).toThrow(/invalid row/);
  });
});

describe("lookUp", () => {
  const table = new UniformTable((x) => Math.exp(x / 3), -1, 2, 30);
  const kernel = rowKernel(
    { x: "row", value: "row", slope: "row", table: "shared" } as const,
    [],
    (t, statements) => {
      const found = lookUp(t.table, t.x, statements);
      statements.set(t.value, found.value);
      statements.set(t.slope, found.slope);
    },
  );

  test("reads a table as the table itself does, inside, at its ends and beyond", () => {
    const points = [-5, -1, -0.999, 0, 0.1, 0.75, 1.9999, 2, 2.0001, 9, Number.NaN];
    const layout = createRowLayout();
    const [x, value, slope] = [0, 0, 0].map(() => layout.take(points.length));
    const { at, count } = layout.list(kernel, [[x, value, slope, layout.constants(table.numbers)]]);
    memory.install(layout);
    memory.floats.set(points, x / WORD);
    memory.bind(kernel)(at, count, 0, points.length * WORD);
    points.forEach((point, k) => {
      const [gotValue, gotSlope] = [memory.floats[value / WORD + k], memory.floats[slope / WORD + k]];
      if (Number.isNaN(point)) expect([gotValue, gotSlope]).toEqual([Number.NaN, Number.NaN]);
      else {
        expect(gotValue).toBeCloseTo(table.value(point), 12);
        expect(gotSlope).toBeCloseTo(table.slope(point), 12);
      }
    });
  });
});

describe("row memory", () => {
  test("keeps its content when it grows", () => {
    const own = createRowMemory();
    own.floats[3] = 4.5;
    const before = own.floats;
    own.reserve(WORD * before.length + 1);
    expect(own.floats.length).toBeGreaterThan(before.length);
    expect(own.floats[3]).toBe(4.5);
  });
  test("kernels bound before it grew work on after", () => {
    const own = createRowMemory();
    const double = rowKernel({ a: "row" } as const, [], ({ a }, { set }) => set(a, mul(a, num(2))));
    const run = own.bind(double);
    const layout = createRowLayout();
    layout.take(20_000);
    const a = layout.take(2);
    const { at, count } = layout.list(double, [[a]]);
    own.install(layout);
    own.floats.set([3, 4], a / WORD);
    run(at, count, 0, 2 * WORD);
    expect(Array.from(own.floats.subarray(a / WORD, a / WORD + 2))).toEqual([6, 8]);
  });
});

test("where a kernel cannot be compiled, it is said what is missing", () => {
  const broken = { operands: 0, bytes: Uint8Array.of(0x00, 0x61, 0x73, 0x6d, 9, 9, 9, 9) };
  expect(() => createRowMemory().bind(broken)).toThrow(/WebAssembly with 128-bit SIMD is missing/);
});
