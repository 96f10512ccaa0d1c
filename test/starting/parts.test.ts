import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { INSTALLATIONS, type Installation, installationById } from "../../src/aircraft/index.js";
import { GENERIC_OILS } from "../../src/properties/index.js";
import { batteryState } from "../../src/starting/battery-state.js";
import { fuelStart } from "../../src/starting/fuel-start.js";
import {
  bearingIndex,
  clearanceOf,
  oilGradeAdvice,
  pistonIndex,
  START_CAUTIONS,
} from "../../src/starting/index.js";
import { oilFitness, oilPressureDelay } from "../../src/starting/oil-fitness.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { plain } from "./plain.js";

const all = INSTALLATIONS.map((i): [string, Installation] => [i.id, i]);
const reference = installationById("four-carburettor-160");
const lithium = installationById("liquid-light-100").battery;
const oil = (id: string) => GENERIC_OILS.find((o) => o.id === id)!;
const k = kelvinFromCelsius;

describe("oil", () => {
  test("grade 100 at -15 °C is too stiff to crank, at -20 °C below its pour point; 15W-50 at 0 °C is fit", () => {
    expect(oilFitness(oil("sae-50"), k(-15))).toMatchObject({ crankable: false, gelled: false });
    const gelled = oilFitness(oil("sae-50"), k(-20));
    expect(gelled).toMatchObject({ pumpable: false, crankable: false, gelled: true });
    expect(gelled.cautions).toEqual([START_CAUTIONS.congealedOil]);
    expect(plain(gelled.text)).toMatch(
      /at -20 °C is below its pour point \(-18 °C\): it may not flow at all/,
    );
    expect(oilFitness(oil("sae-15w-50"), k(0))).toMatchObject({ pumpable: true, crankable: true });
    expect(plain(oilFitness(oil("sae-15w-50"), k(-25)).text)).toMatch(
      /too stiff to crank by SAE J300: limit -20 °C/,
    );
    expect(plain(oilFitness({ ...oil("sae-50"), pourPoint: k(-40) }, k(-25)).text)).toMatch(
      /may not reach the pump/,
    );
  });

  test("pressure takes longer the colder it is, and may never come below the pumping limit", () => {
    for (const each of GENERIC_OILS) {
      const delays = [20, 0, -10].map((c) => oilPressureDelay(each, k(c)));
      expect(delays[1]!.usual).toBeGreaterThan(delays[0]!.usual);
      expect(delays[2]!.usual).toBeGreaterThan(delays[1]!.usual);
      for (const { least, usual, most } of delays) {
        expect(usual / least).toBeCloseTo(2, 9);
        expect(most / usual).toBeCloseTo(2, 9);
      }
    }
    const never = oilPressureDelay(oil("sae-50"), k(-19));
    expect(never.most).toBe(Number.POSITIVE_INFINITY);
    expect(() => oilPressureDelay(oil("sae-50"), 10)).toThrow(/^invalid temp: 10/);
  });

  test("the published table is quoted for the air there is", () => {
    expect(plain(oilGradeAdvice(oil("sae-15w-50"), k(-20)).text)).toBe(
      "SAE 15W-50 is among the grades listed for -20 °C",
    );
    const straight = oilGradeAdvice(oil("sae-50"), k(-20));
    expect(straight.listed).toBe(false);
    expect(plain(straight.text)).toBe(
      "SAE 50 is not listed for -20 °C: SAE 15W-50, SAE 20W-50, SAE 30, SAE 20W-30 are",
    );
    expect(straight.source).toContain("your engine maker's current table decides");
    expect(() => oilGradeAdvice(oil("sae-50"), 20)).toThrow(/^invalid tempAir: 20/);
  });
});

describe("battery", () => {
  const state = (charge: number, celsius: number, air = celsius) =>
    batteryState(reference.battery, k(celsius), k(air), charge);

  test("discharged, it freezes where a full one does not", () => {
    expect(state(1, -30).status).toBe("usable");
    const frozen = state(0.2, -16);
    expect(frozen).toMatchObject({ status: "frozen", crankingPower: 0, mayCharge: false });
    expect(frozen.cautions).toContain(START_CAUTIONS.frozenBattery);
  });

  test("is not charged below 40 °F, nor a lithium pack below 0 °C", () => {
    expect(state(1, 4)).toMatchObject({ mayCharge: false, cautions: [START_CAUTIONS.coldCharging] });
    expect(state(1, 5)).toMatchObject({ mayCharge: true, cautions: [] });
    const pack = (celsius: number) => batteryState(lithium, k(celsius), k(celsius));
    expect(pack(-1)).toMatchObject({ status: "usable", mayCharge: false });
    expect(pack(1).mayCharge).toBe(true);
    expect(pack(-21)).toMatchObject({ status: "cut-off", crankingPower: 0 });
  });

  test("is taken out when it gets colder than -34 °C outside, however warm it is", () => {
    expect(state(1, 10, -35).cautions).toContain(START_CAUTIONS.removeBattery);
    expect(state(1, 10, -33).cautions).not.toContain(START_CAUTIONS.removeBattery);
  });
});

describe("fuel", () => {
  test("says what priming can do, and defers to the handbook with what can hurt", () => {
    const { fuel } = reference;
    expect(fuelStart(fuel, k(15))).toMatchObject({ offeredRatio: 1 });
    expect(plain(fuelStart(fuel, k(14)).text)).toMatch(/as on a warm day: prime by the handbook/);
    expect(plain(fuelStart(fuel, k(-9)).text)).toMatch(
      /about 2\.8 times as much fuel .* is the handbook's to say/,
    );
    expect(plain(fuelStart(fuel, k(-25)).text)).toMatch(/6\.3 times .*, more than primers are made for/);
    const lean = fuelStart(fuel, k(-40));
    expect(plain(lean.text)).toMatch(/no priming gives a mixture that burns/);
    expect(lean.cautions.map(plain).join(" ")).toMatch(/keep cranking .* locks? a cylinder .* above 0 °C/s);
  });

  test("motor gasoline evaporates more readily; less of anything does in the cold", () => {
    fc.assert(
      fc.property(fc.double({ min: -55, max: 50, noNaN: true }), (celsius) => {
        const avgas = fuelStart({ grade: "avgas", reid_kpa: 45 }, k(celsius));
        const mogas = fuelStart({ grade: "mogas", reid_kpa: 70 }, k(celsius));
        expect(mogas.vapourFraction).toBeGreaterThanOrEqual(avgas.vapourFraction);
        expect(fuelStart({ grade: "avgas", reid_kpa: 45 }, k(celsius - 2)).vapourFraction).toBeLessThan(
          avgas.vapourFraction + 1e-12,
        );
      }),
    );
    expect(fuelStart(reference.fuel, 500).vapourFraction).toBeLessThanOrEqual(1);
    expect(() => fuelStart({ grade: "avgas", reid_kpa: 5 }, k(0))).toThrow(
      /^invalid reidVapourPressure: 5000/,
    );
    expect(() => fuelStart({ grade: "avgas" } as never, k(0))).toThrow(/^invalid reidVapourPressure: NaN/);
  });
});

describe("clearances", () => {
  test.each(all)("%s: indices are 100 at 20 °C and fall with the cold", (_, installation) => {
    for (const index of [
      (c: number) => bearingIndex(installation, k(c), k(c)),
      (c: number) => pistonIndex(installation, k(c)),
    ]) {
      if (index(20) === undefined) {
        expect(index(-20)).toBeUndefined();
        continue;
      }
      expect(index(20)).toBeCloseTo(100, 9);
      expect(index(60)).toBe(100);
      expect(index(-20)).toBeLessThan(index(0)!);
      expect(index(-50)).toBeGreaterThanOrEqual(0);
    }
  });

  test("where an engine has no such fit, there is no index", () => {
    expect(bearingIndex(installationById("radial-nine-360"), k(0), k(0))).toBeUndefined();
    expect(pistonIndex(installationById("liquid-light-100"), k(0))).toBeUndefined();
  });

  test("a warm crankshaft in a cold case has less room, a cold one in a warm case more", () => {
    const even = bearingIndex(reference, k(-20), k(-20))!;
    expect(bearingIndex(reference, k(-20), k(0))!).toBeLessThan(even);
    expect(bearingIndex(reference, k(0), k(-20))!).toBeGreaterThan(even);
  });

  test("cold pistons at rest are loose: it is the hot piston in a cold barrel that runs short", () => {
    const { piston } = reference.clearances;
    const atRest = clearanceOf(piston, k(-30), k(-30));
    expect(atRest).toBeGreaterThan(piston.clearance_mm / 1000);
    expect(clearanceOf(piston, k(-30), k(100))).toBeLessThan(0.3 * atRest);
  });
});
