import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  combinedConvectionCoefficient,
  convectionCoefficient,
  type FreeConvectionShape,
  forcedConvectionCoefficient,
  freeConvectionCoefficient,
  nusseltChurchillBernsteinCylinder,
  nusseltChurchillChuHorizontalCylinder,
  nusseltChurchillChuVerticalPlate,
  nusseltChurchillOzoeLaminarPlate,
  nusseltChurchillSphere,
  nusseltHilpertCylinder,
  nusseltKreithTurbulentPlate,
  nusseltLaminarPlate,
  nusseltMcAdamsPlateAssisted,
  nusseltMcAdamsPlateOpposed,
  nusseltMorganHorizontalCylinder,
  nusseltPlate,
  nusseltZukauskasCylinder,
  REYNOLDS_TRANSITION_PLATE,
  rayleighAir,
  reynoldsAir,
  windCoefficientIso6946,
  windCoefficientMcAdams,
} from "../../src/properties/index.js";

const PRANDTL = 0.71;
const times = fc.double({ min: 1.05, max: 10, noNaN: true });
const logUniform = (from: number, to: number) =>
  fc.double({ min: Math.log(from), max: Math.log(to), noNaN: true }).map(Math.exp);

const FREE: Readonly<Record<string, (rayleigh: number, prandtl: number) => number>> = {
  nusseltChurchillChuVerticalPlate,
  nusseltChurchillChuHorizontalCylinder,
  nusseltChurchillSphere,
  nusseltMcAdamsPlateAssisted,
  nusseltMcAdamsPlateOpposed,
};

const FORCED: Readonly<Record<string, (reynolds: number, prandtl: number) => number>> = {
  nusseltChurchillBernsteinCylinder,
  nusseltLaminarPlate,
  nusseltChurchillOzoeLaminarPlate,
  nusseltKreithTurbulentPlate,
  nusseltPlate,
};

describe("free convection", () => {
  test.each(Object.entries(FREE))(
    "%s rises with the Rayleigh number and is finite in still, even air",
    (_, nusselt) => {
      fc.assert(
        fc.property(logUniform(1, 1e11), times, (rayleigh, more) => {
          expect(nusselt(rayleigh * more, PRANDTL)).toBeGreaterThan(nusselt(rayleigh, PRANDTL));
        }),
      );
      expect(nusselt(0, PRANDTL)).toBeGreaterThanOrEqual(0);
      expect(nusselt(0, PRANDTL)).toBeLessThanOrEqual(2);
      expect(() => nusselt(Number.NaN, PRANDTL)).toThrow("invalid rayleigh: NaN");
      expect(() => nusselt(-1, PRANDTL)).toThrow(RangeError);
    },
  );

  test("Morgan's steps meet within 8 % and stay within 20 % of Churchill and Chu over engine sizes", () => {
    for (const edge of [1e-2, 1e2, 1e4, 1e7]) {
      const below = nusseltMorganHorizontalCylinder(edge * (1 - 1e-9));
      expect(Math.abs(nusseltMorganHorizontalCylinder(edge) / below - 1)).toBeLessThan(0.08);
    }
    fc.assert(
      fc.property(logUniform(1e4, 1e8), (rayleigh) => {
        const ratio =
          nusseltMorganHorizontalCylinder(rayleigh) /
          nusseltChurchillChuHorizontalCylinder(rayleigh, PRANDTL);
        expect(Math.abs(ratio - 1)).toBeLessThan(0.2);
      }),
    );
  });

  test("a face that holds its film gives half the heat of one that lets it go", () => {
    fc.assert(
      fc.property(logUniform(1e5, 9.9e6), (rayleigh) => {
        const ratio = nusseltMcAdamsPlateOpposed(rayleigh) / nusseltMcAdamsPlateAssisted(rayleigh);
        expect(ratio).toBeCloseTo(0.5, 9);
      }),
    );
  });
});

describe("forced convection", () => {
  test.each(Object.entries(FORCED))("%s rises with the Reynolds number", (_, nusselt) => {
    fc.assert(
      fc.property(logUniform(1, 1e7), times, (reynolds, more) => {
        expect(nusselt(reynolds * more, PRANDTL)).toBeGreaterThan(nusselt(reynolds, PRANDTL));
      }),
    );
    expect(() => nusselt(Number.NaN, PRANDTL)).toThrow("invalid reynolds: NaN");
    expect(() => nusselt(1e4, 0)).toThrow("invalid prandtl: 0");
  });

  test("three correlations of a cylinder in cross flow agree within 20 % in air", () => {
    fc.assert(
      fc.property(logUniform(100, 1e5), (reynolds) => {
        const reference = nusseltChurchillBernsteinCylinder(reynolds, PRANDTL);
        expect(Math.abs(nusseltZukauskasCylinder(reynolds, PRANDTL) / reference - 1)).toBeLessThan(0.2);
        expect(Math.abs(nusseltHilpertCylinder(reynolds, PRANDTL) / reference - 1)).toBeLessThan(0.2);
      }),
    );
  });

  test("Hilpert's rows meet at their ends within 1.6 %", () => {
    for (const edge of [4, 40, 4e3, 4e4]) {
      const below = nusseltHilpertCylinder(edge * (1 - 1e-9), PRANDTL);
      expect(Math.abs(nusseltHilpertCylinder(edge, PRANDTL) / below - 1)).toBeLessThan(0.016);
    }
  });

  test("the plate is laminar below the transition and continuous at it within 0.2 %", () => {
    expect(nusseltPlate(1e5, PRANDTL)).toBe(nusseltLaminarPlate(1e5, PRANDTL));
    const laminar = nusseltPlate(REYNOLDS_TRANSITION_PLATE, PRANDTL);
    const mixed = nusseltPlate(REYNOLDS_TRANSITION_PLATE * (1 + 1e-9), PRANDTL);
    expect(Math.abs(mixed / laminar - 1)).toBeLessThan(0.002);
  });
});

describe("coefficients", () => {
  const shapes: readonly FreeConvectionShape[] = [
    "vertical-plate",
    "horizontal-cylinder",
    "horizontal-plate-assisted",
    "horizontal-plate-opposed",
    "sphere",
  ];

  test.each(shapes)(
    "%s: 10 K between engine part and cold air gives 1 to 10 W/(m2 K), the same either way",
    (shape) => {
      fc.assert(
        fc.property(
          fc.double({ min: 0.05, max: 0.6, noNaN: true }),
          fc.double({ min: 230, max: 300, noNaN: true }),
          (length, film) => {
            const h = freeConvectionCoefficient(shape, length, 10, film);
            expect(h).toBeGreaterThan(1);
            expect(h).toBeLessThan(10);
            expect(freeConvectionCoefficient(shape, length, -10, film)).toBe(h);
          },
        ),
      );
    },
  );

  test("rise with the difference about as its quarter power", () => {
    const h10 = freeConvectionCoefficient("vertical-plate", 0.2, 10, 270);
    const h40 = freeConvectionCoefficient("vertical-plate", 0.2, 40, 270);
    expect(Math.log(h40 / h10) / Math.log(4)).toBeCloseTo(0.25, 1);
  });

  test("are finite at no difference and rise with wind from rest", () => {
    expect(freeConvectionCoefficient("vertical-plate", 0.2, 0, 270)).toBeGreaterThan(0);
    expect(forcedConvectionCoefficient("plate", 1, 0, 270)).toBe(0);
    fc.assert(
      fc.property(logUniform(0.05, 15), times, (wind, more) => {
        for (const shape of ["plate", "cylinder"] as const) {
          const h = forcedConvectionCoefficient(shape, 0.8, wind, 263);
          expect(forcedConvectionCoefficient(shape, 0.8, wind * more, 263)).toBeGreaterThan(h);
        }
      }),
    );
  });

  test("refuse sizes, differences and winds that the published correlation was not made for", () => {
    expect(() => freeConvectionCoefficient("horizontal-plate-opposed", 0.02, 1, 270)).toThrow(
      /^invalid rayleigh: 12\d\d\.?\d* \(expected 100000 to 10000000000, Rayleigh number by area over perimeter/,
    );
    expect(() => freeConvectionCoefficient("vertical-plate", 40, 20, 270)).toThrow(/^invalid rayleigh: /);
    expect(() => forcedConvectionCoefficient("plate", 60, 30, 270)).toThrow(/^invalid flow: /);
    expect(() => forcedConvectionCoefficient("cylinder", 0.1, 0, 270)).toThrow(/^invalid flow: 0 /);
  });

  test("combine to the larger when the other is nothing and never to less than either", () => {
    const any = fc.double({ min: 0.01, max: 100, noNaN: true });
    fc.assert(
      fc.property(any, any, (free, forced) => {
        const both = combinedConvectionCoefficient(free, forced);
        expect(both).toBeGreaterThanOrEqual(Math.max(free, forced) * (1 - 1e-12));
        expect(both).toBeLessThanOrEqual((free + forced) * (1 + 1e-12));
        expect(combinedConvectionCoefficient(free, 0)).toBeCloseTo(free, 9);
      }),
    );
  });

  test("by the two wind rules rise with wind and agree within 45 % up to 5 m/s", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5, noNaN: true }), (wind) => {
        expect(windCoefficientMcAdams(wind + 0.1)).toBeGreaterThan(windCoefficientMcAdams(wind));
        expect(windCoefficientIso6946(wind + 0.1)).toBeGreaterThan(windCoefficientIso6946(wind));
        expect(windCoefficientMcAdams(wind) / windCoefficientIso6946(wind)).toBeLessThan(1.45);
      }),
    );
    expect(() => windCoefficientMcAdams(-0.1)).toThrow("invalid windSpeed: -0.1");
    expect(() => windCoefficientIso6946(Number.NaN)).toThrow("invalid windSpeed: NaN");
  });

  test("scale: Rayleigh with length cubed, Reynolds with length, h with k over L", () => {
    expect(rayleighAir(0.4, 10, 270) / rayleighAir(0.2, 10, 270)).toBeCloseTo(8, 9);
    expect(rayleighAir(0.2, -10, 270)).toBe(rayleighAir(0.2, 10, 270));
    expect(reynoldsAir(0.4, 3, 270) / reynoldsAir(0.2, 3, 270)).toBeCloseTo(2, 9);
    expect(convectionCoefficient(10, 0.025, 0.5)).toBeCloseTo(0.5, 12);
    expect(() => convectionCoefficient(10, 0.025, 0)).toThrow("invalid length: 0 (expected above 0 m)");
  });
});
