import { describe, expect, test } from "vitest";
import { type Climb, HINGE_GAP, PANELS, panelWithFuel } from "../../src/airframe/index.js";
import { type RefreezeRequest, refreezeCheck } from "../../src/airframe/refreeze.js";
import { kelvinFromCelsius, SECONDS_OF_MINUTE } from "../../src/units/index.js";
import { refreezeRequest, resultOf } from "./examples.js";

const refreeze = (change: Partial<RefreezeRequest> = {}) => resultOf(refreezeCheck(refreezeRequest(change)));
const MINUTE = SECONDS_OF_MINUTE;
const CLIMB: Climb = { elevation: 100, cruiseAltitude: 2500, rate: 3, airspeed: 50 };
const MILD = {
  tempAir: kelvinFromCelsius(5),
  tempDewPoint: kelvinFromCelsius(3),
  windSpeed: 3,
  cloudCover: 1,
};

test("in frost the thin skin is at 0 °C within minutes, fittings later, and what is wet freezes", () => {
  const { skinFreezing, gapFreezing, film, gaps } = refreeze();
  expect(skinFreezing.middle!).toBeLessThan(5 * MINUTE);
  expect(gapFreezing.middle!).toBeGreaterThan(skinFreezing.middle!);
  expect(film.verdict).toBe("likely");
  expect(gaps.verdict).toBe("likely");
});

test("what is dry cannot freeze", () => {
  const { film, gaps } = refreeze({
    film: 0,
    gap: { ...HINGE_GAP, fill: 0 },
    outside: { ...refreezeRequest().outside, cloudCover: 1, tempDewPoint: kelvinFromCelsius(-30) },
  });
  expect(film).toEqual({ verdict: "none", atTakeOff: 0, inClimb: 0 });
  expect(gaps).toEqual({ verdict: "none", atTakeOff: 0, inClimb: 0 });
});

test("wind hastens it, a warmer evening delays it", () => {
  const outside = refreezeRequest().outside;
  const windy = refreeze({ outside: { ...outside, windSpeed: 8 } });
  const calm = refreeze({ outside: { ...outside, windSpeed: 0 } });
  const milder = refreeze({
    outside: { ...outside, tempAir: kelvinFromCelsius(-3), tempDewPoint: kelvinFromCelsius(-6) },
  });
  expect(windy.gapFreezing.middle!).toBeLessThan(calm.gapFreezing.middle!);
  expect(milder.gapFreezing.middle!).toBeGreaterThan(windy.gapFreezing.middle!);
});

test("a wet skin under a clear dry sky freezes in air above 0 °C, which the wet bulb warns of", () => {
  const { film, tempWetBulb, skinFreezing } = refreeze({
    outside: {
      tempAir: kelvinFromCelsius(1.5),
      tempDewPoint: kelvinFromCelsius(-7),
      windSpeed: 1,
      cloudCover: 0,
    },
  });
  expect(tempWetBulb).toBeLessThan(273.15);
  expect(skinFreezing.middle!).toBeLessThan(30 * MINUTE);
  expect(film.verdict).toBe("likely");
});

describe("the climb", () => {
  test("freezes above the freezing level what was liquid on the ground", () => {
    const { gaps, film, climb } = refreeze({ outside: MILD, climb: CLIMB });
    expect(climb!.freezingLevel).toBeCloseTo(100 + 5 / 0.0065, 6);
    expect(climb!.tempCruise).toBeCloseTo(kelvinFromCelsius(5 - 0.0065 * 2400), 9);
    expect(gaps).toEqual({ verdict: "likely", atTakeOff: 0, inClimb: 1 });
    expect(film.atTakeOff).toBe(0);
    // 769 m at 3 m/s, and the fitting lags the air.
    expect(climb!.gapFreezing.middle!).toBeGreaterThan(769 / 3);
    expect(climb!.gapFreezing.middle!).toBeLessThan(769 / 3 + 3 * MINUTE);
  });

  test("does not in warm air aloft, as a sounding tells", () => {
    const sounding = { altitude: [500, 1000, 3000], tempAir: [281, 282, 276] };
    const { gaps, climb } = refreeze({ outside: MILD, climb: { ...CLIMB, sounding } });
    expect(climb!.freezingLevel).toBeUndefined();
    expect(gaps.verdict).toBe("none");
  });
});

describe("falling snow", () => {
  test("melts on a warm skin; open doors cool it in minutes, over warm fuel in hours or not at all", () => {
    const { meltsSnow, coolIndoors, cautions } = refreeze({ falling: "snow" });
    expect(meltsSnow).toBe(true);
    expect(coolIndoors!.middle!).toBeLessThan(20 * MINUTE);
    expect(cautions.some(({ source }) => source.includes("TP 10643 ch. 4, Hangars"))).toBe(true);
    const panel = panelWithFuel(PANELS["aluminium-painted"], 0.15, kelvinFromCelsius(15), true);
    const fuelled = refreeze({ falling: "snow", panel });
    expect(fuelled.skinFreezing.middle!).toBeGreaterThan(60 * MINUTE);
    expect(fuelled.coolIndoors!.middle ?? Number.POSITIVE_INFINITY).toBeGreaterThan(60 * MINUTE);
  });

  test("does not melt on a skin below 0 °C, and without snow nothing is asked", () => {
    expect(refreeze({ falling: "snow", tempSkin: kelvinFromCelsius(-2), film: 0 }).meltsSnow).toBe(false);
    expect(refreeze().meltsSnow).toBe(false);
    expect(refreeze().coolIndoors).toBeUndefined();
  });
});

test("members spread the times, the same for the same seed", () => {
  const request = refreezeRequest({ climb: CLIMB, ensemble: { members: 6, seed: 2 } });
  const result = resultOf(refreezeCheck(request));
  expect(result.gapFreezing.low!).toBeLessThan(result.gapFreezing.high!);
  expect(resultOf(refreezeCheck(request))).toEqual(result);
});

describe("refusals by name", () => {
  test.each([
    ["dew point", { outside: { ...MILD, tempDewPoint: 280 } }, /invalid outside\.tempDewPoint: 280/],
    ["cloud", { outside: { ...MILD, cloudCover: 5 } }, /invalid outside\.cloudCover: 5/],
    ["cruise", { climb: { ...CLIMB, cruiseAltitude: 50 } }, /invalid climb\.cruiseAltitude: 50/],
    [
      "sounding",
      { climb: { ...CLIMB, sounding: { altitude: [500, 400], tempAir: [270, 268] } } },
      /invalid climb\.sounding\.altitude: 400/,
    ],
    [
      "lengths",
      { climb: { ...CLIMB, sounding: { altitude: [500], tempAir: [] } } },
      /invalid climb\.sounding: 1 altitudes with 0/,
    ],
    ["skin", { tempSkin: 15 }, /invalid tempSkin: 15/],
    ["time", { timeOutside: -1 }, /invalid timeOutside: -1/],
    ["falling", { falling: "hail" as "snow" }, /unknown falling: hail/],
  ] as const)("%s", (_, change, message) => {
    expect(() => refreezeCheck(refreezeRequest(change as Partial<RefreezeRequest>))).toThrow(message);
  });
});
