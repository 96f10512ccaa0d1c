import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  combinedConvectionCoefficient,
  convectionCoefficient,
  type FreeConvectionShape,
  freeConvectionCoefficient,
  nusseltChurchillChuHorizontalCylinder,
  nusseltChurchillChuVerticalPlate,
  nusseltChurchillSphere,
  nusseltLaminarPlate,
  nusseltMcAdamsPlateAssisted,
  nusseltMcAdamsPlateOpposed,
  nusseltPlate,
  nusseltVdiPlateOpposed,
  REYNOLDS_TRANSITION_PLATE,
  rayleighAir,
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
  nusseltVdiPlateOpposed,
};

const FORCED: Readonly<Record<string, (reynolds: number, prandtl: number) => number>> = {
  nusseltLaminarPlate,

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
});

describe("coefficients of a surface in air", () => {
  test("refuse sizes and differences that the published correlation was not made for", () => {
    expect(() => freeConvectionCoefficient("horizontal-plate-opposed", 0.02, 1, 270)).toThrow(
      /^invalid rayleigh: 12\d\d\.?\d* \(expected 100000 to 10000000000, Rayleigh number by area over perimeter/,
    );
    expect(() => freeConvectionCoefficient("vertical-plate", 40, 20, 270)).toThrow(/^invalid rayleigh: /);
  });

  test("scale: Rayleigh with length cubed, h with k over L", () => {
    expect(rayleighAir(0.4, 10, 270) / rayleighAir(0.2, 10, 270)).toBeCloseTo(8, 9);
    expect(rayleighAir(0.2, -10, 270)).toBe(rayleighAir(0.2, 10, 270));
    expect(convectionCoefficient(10, 0.025, 0.5)).toBeCloseTo(0.5, 12);
    expect(() => convectionCoefficient(10, 0.025, 0)).toThrow("invalid length: 0 (expected above 0 m)");
  });
});
