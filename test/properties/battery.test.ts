import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  BATTERIES,
  type BatteryKind,
  capacityFraction,
  chargeRateLimit,
  crankingPowerFraction,
  openCircuitVoltage,
  specificGravityFromStateOfCharge,
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

  test("has tables with ascending temperatures", () => {
    for (const table of [kind.crankingPower, kind.capacity]) {
      for (let i = 1; i < table.length; i++) expect(table[i]![0]).toBeGreaterThan(table[i - 1]![0]);
    }
  });
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

test("bad input is refused by name", () => {
  for (const gravity of [0.99, 1.31, 1265, Number.NaN]) {
    expect(() => tempFreezingElectrolyte(gravity)).toThrow(/^invalid specificGravity: /);
    expect(() => openCircuitVoltage(gravity, 6)).toThrow(/^invalid specificGravity: /);
  }
  expect(() => specificGravityFromStateOfCharge(75)).toThrow(/^invalid stateOfCharge: 75/);
});
