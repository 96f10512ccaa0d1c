import { inverse, Matrix } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { RODAS4P2 } from "../../src/solver/tableau.js";

// The method in the untransformed letters of Hairer & Wanner II, section IV.7: α_ij, γ_ij, β_ij = α_ij + γ_ij, b_i.
// Γ^-1 = I/γ - C, (α_ij) = (a_ij) Γ, b = m Γ.
const { gamma } = RODAS4P2;
const full = (rows: readonly (readonly number[])[]) =>
  rows.map((one) => Array.from({ length: rows.length }, (_, j) => one[j] ?? 0));
const a = full(RODAS4P2.a);
const C = full(RODAS4P2.C);
const m = [...a[5].slice(0, 5), 1];
const embedded = [...a[5].slice(0, 5), 0];
const Gamma = inverse(Matrix.eye(6).div(gamma).sub(new Matrix(C)));
const alphas = new Matrix(a).mmul(Gamma);
const betas = Matrix.add(alphas, Gamma);
const alpha = rowSums(alphas);
const beta = rowSums(betas);
const b = row(m);
const bEmbedded = row(embedded);

describe("RODAS4P2", () => {
  // Hairer & Wanner II, section IV.7, table 7.1, written with the full β (diagonal γ included).
  const conditions: readonly (readonly [
    name: string,
    order: number,
    sum: (b: number[]) => number,
    value: number,
  ])[] = [
    [
      "Σ b_i",
      1,
      (w) =>
        dot(
          w,
          beta.map(() => 1),
        ),
      1,
    ],
    ["Σ b_i β_i", 2, (w) => dot(w, beta), 1 / 2],
    ["Σ b_i α_i²", 3, (w) => dot(w, times(alpha, alpha)), 1 / 3],
    ["Σ b_i β_ij β_j", 3, (w) => dot(w, apply(betas, beta)), 1 / 6],
    ["Σ b_i α_i³", 4, (w) => dot(w, times(alpha, times(alpha, alpha))), 1 / 4],
    ["Σ b_i α_i α_ij β_j", 4, (w) => dot(w, times(alpha, apply(alphas, beta))), 1 / 8],
    ["Σ b_i β_ij α_j²", 4, (w) => dot(w, apply(betas, times(alpha, alpha))), 1 / 12],
    ["Σ b_i β_ij β_jk β_k", 4, (w) => dot(w, apply(betas, apply(betas, beta))), 1 / 24],
  ];
  test.each(conditions)("%s, order %i", (_, __, sum, value) => {
    expect(sum(b)).toBeCloseTo(value, 12);
  });
  test.each(conditions.filter(([, order]) => order <= 3))(
    "embedded method: %s, order %i",
    (_, __, sum, value) => {
      expect(sum(bEmbedded)).toBeCloseTo(value, 12);
    },
  );
  test("the embedded method is of order 3 only, so that the difference estimates the error", () => {
    const worst = conditions.slice(4).map(([, , sum, value]) => Math.abs(sum(bEmbedded) - value));
    expect(Math.max(...worst)).toBeGreaterThan(1e-3);
  });
  test("nodes and time weights are the row sums", () => {
    const d = rowSums(Gamma);
    alpha.forEach((value, i) => {
      expect(value).toBeCloseTo(RODAS4P2.c[i]!, 12);
      expect(d[i]).toBeCloseTo(RODAS4P2.d[i]!, 12);
    });
  });
  test("stiffly accurate: b is the last row of β, and the embedded b the last but one", () => {
    b.forEach((value, i) => {
      expect(betas.get(5, i)).toBeCloseTo(value, 12);
    });
    bEmbedded.forEach((value, i) => {
      expect(betas.get(4, i)).toBeCloseTo(value, 12);
    });
  });
  test("L-stable: |R(iy)| ≤ 1 and R vanishes at infinity", () => {
    for (let k = -40; k <= 60; k++) expect(amplification(10 ** (k / 10))).toBeLessThanOrEqual(1 + 1e-12);
    expect(amplification(1e9)).toBeLessThan(1e-8);
  });
});

/** |R(iy)| with R(z) = 1 + z b (I - zB)^-1 1, in real arithmetic of twice the size. */
function amplification(y: number): number {
  const big = Matrix.eye(12);
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j < 6; j++) {
      big.set(i, j + 6, y * betas.get(i, j));
      big.set(i + 6, j, -y * betas.get(i, j));
    }
  }
  const ones = Matrix.columnVector([1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0]);
  const x = inverse(big).mmul(ones).to1DArray();
  const re = dot(b, x.slice(0, 6));
  const im = dot(b, x.slice(6));
  return Math.hypot(1 - y * im, y * re);
}

function row(weights: readonly number[]): number[] {
  return Matrix.rowVector([...weights])
    .mmul(Gamma)
    .to1DArray();
}

function rowSums(matrix: Matrix): number[] {
  return matrix.to2DArray().map((r) => r.reduce((sum, value) => sum + value, 0));
}

function apply(matrix: Matrix, vector: readonly number[]): number[] {
  return matrix.to2DArray().map((r) => dot(r, vector));
}

function times(x: readonly number[], y: readonly number[]): number[] {
  return x.map((value, i) => value * y[i]);
}

function dot(x: readonly number[], y: readonly number[]): number {
  return x.reduce((sum, value, i) => sum + value * y[i], 0);
}
