import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  BATTERIES,
  type BatteryKind,
  CHARGE_STEPS_LITHIUM_COLD_RATED,
  capacityFraction,
  chargeRateLimit,
  chargeVoltageLeadAcid,
  crankingPowerFraction,
  openCircuitVoltage,
  requiredCrankingPowerRatio,
  selfDischargeRate,
  specificGravityCorrected,
  specificGravityFromStateOfCharge,
  stateOfChargeFromOpenCircuitVoltage,
  stateOfChargeFromSpecificGravity,
  tempFreezingElectrolyte,
} from "../../src/properties/index.js";
import { celsiusFromFahrenheit, kelvinFromCelsius } from "../../src/units/index.js";
import { FREEZING_TABLE_OPTIMISTIC, FREEZING_TABLES } from "../validation/battery-freezing-tables.js";

const KINDS: readonly (readonly [string, BatteryKind])[] = Object.entries(BATTERIES);
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe.each(KINDS)("%s", (_, kind) => {
  test("gives no less power, capacity or charge when warmer, all within 0 and 1", () => {
    fc.assert(
      fc.property(between(214, 330), between(0, 3), (temp, step) => {
        for (const of of [crankingPowerFraction, capacityFraction]) {
          expect(of(kind, temp + step)).toBeGreaterThanOrEqual(of(kind, temp));
          expect(of(kind, temp)).toBeGreaterThanOrEqual(0);
          expect(of(kind, temp)).toBeLessThanOrEqual(1);
        }
        expect(chargeRateLimit(kind, temp + step)).toBeGreaterThanOrEqual(chargeRateLimit(kind, temp));
      }),
    );
  });

  test("gives nothing below its cut-off and refuses nonsense", () => {
    expect(crankingPowerFraction(kind, kind.tempDischargeMin - 0.5)).toBe(0);
    expect(capacityFraction(kind, kind.tempDischargeMin - 0.5)).toBe(0);
    expect(() => crankingPowerFraction(kind, -18)).toThrow(/^invalid temp: -18/);
    expect(() => capacityFraction(kind, Number.NaN)).toThrow(/^invalid temp: NaN/);
  });

  test("names the origin of each table, with ascending temperatures", () => {
    for (const origin of Object.values(kind.origins)) expect(origin.length).toBeGreaterThan(10);
    for (const table of [kind.crankingPower, kind.capacity]) {
      for (let i = 1; i < table.length; i++) expect(table[i]![0]).toBeGreaterThan(table[i - 1]![0]);
    }
  });
});

test("lithium is charged cold only where its maker allows, and then slowly", () => {
  const kind = BATTERIES["lithium-iron-phosphate"];
  const coldRated: BatteryKind = { ...kind, chargeSteps: CHARGE_STEPS_LITHIUM_COLD_RATED };
  const at = (t: number) => [
    chargeRateLimit(kind, kelvinFromCelsius(t)),
    chargeRateLimit(coldRated, kelvinFromCelsius(t)),
  ];
  expect(at(0)).toEqual([Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]);
  expect(at(-5)).toEqual([0, 0.1]);
  expect(at(-15)).toEqual([0, 0.05]);
  expect(at(-25)).toEqual([0, 0]);
});

test("a colder engine needs more power; outside the chart is refused", () => {
  fc.assert(
    fc.property(between(244.3, 298), (temp) => {
      expect(requiredCrankingPowerRatio(temp + 1)).toBeLessThan(requiredCrankingPowerRatio(temp));
    }),
  );
  expect(() => requiredCrankingPowerRatio(240)).toThrow(/^invalid temp: 240/);
});

test("the freezing curve is never colder than any published table, nor than the optimistic column", () => {
  for (const points of [...FREEZING_TABLES.map((table) => table.points), FREEZING_TABLE_OPTIMISTIC]) {
    for (const [gravity, f] of points) {
      expect(tempFreezingElectrolyte(gravity)).toBeGreaterThanOrEqual(
        kelvinFromCelsius(celsiusFromFahrenheit(f)) - 1e-9,
      );
    }
  }
});

test("stronger acid freezes no warmer, and water freezes at 0 °C", () => {
  fc.assert(
    fc.property(between(1, 1.29), between(0, 0.01), (gravity, step) => {
      expect(tempFreezingElectrolyte(gravity + step)).toBeLessThanOrEqual(tempFreezingElectrolyte(gravity));
    }),
  );
  expect(tempFreezingElectrolyte(1)).toBeCloseTo(273.15, 9);
});

test("state of charge goes round and rises with voltage and gravity", () => {
  fc.assert(
    fc.property(between(0, 1), (charge) => {
      expect(stateOfChargeFromSpecificGravity(specificGravityFromStateOfCharge(charge))).toBeCloseTo(
        charge,
        10,
      );
    }),
  );
  const warm = kelvinFromCelsius(celsiusFromFahrenheit(80));
  fc.assert(
    fc.property(between(11.9, 12.6), (voltage) => {
      expect(stateOfChargeFromOpenCircuitVoltage(voltage + 0.01, warm, 6)).toBeGreaterThan(
        stateOfChargeFromOpenCircuitVoltage(voltage, warm, 6),
      );
      expect(stateOfChargeFromOpenCircuitVoltage(2 * voltage, warm, 12)).toBeCloseTo(
        stateOfChargeFromOpenCircuitVoltage(voltage, warm, 6),
        12,
      );
    }),
  );
});

test("the same reading means less charge in the cold", () => {
  fc.assert(
    fc.property(between(235, 298), (temp) => {
      expect(specificGravityCorrected(1.22, temp)).toBeLessThan(1.22);
      expect(stateOfChargeFromOpenCircuitVoltage(12.4, temp, 6)).toBeLessThan(
        stateOfChargeFromOpenCircuitVoltage(12.4, temp + 5, 6),
      );
    }),
  );
});

test("charging wants more volts when colder, in proportion to the cells; standing loses less", () => {
  fc.assert(
    fc.property(between(225, 320), (temp) => {
      for (const construction of ["conventional", "maintenance-free"] as const) {
        expect(chargeVoltageLeadAcid(construction, temp, 6)).toBeGreaterThanOrEqual(
          chargeVoltageLeadAcid(construction, temp + 2, 6),
        );
        expect(chargeVoltageLeadAcid(construction, temp, 12)).toBeCloseTo(
          2 * chargeVoltageLeadAcid(construction, temp, 6),
          12,
        );
      }
      expect(selfDischargeRate(temp)).toBeLessThanOrEqual(selfDischargeRate(temp + 2));
    }),
  );
});

test("bad input is refused by name", () => {
  for (const gravity of [0.99, 1.31, 1265, Number.NaN]) {
    expect(() => tempFreezingElectrolyte(gravity)).toThrow(/^invalid specificGravity: /);
    expect(() => stateOfChargeFromSpecificGravity(gravity)).toThrow(/^invalid specificGravity: /);
    expect(() => openCircuitVoltage(gravity, 6)).toThrow(/^invalid specificGravity: /);
  }
  expect(() => specificGravityFromStateOfCharge(75)).toThrow(/^invalid stateOfCharge: 75/);
  expect(() => stateOfChargeFromOpenCircuitVoltage(24.5, 290, 6)).toThrow(/^invalid voltage: 24.5/);
  expect(() => specificGravityCorrected(1.2, -10)).toThrow(/^invalid temp: -10/);
  // biome-ignore lint/suspicious/noExplicitAny: a word read from elsewhere
  expect(() => chargeVoltageLeadAcid("gel" as any, 290, 6)).toThrow(/^unknown construction: gel/);
});
