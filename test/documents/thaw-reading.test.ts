import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { AIR_CHANGE_USUAL, COMBUSTION_VAPOUR, FILM_LEFT, HINGE_GAP } from "../../src/airframe/index.js";
import { readThawDocument, thawSchema } from "../../src/documents/index.js";
import { pressureStandard } from "../../src/properties/index.js";
import { plainWords } from "../plain-words.js";
import { readStay, STAY } from "./airframe-documents.js";

test("a full document becomes a request in SI, with nothing assumed", () => {
  const { request, rollOut, site, assumptions, start } = readStay();
  expect(assumptions).toEqual([]);
  expect(start).toBe(Date.UTC(2026, 0, 14, 15) / 1000);
  expect(request).toMatchObject({
    area: 25,
    film: FILM_LEFT.wiped,
    duration: 12 * 3600,
    relativeHumidity: 0.4,
  });
  // 20 mm of new snow between 50 and 100 kg/m3, geometric mean
  expect(request.snow).toBeCloseTo(0.02 * Math.sqrt(5000), 10);
  expect(request.tempAircraft).toBeCloseTo(261.15, 10);
  expect(request.tempInside).toBeCloseTo(261.15, 10);
  expect(request.pressure).toBeCloseTo(pressureStandard(200), 6);
  expect(site.pressure).toBe(request.pressure);
  expect(request.gap).toMatchObject({ depth: 0.005, width: 0.0005, fill: 0.2, length: 12 });
  expect(request.gap.origin).toMatch(/^depth_mm, width_mm, filled_fraction, length_m from the document/);
  expect(request.hangar).toMatchObject({
    volume: 14 * 12 * 4,
    heaterPower: 30_000,
    heaterVapour: 0,
    airChangeRate: 1 / 3600,
    fanSpeed: 2,
    floorSwept: true,
  });
  expect(request.hangar.tempSet).toBeCloseTo(291.15, 10);
  expect(rollOut).toMatchObject({ at: 6 * 3600, timeOutside: 1200, falling: "snow" });
  expect(rollOut?.climb).toEqual({ elevation: 200, cruiseAltitude: 1500, rate: 3, airspeed: 50 });
});

test("a broom leaves a tenth", () => {
  const lying = readStay().request.snow;
  const { request, assumptions } = readStay({ snow: { ...STAY.snow, brushed: true } });
  expect(request.snow).toBeCloseTo(0.1 * lying, 12);
  expect(plainWords(assumptions)).toMatch(/A broom is taken to leave 10 % of the snow/);
});

test("a broom takes loose snow that nobody has brushed, and no ice", () => {
  const { request } = readStay();
  expect(request.brushable).toBeCloseTo(0.9 * request.snow, 12);
  expect(readStay({ snow: { ...STAY.snow, brushed: true } }).request.brushable).toBe(0);
  expect(readStay({ snow: { kind: "ice", depth_mm: 3 } }).request.brushable).toBe(0);
});

test("a forecast is read from the roll-in to its own end, and must reach over the hours", () => {
  const points = [-1, 12, 40].map((at_h) => ({
    at_h,
    air_c: at_h / 10,
    dew_point_c: -5,
    wind_mps: 3,
    cloud_fraction: 1,
  }));
  const { weather, start } = readStay({ weather: { points } });
  expect(weather?.time[0]).toBe(start);
  expect(weather?.time.at(-1)).toBe(start + 40 * 3600);
  expect(readStay().weather).toBeUndefined();
  expect(() => readStay({ weather: { points: points.slice(0, 1) } })).toThrow(/weather/);
});

test("a flame without a flue puts its water into the air", () => {
  const { request } = readStay({ hangar: { ...STAY.hangar, unflued_burner: true } });
  expect(request.hangar.heaterVapour).toBe(COMBUSTION_VAPOUR);
});

describe("what is left out is assumed out loud", () => {
  const bare = {
    length_m: 14,
    width_m: 12,
    height_m: 4,
    insulated: true,
    set_c: 18,
    heater_kw: 30,
  };

  test.each([
    ["aircraft", { area_m2: 25 }, /comes in cold-soaked, at -12 °C/],
    ["snow", undefined, /No snow is named/],
    ["film", undefined, /left to drip, not wiped/],
    ["hangar", bare, /air is taken to change 1 time an hour/],
    ["hangar", bare, /electric or with a flue/],
    ["outside", { air_c: -12 }, /dew point outside is taken 2 K below/],
    ["fuel", undefined, /no tank behind it/],
    ["roll_out", { at_h: 6, falling: "snow" }, /20 min from roll-out to take-off, wind 5 m\/s, clear sky/],
    ["roll_out", { at_h: 6, falling: "snow", cruise_m: 900 }, /climbing 490 ft\/min, flying 45 m\/s/],
    ["ensemble", undefined, /counted over 40 drawn cases/],
  ] as const)("%s %j", (key, value, words) => {
    expect(plainWords(readStay({ [key]: value }).assumptions)).toMatch(words);
    expect(plainWords(readStay().assumptions)).not.toMatch(words);
  });

  test("the usual hinge, the usual air change, no roll-out", () => {
    const { request, rollOut } = readStay({ gap: undefined, hangar: bare, roll_out: undefined });
    expect(request.gap).toEqual(HINGE_GAP);
    expect(request.hangar.airChangeRate).toBe(AIR_CHANGE_USUAL);
    expect(rollOut).toBeUndefined();
  });

  test("snow on an aircraft in thawing air means a skin at 0 °C", () => {
    const outside = { air_c: 3, dew_point_c: 1 };
    expect(readStay({ aircraft: { area_m2: 25 }, outside }).request.tempAircraft).toBe(273.15);
    expect(
      readStay({ aircraft: { area_m2: 25 }, outside, snow: undefined }).request.tempAircraft,
    ).toBeCloseTo(276.15);
  });
});

describe("the roll-out", () => {
  const rolledOut = (changes: object) => readStay({ roll_out: { ...STAY.roll_out, ...changes } }).rollOut;

  test("has the outside's air unless it has its own", () => {
    expect(rolledOut({})?.outside.tempAir).toBeCloseTo(261.15, 10);
    expect(rolledOut({})?.outside.tempDewPoint).toBeCloseTo(258.15, 10);
    const own = rolledOut({ air_c: 1, dew_point_c: -1 })?.outside;
    expect(own).toMatchObject({ windSpeed: 2, cloudCover: 0.5 });
    expect(own?.tempAir).toBeCloseTo(274.15, 10);
    expect(own?.tempDewPoint).toBeCloseTo(272.15, 10);
    // another air temperature does not keep the old dew point
    expect(rolledOut({ air_c: -20 })?.outside.tempDewPoint).toBeCloseTo(251.15, 10);
  });

  test("takes feet, feet a minute and knots", () => {
    const {
      cruise_m: _,
      climb_mps: __,
      airspeed_mps: ___,
      ...rest
    } = STAY.roll_out ?? { falling: "nothing" };
    const reading = readThawDocument({
      ...STAY,
      roll_out: {
        ...rest,
        cruise_ft: 5000,
        climb_fpm: 500,
        airspeed_kt: 100,
        sounding: [
          { altitude_ft: 3000, air_c: -4 },
          { altitude_m: 2000, air_c: -9 },
        ],
      },
    });
    const climb = reading.ok ? reading.rollOut?.climb : undefined;
    expect(climb?.cruiseAltitude).toBeCloseTo(1524, 9);
    expect(climb?.rate).toBeCloseTo(2.54, 9);
    expect(climb?.airspeed).toBeCloseTo(51.444, 3);
    expect(climb?.sounding?.altitude.map((m) => Math.round(m))).toEqual([914, 2000]);
    expect(climb?.sounding?.tempAir[1]).toBeCloseTo(264.15, 10);
  });

  test("is told by a date and time too", () => {
    const { at_h: _, ...rest } = STAY.roll_out ?? { falling: "nothing" };
    const time = "2026-01-14T21:30+01:00";
    expect(readStay({ roll_out: { ...rest, time } }).rollOut?.at).toBe(5.5 * 3600);
  });
});

test("the schema takes a whole stay as it is", () => {
  expect(thawSchema.parse(STAY)).toEqual(STAY);
});

test("no document makes the reader throw", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...Object.keys(STAY)),
      fc.oneof(fc.jsonValue(), fc.constantFrom(-1, 1e9, {}, [], "")),
      (key, spoilt) => {
        const reading = readThawDocument({ ...STAY, [key]: spoilt });
        if (!reading.ok) expect(reading.issues.length).toBeGreaterThan(0);
      },
    ),
  );
});
