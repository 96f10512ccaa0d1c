import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { INSTALLATIONS, type Installation, installationById, PART_NAMES } from "../../src/aircraft/index.js";
import { groundRun, shutDownTemps } from "../../src/starting/index.js";
import { celsiusFromKelvin, kelvinFromCelsius } from "../../src/units/index.js";

const all = INSTALLATIONS.map((i): [string, Installation] => [i.id, i]);
const k = kelvinFromCelsius;

describe("temperatures at shut-down", () => {
  test.each(all)(
    "%s: every part has one, warmer than the air, heads the warmest metal",
    (_, installation) => {
      const air = k(-20);
      const temps = shutDownTemps(installation, air);
      const expected = PART_NAMES.filter((p) => p !== "coolant" || installation.bodies.coolant !== undefined);
      expect(new Set(temps.keys())).toEqual(new Set(expected));
      for (const [part, temp] of temps) expect(temp, part).toBeGreaterThan(air);
      const heads = temps.get("heads_front")!;
      for (const part of ["barrels", "oil", "crankcase", "hub", "battery"] as const) {
        expect(temps.get(part)!, part).toBeLessThanOrEqual(heads);
      }
      expect(celsiusFromKelvin(temps.get("oil")!)).toBeLessThanOrEqual(installation.shut_down.oil_most_c);
    },
  );

  test("oil stops rising with the air where its cooler holds it; the coolant stays at its thermostat", () => {
    const liquid = installationById("liquid-light-100");
    expect(celsiusFromKelvin(shutDownTemps(liquid, k(45)).get("oil")!)).toBeCloseTo(95, 9);
    for (const c of [-30, 0, 20]) {
      expect(celsiusFromKelvin(shutDownTemps(liquid, k(c)).get("coolant")!)).toBeCloseTo(80, 9);
    }
    expect(() => shutDownTemps(liquid, -20)).toThrow(/^invalid tempAir: -20/);
  });

  test("a battery by the firewall is warmer than one behind the cabin", () => {
    const fore = shutDownTemps(installationById("six-carburettor-230"), k(-20)).get("battery")!;
    const aft = shutDownTemps(installationById("six-injected-300"), k(-20)).get("battery")!;
    expect(fore).toBeGreaterThan(aft);
  });
});

describe("a short ground run", () => {
  const installation = installationById("four-carburettor-160");
  const cold = new Map(
    (["oil", "sump", "crankcase", "crankshaft", "barrels", "heads_front", "heads_rear", "hub"] as const).map(
      (part) => [part, k(-15)] as const,
    ),
  );

  test("warms heads long before oil, and leaves what it does not reach", () => {
    const temps = groundRun(cold, k(-15), 300);
    const rise = (part: "heads_front" | "oil" | "hub") => temps.get(part)! - cold.get(part)!;
    expect(rise("heads_front")).toBeGreaterThan(50);
    expect(rise("heads_front")).toBeGreaterThan(4 * rise("oil"));
    expect(rise("hub")).toBe(0);
  });

  test("two runs in a row are one long run; no run changes nothing; a hot part is not cooled", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 900 }), (a, b) => {
        const first = groundRun(cold, k(-15), a);
        const second = groundRun(first, k(-15), b);
        const whole = groundRun(cold, k(-15), a + b);
        expect(second.get("oil")).toBeCloseTo(whole.get("oil")!, 9);
      }),
      { numRuns: 30 },
    );
    const hot = shutDownTemps(installation, k(-15));
    expect(groundRun(hot, k(-15), 600).get("heads_front")).toBe(hot.get("heads_front"));
    expect(() => groundRun(cold, k(-15), 7201)).toThrow(/^invalid duration: 7201/);
  });
});
