import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type FrostRequest,
  nightFrost,
  PANELS,
  panelWithFuel,
  WING_COVERS,
} from "../../src/airframe/index.js";
import { nightSkyEmissivity } from "../../src/airframe/night-sky.js";
import { kelvinFromCelsius, SECONDS_OF_HOUR } from "../../src/units/index.js";
import { english } from "../../src/words/index.js";
import { frostRequest, NIGHTFALL, night, resultOf } from "./examples.js";

const frost = (request: FrostRequest) => resultOf(nightFrost(request)).upper;
const kilograms = (air: number, depression: number, wind: number, cloud: number) =>
  frost(frostRequest(night(air, depression, wind, cloud))).frostAtEnd.middle;

test("a clear, calm, damp night in frost puts frost on the wing, below the air's temperature", () => {
  const { upper, lower, series } = resultOf(nightFrost(frostRequest(night(-2, 1.5, 0.5, 0))));
  expect(upper.verdict).toBe("likely");
  expect(upper.chanceAtEnd).toBe(1);
  expect(upper.first.middle! - NIGHTFALL).toBeLessThan(2 * SECONDS_OF_HOUR);
  expect(upper.duration.middle).toBeGreaterThan(10 * SECONDS_OF_HOUR);
  expect(upper.mostBelowAir.middle).toBeGreaterThan(4);
  expect(upper.frostAtEnd.middle).toBeGreaterThan(lower.frostAtEnd.middle);
  expect(series.tempUpper.middle.at(-1)!).toBeLessThan(series.tempCondensation.middle.at(-1)!);
});

test("clouds, dry air and a warm night leave less, and no frost comes above 0 °C", () => {
  expect(kilograms(-5, 2, 1, 0)).toBeGreaterThan(kilograms(-5, 2, 1, 0.6));
  expect(kilograms(-5, 2, 1, 0.6)).toBeGreaterThan(kilograms(-5, 2, 1, 1));
  expect(kilograms(-5, 1, 1, 0)).toBeGreaterThan(kilograms(-5, 3, 1, 0));
  expect(kilograms(-5, 15, 1, 0)).toBe(0);
  const mild = frost(frostRequest(night(14, 1, 1, 0)));
  expect(mild.verdict).toBe("none");
  expect(mild.frostAtEnd.middle).toBeLessThan(1e-6);
  expect(mild.dewAtEnd.middle).toBeGreaterThan(0.02);
});

test("frost grows with humidity and a clearer sky, and wind keeps the skin nearer the air", () => {
  const air = fc.double({ min: -25, max: -2, noNaN: true });
  const depression = fc.double({ min: 0.5, max: 5, noNaN: true });
  const wind = fc.double({ min: 0.5, max: 8, noNaN: true });
  fc.assert(
    fc.property(
      air,
      depression,
      wind,
      fc.double({ min: 0, max: 0.7, noNaN: true }),
      (t, dry, speed, cloud) => {
        const base = frost(frostRequest(night(t, dry, speed, cloud)));
        const damper = frost(frostRequest(night(t, dry - 0.4, speed, cloud)));
        const cloudier = frost(frostRequest(night(t, dry, speed, cloud + 0.3)));
        const windier = frost(frostRequest(night(t, dry, speed + 2, cloud)));
        expect(damper.frostAtEnd.middle).toBeGreaterThanOrEqual(base.frostAtEnd.middle);
        expect(cloudier.frostAtEnd.middle).toBeLessThanOrEqual(base.frostAtEnd.middle + 1e-6);
        expect(windier.mostBelowAir.middle).toBeLessThan(base.mostBelowAir.middle);
      },
    ),
    { numRuns: 8 },
  );
});

test("dew that is then cooled below 0 °C becomes ice", () => {
  const weather = night(8, 1, 1, 0);
  weather.tempAir.forEach((temp, k) => {
    weather.tempAir[k] = temp - k;
    weather.tempDewPoint[k] = temp - k - 1;
  });
  const { series } = resultOf(nightFrost(frostRequest(weather)));
  const dew = series.waterUpper.middle;
  expect(Math.max(...dew)).toBeGreaterThan(0.01);
  expect(dew.at(-1)!).toBeLessThan(0.001);
  expect(series.iceUpper.middle.at(-1)!).toBeGreaterThan(Math.max(...dew));
});

describe("covers, panels and fuel", () => {
  const weather = night(-3, 1.5, 0.5, 0);

  test("a cover takes the frost itself and keeps nearly all of it off the wing", () => {
    const open = frost(frostRequest(weather));
    const { upper, series } = resultOf(nightFrost(frostRequest(weather, { cover: WING_COVERS.quilted })));
    expect(upper.frostAtEnd.middle).toBeLessThan(0.05 * open.frostAtEnd.middle);
    expect(upper.mostBelowAir.middle).toBeLessThan(open.mostBelowAir.middle);
    expect(series.iceCover!.middle.at(-1)!).toBeGreaterThan(0.05);
  });

  test("bare bright metal frosts later than paint (low emittance prevents frost: Hamberg et al., Applied Optics 26, 1987)", () => {
    const bright = frost(frostRequest(weather, { panel: PANELS["aluminium-bare"] }));
    const painted = frost(frostRequest(weather));
    expect(bright.first.middle ?? Number.POSITIVE_INFINITY).toBeGreaterThan(painted.first.middle!);
    expect(bright.frostAtEnd.middle).toBeLessThan(painted.frostAtEnd.middle);
  });

  test("cold-soaked fuel frosts both faces in air above 0 °C, and the caution says so", () => {
    const panel = panelWithFuel(PANELS["aluminium-painted"], 0.15, kelvinFromCelsius(-10), true);
    const request = frostRequest(night(2, 1, 3, 1), {
      panel,
      tempSkin: kelvinFromCelsius(-5),
      tempInside: kelvinFromCelsius(-10),
      duration: 2 * SECONDS_OF_HOUR,
    });
    const { upper, lower, cautions } = resultOf(nightFrost(request));
    expect(upper.verdict).toBe("likely");
    expect(lower.verdict).toBe("likely");
    expect(cautions.some((one) => english(one).includes("under the wing"))).toBe(true);
  });
});

describe("members", () => {
  // An evening on which it is open whether the skin gets below the frost point.
  const unsure = frostRequest(night(-4, 5, 2.5, 0.7), { ensemble: { members: 20, seed: 7 } });

  test("give chances between nothing and certainty, and the same ones for the same seed", () => {
    const result = resultOf(nightFrost(unsure));
    expect(result.members).toBe(20);
    expect(result.upper.chance).toBeGreaterThan(0.05);
    expect(result.upper.chance).toBeLessThan(0.95);
    expect(result.upper.verdict).toBe(result.upper.chance >= 0.5 ? "likely" : "possible");
    expect(result.upper.frostAtEnd.high).toBeGreaterThan(result.upper.frostAtEnd.low);
    expect(resultOf(nightFrost(unsure))).toEqual(result);
    const other = resultOf(nightFrost({ ...unsure, ensemble: { members: 20, seed: 8 } }));
    expect(other.upper.frostAtEnd).not.toEqual(result.upper.frostAtEnd);
  });
});

test("the night sky grows warmer with cloud and moisture, and colder with height", () => {
  for (const t of [-30, -20, -10, 0, 10]) {
    const air = kelvinFromCelsius(t);
    const at = (depression: number, cloud: number, pressure = 101_325) =>
      nightSkyEmissivity(air, air - depression, cloud, pressure).middle;
    expect(at(5, 0.5)).toBeGreaterThan(at(5, 0));
    expect(at(5, 1)).toBeGreaterThan(at(5, 0.5));
    expect(at(2, 0)).toBeGreaterThan(at(8, 0));
    expect(at(5, 0, 80_000)).toBeLessThan(at(5, 0));
  }
});

describe("refusals by name", () => {
  const good = night(-3, 2, 1, 0);
  const weatherWith = (name: "tempDewPoint" | "windSpeed" | "cloudCover", value: number) => {
    const values = Float64Array.from(good[name]);
    values[3] = value;
    return { ...good, [name]: values };
  };
  test.each([
    [
      "dew point above air",
      frostRequest(weatherWith("tempDewPoint", 274)),
      /invalid weather\[3\]\.tempDewPoint: 274/,
    ],
    [
      "dew point NaN",
      frostRequest(weatherWith("tempDewPoint", Number.NaN)),
      /invalid weather\[3\]\.tempDewPoint: NaN/,
    ],
    ["wind", frostRequest(weatherWith("windSpeed", -1)), /invalid weather\[3\]\.windSpeed: -1/],
    ["cloud", frostRequest(weatherWith("cloudCover", 8)), /invalid weather\[3\]\.cloudCover: 8/],
    ["start", frostRequest(good, { start: NIGHTFALL - 10 * SECONDS_OF_HOUR }), /invalid start or duration/],
    ["duration", frostRequest(good, { duration: 60 }), /invalid duration: 60/],
    [
      "site",
      frostRequest(good, { site: { height: 1, roughness: 0.01, skyView: 2, pressure: 1e5 } }),
      /invalid site\.skyView: 2/,
    ],
    ["fuel", frostRequest(good, { tempInside: 10 }), /invalid tempInside: 10/],
    [
      "cover",
      frostRequest(good, { cover: { ...WING_COVERS.mesh, resistance: 0 } }),
      /invalid cover\.resistance: 0/,
    ],
    [
      "members",
      frostRequest(good, { ensemble: { members: 2.5, seed: 1 } }),
      /invalid ensemble\.members: 2\.5/,
    ],
  ])("%s", (_, request, message) => {
    expect(() => nightFrost(request)).toThrow(message);
  });
});
