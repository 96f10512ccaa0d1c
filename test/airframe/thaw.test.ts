import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { GAP_ROW } from "../../src/airframe/gap-model.js";
import { COMBUSTION_VAPOUR } from "../../src/airframe/hangar.js";
import { HANGAR_ROW } from "../../src/airframe/hangar-model.js";
import { FILM_LEFT, HINGE_GAP, snowMass, thawAndDry } from "../../src/airframe/index.js";
import { evenTimes, integrate } from "../../src/airframe/integrate.js";
import { PANEL_ROW } from "../../src/airframe/panel-rows.js";
import type { ThawRequest } from "../../src/airframe/thaw.js";
import { type ThawMember, thawModel } from "../../src/airframe/thaw-model.js";
import { faceEnthalpy, LATENT_HEAT_VAPORISATION } from "../../src/airframe/wet-layer.js";
import { densityAir, heatCapacityAir } from "../../src/properties/index.js";
import { kelvinFromCelsius, SECONDS_OF_HOUR } from "../../src/units/index.js";
import { english } from "../../src/words/index.js";
import { BAY, resultOf, thawRequest } from "./examples.js";

const thaw = (change: Partial<ThawRequest> = {}) => resultOf(thawAndDry(thawRequest(change)));
const HOUR = SECONDS_OF_HOUR;

const MEMBER: ThawMember = {
  ...thawRequest({ snow: 2, tempInside: kelvinFromCelsius(-15) }),
  relativeHumidity: undefined,
  tempInside: kelvinFromCelsius(-15),
  conditions: { tempFilm: 278, pressure: 101_325 },
  transferFactor: 1,
  evaporationDraw: 0,
  airChangeFactor: 1,
};

/** First and last state of a member after `hours`. */
function run(member: ThawMember, hours: number) {
  const model = thawModel(member);
  const { samples, status } = integrate({
    initial: model.initial,
    scales: model.scales,
    sums: model.sums,
    start: 0,
    sampleTimes: evenTimes(0, hours * HOUR, hours * HOUR),
    derivative: model.derivative,
  });
  expect(status).toBe("completed");
  return { model, final: samples.slice(-model.initial.length) };
}

describe("balances", () => {
  test.each([2, 8, 30])(
    "no water is lost in %s h: aircraft, gaps, floor, air, building and door add up",
    (hours) => {
      const { model, final } = run(MEMBER, hours);
      const { gap, hangar } = model;
      const { area } = MEMBER;
      const mouth = HINGE_GAP.length * HINGE_GAP.width;
      const lying = (y: Float64Array) =>
        y[PANEL_ROW.iceUpper] + y[PANEL_ROW.waterUpper] + y[PANEL_ROW.iceLower] + y[PANEL_ROW.waterLower];
      const water = (y: Float64Array) =>
        area * lying(y) +
        mouth * (y[gap + GAP_ROW.ice] + y[gap + GAP_ROW.water]) +
        y[hangar + HANGAR_ROW.vapour] +
        y[hangar + HANGAR_ROW.puddle] +
        y[hangar + HANGAR_ROW.condensed] +
        y[hangar + HANGAR_ROW.swept] -
        y[hangar + HANGAR_ROW.broughtIn];
      expect(water(model.initial)).toBeGreaterThan(50);
      expect(Math.abs(water(final) - water(model.initial))).toBeLessThan(1e-5);
    },
  );

  test("a sealed, perfectly insulated hangar keeps all the heater's energy", () => {
    const sealed = { ...BAY, conductance: 0, airChangeRate: 0, coldArea: 0 };
    const gap = { ...HINGE_GAP, length: 0 };
    const { model, final } = run({ ...MEMBER, hangar: sealed, gap }, 6);
    const { panel, area } = MEMBER;
    const airCapacity = sealed.volume * densityAir(278, 101_325) * heatCapacityAir(278);
    const face = (y: Float64Array, first: number, bare: number) =>
      faceEnthalpy(y[first], y[first + 1], y[first + 2], bare);
    const energy = (y: Float64Array) =>
      area *
        (face(y, PANEL_ROW.tempUpper, panel.heatCapacityUpper) +
          face(y, PANEL_ROW.tempLower, panel.heatCapacityLower) +
          panel.inside.heatCapacity * (y[PANEL_ROW.tempInside] - 273.15)) +
      airCapacity * y[model.hangar + HANGAR_ROW.tempAir] +
      sealed.heatCapacity * y[model.hangar + HANGAR_ROW.tempShell] +
      LATENT_HEAT_VAPORISATION * y[model.hangar + HANGAR_ROW.vapour];
    const stored = energy(final) - energy(model.initial);
    const given = final[model.hangar + HANGAR_ROW.heat];
    // Melting 50 kg takes 17 MJ; left out is what water and vapour carry above 0 °C.
    expect(Math.abs(stored - given)).toBeLessThan(0.15e6);
    expect(final[PANEL_ROW.iceUpper]).toBeLessThan(1e-3);
  });
});

test("four hours thaw it, but it is still wet (common practice)", () => {
  const { series, skinClear, gapsDry } = thaw({ snow: snowMass(0.04, "new") });
  const fourHours = series.time.findIndex((t) => t >= 4 * HOUR);
  expect(skinClear.middle!).toBeLessThan(4 * HOUR);
  expect(series.waterUpper.middle[fourHours]!).toBeGreaterThan(0.1);
  expect(series.gapWater.middle[fourHours]!).toBeGreaterThan(1);
  expect(gapsDry.middle!).toBeGreaterThan(8 * HOUR);
});

test("whatever the hangar, the snow and the fan, the calculation is carried through", () => {
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(
      between(228, 281),
      between(0, 6),
      between(268, 298),
      between(0, 15),
      between(0, 8),
      between(0.001, 0.02),
      (tempOutside, depression, tempSet, snow, fanSpeed, depth) => {
        const { status } = thawAndDry(
          thawRequest({
            outside: { tempAir: tempOutside, tempDewPoint: tempOutside - depression },
            hangar: { ...BAY, tempSet, fanSpeed },
            snow,
            gap: { ...HINGE_GAP, depth },
            tempAircraft: Math.min(tempOutside, 273.15),
          }),
        );
        expect(status).toBe("completed");
      },
    ),
    { numRuns: 8 },
  );
});

describe("what helps and what does not", () => {
  const base = thaw();

  test("first clear, then dry, gaps last; each band holds the middle", () => {
    expect(base.skinClear.middle!).toBeLessThan(base.skinDry.middle!);
    expect(base.gapsThawed.middle!).toBeLessThan(base.gapsDry.middle!);
    expect(base.skinDry.middle!).toBeLessThan(base.gapsDry.middle!);
    expect(base.weakest).toBe("gaps");
  });

  test("a fan melts and dries faster", () => {
    const fan = thaw({ hangar: { ...BAY, fanSpeed: 3 } });
    expect(fan.skinClear.middle!).toBeLessThan(base.skinClear.middle!);
    expect(fan.skinDry.middle!).toBeLessThan(0.7 * base.skinDry.middle!);
    expect(fan.melt.convection).toBeGreaterThan(3 * base.melt.convection);
  });

  test("wiping saves hours on the skin and nothing in the gaps", () => {
    const wiped = thaw({ film: FILM_LEFT.wiped });
    expect(base.skinDry.middle! - wiped.skinDry.middle!).toBeGreaterThan(2 * HOUR);
    expect(Math.abs(wiped.gapsDry.middle! - base.gapsDry.middle!)).toBeLessThan(HOUR);
  });

  test("more snow, a cooler hangar and fuel cold-soaked in the wing take longer", () => {
    expect(thaw({ snow: 4 }).skinClear.middle!).toBeGreaterThan(2.5 * base.skinClear.middle!);
    expect(thaw({ hangar: { ...BAY, tempSet: kelvinFromCelsius(8) } }).skinClear.middle!).toBeGreaterThan(
      1.5 * base.skinClear.middle!,
    );
    const panel = {
      ...thawRequest().panel,
      inside: { heatCapacity: 2e5, coefficientUpper: 60, coefficientLower: 60 },
    };
    expect(thaw({ panel }).skinClear.middle!).toBeGreaterThan(1.5 * base.skinClear.middle!);
  });

  test("melt water on the floor, little air change and an open flame make the air damp and drying slow", () => {
    const mild = { outside: { tempAir: kelvinFromCelsius(0), tempDewPoint: kelvinFromCelsius(-1) }, snow: 3 };
    const swept = thaw({ ...mild, hangar: { ...BAY, floorSwept: true } });
    const left = thaw(mild);
    const tight = thaw({ ...mild, hangar: { ...BAY, airChangeRate: 0.2 / HOUR } });
    const flame = thaw({ ...mild, hangar: { ...BAY, heaterVapour: COMBUSTION_VAPOUR } });
    const later = (time: number | undefined) => time ?? Number.POSITIVE_INFINITY;
    expect(left.mostHumid.middle).toBeGreaterThan(swept.mostHumid.middle);
    expect(later(left.gapsDry.middle)).toBeGreaterThan(later(swept.gapsDry.middle));
    expect(tight.mostHumid.middle).toBeGreaterThan(left.mostHumid.middle);
    expect(later(tight.skinDry.middle)).toBeGreaterThan(later(left.skinDry.middle));
    expect(flame.mostHumid.middle).toBeGreaterThan(left.mostHumid.middle);
    expect(flame.cautions.some((one) => english(one).includes("carbon monoxide"))).toBe(true);
  });

  test("a hangar below 0 °C never clears it, and one whose heater is too small is named", () => {
    const frozen = thaw({
      hangar: { ...BAY, heaterPower: 0, tempSet: kelvinFromCelsius(-3) },
      duration: 24 * HOUR,
    });
    expect(frozen.skinClear).toEqual({ low: undefined, middle: undefined, high: undefined, share: 0 });
    const weak = thaw({ hangar: { ...BAY, heaterPower: 1500 } });
    expect(weak.cautions.some((one) => english(one).includes("does not hold the setting"))).toBe(true);
  });

  test("a cold dry aircraft sweats in a warm damp hangar", () => {
    const sweating = thaw({ snow: 0, relativeHumidity: 0.7, duration: 6 * HOUR });
    expect(Math.max(...sweating.series.waterUpper.middle)).toBeGreaterThan(0.001);
    expect(sweating.skinClear.middle!).toBeLessThan(HOUR);
  });
});

test("members spread every time, the same for the same seed", () => {
  const request = thawRequest({ ensemble: { members: 5, seed: 3 } });
  const result = resultOf(thawAndDry(request));
  for (const band of [result.skinClear, result.skinDry, result.gapsDry]) {
    expect(band.low!).toBeLessThan(band.middle!);
    expect(band.high ?? Number.POSITIVE_INFINITY).toBeGreaterThan(band.middle!);
  }
  expect(resultOf(thawAndDry(request))).toEqual(result);
});

describe("refusals by name", () => {
  test.each([
    [
      "dew point above air",
      { outside: { tempAir: 270, tempDewPoint: 271 } },
      /invalid outside\.tempDewPoint: 271/,
    ],
    ["snow", { snow: -1 }, /invalid snow: -1/],
    ["film", { film: Number.NaN }, /invalid film: NaN/],
    ["air change", { hangar: { ...BAY, airChangeRate: -1 } }, /invalid hangar\.airChangeRate: -1/],
    ["fan", { hangar: { ...BAY, fanSpeed: 99 } }, /invalid hangar\.fanSpeed: 99/],
    ["humidity", { relativeHumidity: 40 }, /invalid relativeHumidity: 40/],
    ["gap", { gap: { ...HINGE_GAP, width: 0.02 } }, /invalid gap\.width: 0\.02/],
    ["pressure", { pressure: 1013 }, /invalid pressure: 1013/],
    ["snow on a warm aircraft", { tempAircraft: 275 }, /invalid tempAircraft: 275 .*with snow on it/],
    ["temperature", { tempAircraft: -20 }, /invalid tempAircraft: -20/],
  ] as const)("%s", (_, change, message) => {
    expect(() => thawAndDry(thawRequest(change))).toThrow(message);
  });
});
