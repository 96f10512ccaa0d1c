import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  crankingLimitBetweenGrades,
  crankingLimitOil,
  dynamicViscosityOil,
  GENERIC_OILS,
  type Oil,
  pumpingLimitOil,
  SAE_J300_WINTER,
  tempOfDynamicViscosityOil,
} from "../../src/properties/index.js";
import { celsiusFromKelvin } from "../../src/units/index.js";

const byId = (id: string): Oil => GENERIC_OILS.find((oil) => oil.id === id)!;

describe("temperature of a viscosity", () => {
  test("is where the oil has it", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...GENERIC_OILS),
        fc.double({ min: 0.01, max: 1000, noNaN: true }),
        (oil, viscosity) => {
          const temp = tempOfDynamicViscosityOil(oil, viscosity);
          expect(dynamicViscosityOil(oil, temp) / viscosity).toBeCloseTo(1, 5);
        },
      ),
    );
  });

  test("is refused where the oil never has it", () => {
    expect(() => tempOfDynamicViscosityOil(byId("sae-50"), 1e-6)).toThrow(RangeError);
    expect(() => tempOfDynamicViscosityOil(byId("sae-50"), Number.NaN)).toThrow("invalid viscosity: NaN");
  });
});

describe("SAE J300", () => {
  test("cranks each winter grade 5 K apart from the next", () => {
    const rows = Object.values(SAE_J300_WINTER);
    expect(rows.map((row) => Math.round(celsiusFromKelvin(row.tempCranking)))).toEqual([
      -35, -30, -25, -20, -15, -10,
    ]);
  });
});

describe("cranking limit between the grades", () => {
  test("meets every row of J300", () => {
    for (const row of Object.values(SAE_J300_WINTER)) {
      expect(crankingLimitBetweenGrades(row.tempCranking)).toBeCloseTo(row.viscosityCranking, 9);
    }
  });

  test("never falls as it warms and never leaves the table", () => {
    const temp = fc.double({ min: 200, max: 320, noNaN: true });
    fc.assert(
      fc.property(temp, fc.double({ min: 0, max: 50, noNaN: true }), (t, warmer) => {
        const limit = crankingLimitBetweenGrades(t);
        expect(limit).toBeGreaterThanOrEqual(6.2);
        expect(crankingLimitBetweenGrades(t + warmer)).toBeGreaterThanOrEqual(limit);
        expect(crankingLimitBetweenGrades(t + warmer)).toBeLessThanOrEqual(13);
      }),
    );
  });
});

describe("limits of the generic oils", () => {
  test.each([
    ["sae-50", -9.8, "between-grades", -18, "pour-point"],
    ["sae-40", -13.0, "between-grades", -21, "pour-point"],
    ["sae-30", -16.4, "between-grades", -24, "pour-point"],
    ["sae-20w-50", -15.9, "winter-grade", -30, "pour-point"],
    ["sae-15w-50", -19.8, "winter-grade", -38.1, "winter-grade"],
  ] as const)(
    "%s cranks to %d °C (%s) and pumps to %d °C (%s)",
    (id, crankingC, crankingBasis, pumpingC, pumpingBasis) => {
      const cranking = crankingLimitOil(byId(id));
      const pumping = pumpingLimitOil(byId(id));
      expect(celsiusFromKelvin(cranking.temp)).toBeCloseTo(crankingC, 0);
      expect(cranking.basis).toBe(crankingBasis);
      expect(celsiusFromKelvin(pumping.temp)).toBeCloseTo(pumpingC, 0);
      expect(pumping.basis).toBe(pumpingBasis);
    },
  );

  test("a multigrade by its composite data passes its grade's tests within 1 K", () => {
    for (const oil of GENERIC_OILS) {
      if (oil.winterGrade === undefined) continue;
      const row = SAE_J300_WINTER[oil.winterGrade];
      expect(crankingLimitOil(oil).temp).toBeLessThan(row.tempCranking + 1);
      expect(pumpingLimitOil(oil).temp).toBeLessThan(row.tempCranking - 5 + 1);
    }
  });

  test("an oil never pumps worse than it cranks", () => {
    for (const oil of GENERIC_OILS)
      expect(pumpingLimitOil(oil).temp).toBeLessThan(crankingLimitOil(oil).temp);
  });

  test("a pour point above the cranking temperature takes its place", () => {
    const waxy: Oil = { ...byId("sae-50"), pourPoint: 270 };
    expect(crankingLimitOil(waxy)).toMatchObject({ temp: 270, basis: "pour-point" });
  });
});
