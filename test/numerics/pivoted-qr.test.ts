import fc from "fast-check";
import { Matrix, SingularValueDecomposition, solve as solveDense } from "ml-matrix";
import { expect, test } from "vitest";
import { multiplyByQTransposed, numericalRank, pivotedQr, solveByQr } from "../../src/numerics/pivoted-qr.js";

const shapes = fc
  .record({ columns: fc.integer({ min: 1, max: 7 }), more: fc.integer({ min: 0, max: 8 }) })
  .chain(({ columns, more }) =>
    fc.record({
      columns: fc.constant(columns),
      rows: fc.constant(columns + more),
      entries: fc.array(fc.double({ min: -10, max: 10, noNaN: true }), {
        minLength: columns * (columns + more),
        maxLength: columns * (columns + more),
      }),
    }),
  );

test("R^T R is A^T A of the pivoted columns, and the diagonal does not rise", () => {
  fc.assert(
    fc.property(shapes, ({ rows, columns, entries }) => {
      const { factors, pivot } = pivotedQr(Float64Array.from(entries), rows, columns);
      for (let j = 0; j < columns; j++) {
        for (let k = 0; k < columns; k++) {
          let ours = 0;
          for (let i = 0; i <= Math.min(j, k); i++)
            ours += factors[i * columns + j] * factors[i * columns + k];
          let theirs = 0;
          for (let i = 0; i < rows; i++)
            theirs += entries[i * columns + pivot[j]] * entries[i * columns + pivot[k]];
          expect(ours).toBeCloseTo(theirs, 9);
        }
        if (j > 0)
          expect(Math.abs(factors[j * columns + j])).toBeLessThanOrEqual(
            Math.abs(factors[(j - 1) * columns + j - 1]) + 1e-12,
          );
      }
    }),
  );
});

test("least squares solution as ml-matrix finds it, residual at right angles to the columns", () => {
  fc.assert(
    fc.property(shapes, fc.infiniteStream(fc.double({ min: -5, max: 5, noNaN: true })), (shape, stream) => {
      const { rows, columns, entries } = shape;
      const dense = new Matrix(rowsOf(entries, columns));
      const spread = new SingularValueDecomposition(dense).diagonal;
      fc.pre(Math.min(...spread) > 1e-3);
      const b = Float64Array.from({ length: rows }, () => stream.next().value ?? 0);
      const turned = Float64Array.from(b);
      const qr = pivotedQr(Float64Array.from(entries), rows, columns);
      multiplyByQTransposed(qr, turned);
      const x = new Float64Array(columns);
      solveByQr(qr, turned, columns, x);
      const theirs = solveDense(dense, Matrix.columnVector([...b]), true).to1DArray();
      for (let j = 0; j < columns; j++) expect(x[j]).toBeCloseTo(theirs[j], 6);
      const length = Math.hypot(...turned);
      expect(length).toBeCloseTo(Math.hypot(...b), 9);
    }),
  );
});

test("rank as ml-matrix finds it when columns depend on others", () => {
  fc.assert(
    fc.property(shapes, fc.integer({ min: 0, max: 6 }), ({ rows, columns, entries }, copied) => {
      fc.pre(columns >= 2);
      const from = copied % columns;
      const to = (from + 1) % columns;
      const doubled = entries.map((entry, k) => (k % columns === to ? 2 * entries[k - to + from] : entry));
      const singular = new SingularValueDecomposition(new Matrix(rowsOf(doubled, columns))).diagonal;
      const largest = Math.max(...singular);
      fc.pre(largest > 1e-3 && singular.every((s) => s > 1e-5 * largest || s < 1e-13 * largest));
      const qr = pivotedQr(Float64Array.from(doubled), rows, columns);
      expect(numericalRank(qr, 1e-10)).toBe(singular.filter((s) => s > 1e-5 * largest).length);
    }),
  );
  expect(numericalRank(pivotedQr(new Float64Array(6), 3, 2), 1e-12)).toBe(0);
});

function rowsOf(entries: readonly number[], columns: number): number[][] {
  return Array.from({ length: entries.length / columns }, (_, i) =>
    entries.slice(i * columns, (i + 1) * columns),
  );
}
