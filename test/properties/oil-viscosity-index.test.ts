import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { viscosityIndex, viscosityIndexReference } from "../../src/properties/index.js";
import {
  VISCOSITY_INDEX_H,
  VISCOSITY_INDEX_L,
  viscosityIndexRow,
} from "../../src/properties/viscosity-index-table.js";

/**
 * Equations of ASTM D2270 that stand for its Table 1, from memory: up to `to` mm2/s, L = a Y^2 + b Y + c and H = d Y^2 + e Y + f.
 * They know the table only to rounding, so they find a slip in transcription without being a copy of it.
 */
const EQUATIONS = [
  [3.8, 1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077],
  [4.4, 3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183],
  [5, 2.5, -7.2143, 13.812, 0.82143, 1.5679, 0.119],
  [6.4, 0.101, 16.635, -45.469, 0.04985, 9.1613, -18.557],
  [7, 3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656],
  [7.7, 0.01191, 21.475, -72.87, 0.79762, -0.7321, 14.61],
  [9, 0.41858, 16.1558, -56.04, 0.05794, 10.5156, -28.24],
  [12, 0.88779, 7.5527, -16.6, 0.26665, 6.7015, -10.81],
  [15, 0.7672, 10.7972, -38.18, 0.20073, 8.4658, -22.49],
  [18, 0.97305, 5.3135, -2.2, 0.28889, 5.9741, -4.93],
  [22, 0.97256, 5.25, -0.98, 0.24504, 7.416, -16.73],
  [28, 0.91413, 7.4759, -21.82, 0.20323, 9.1267, -34.23],
  [40, 0.87031, 9.7157, -50.77, 0.18411, 10.1015, -46.75],
  [55, 0.84703, 12.6752, -133.31, 0.17029, 11.4866, -80.62],
  [70, 0.85921, 11.1009, -83.19, 0.1713, 11.368, -76.94],
] as const;

const nu100 = fc.double({ min: 2e-6, max: 200e-6, noNaN: true });

function rows(): number[] {
  const run = (from: number, step: number, count: number) =>
    Array.from({ length: count }, (_, i) => from + i * step);
  return [...run(2, 0.1, 180), ...run(20, 0.2, 50), ...run(30, 0.5, 81)];
}

describe("Table 1", () => {
  test("has its 311 rows, found at their viscosities", () => {
    expect(VISCOSITY_INDEX_L).toHaveLength(311);
    expect(VISCOSITY_INDEX_H).toHaveLength(311);
    rows().forEach((y, row) => {
      expect(viscosityIndexRow(y)).toBeCloseTo(row, 9);
    });
  });

  test("agrees in every row with the equations given for it, within 0.15 %", () => {
    rows().forEach((y, row) => {
      const [, a, b, c, d, e, f] = EQUATIONS.find(([to]) => y <= to + 1e-9)!;
      expect(Math.abs((a * y * y + b * y + c) / VISCOSITY_INDEX_L[row]! - 1), `L at ${y}`).toBeLessThan(
        0.0015,
      );
      expect(Math.abs((d * y * y + e * y + f) / VISCOSITY_INDEX_H[row]! - 1), `H at ${y}`).toBeLessThan(
        0.0015,
      );
    });
  });
});

describe("viscosity index", () => {
  test("is 0 at L and 100 at H", () => {
    fc.assert(
      fc.property(nu100, (nu) => {
        const { l, h } = viscosityIndexReference(nu);
        expect(l).toBeGreaterThan(h);
        expect(viscosityIndex(l, nu)).toBeCloseTo(0, 9);
        expect(viscosityIndex(h, nu)).toBeCloseTo(100, 9);
        expect(viscosityIndex(h * (1 - 1e-9), nu)).toBeCloseTo(100, 4);
      }),
    );
  });

  test("rises as the oil is thinner at 40 °C", () => {
    fc.assert(
      fc.property(nu100, fc.double({ min: 1.2, max: 20, noNaN: true }), (nu, times) => {
        expect(viscosityIndex(nu * times, nu)).toBeGreaterThan(viscosityIndex(nu * times * 1.01, nu));
      }),
    );
  });

  test("is refused below 2 mm2/s at 100 °C, where it is not defined", () => {
    expect(() => viscosityIndex(5e-6, 1.5e-6)).toThrow(/invalid nu100: 0.0000015/);
    expect(() => viscosityIndex(5e-6, Number.NaN)).toThrow(/invalid nu100: NaN/);
    expect(() => viscosityIndex(-1, 5e-6)).toThrow(/invalid nu40: -1/);
  });
});
