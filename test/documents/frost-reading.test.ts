import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { PANELS, WING_COVERS } from "../../src/airframe/index.js";
import { frostSchema, readFrostDocument } from "../../src/documents/index.js";
import { plainWords } from "../plain-words.js";
import { NIGHT, readNight } from "./airframe-documents.js";

const START = Date.UTC(2026, 0, 14, 17) / 1000;

test("a full document becomes a request in SI, with nothing assumed", () => {
  const { request, assumptions, zone } = readNight({ cover: "mesh" });
  expect(assumptions).toEqual([]);
  expect(zone).toBe("Europe/Oslo");
  expect(request.start).toBe(START);
  expect(request.duration).toBe(12 * 3600);
  expect(request.cover).toEqual(WING_COVERS.mesh);
  expect(request.site).toMatchObject({ height: 1.5, roughness: 0.005, skyView: 0.9 });
  expect(request.site.pressure).toBeCloseTo(101_325, 6);
  expect(request.tempSkin).toBeCloseTo(268.15, 10);
  expect(request.tempInside).toBeCloseTo(269.15, 10);
  expect(request.weather.tempAir[0]).toBeCloseTo(268.15, 10);
  expect(request.ensemble).toEqual({ members: 20, seed: 1 });
  // 0.1 m of avgas of about 740 kg/m3 and 2050 J/(kg K) on top of the cavity's own 2.8 kJ/(m2 K)
  expect(request.panel.inside.heatCapacity).toBeGreaterThan(140e3);
  expect(request.panel.inside.heatCapacity).toBeLessThan(165e3);
});

test("a panel and a cover may be described instead of named", () => {
  const { request } = readNight({
    fuel: undefined,
    panel: {
      name: "tail",
      chord_m: 0.8,
      span_m: 3,
      upper_skin_j_per_m2k: 1500,
      lower_skin_j_per_m2k: 1400,
      emissivity: 0.85,
      inside_j_per_m2k: 2000,
      inside_upper_w_per_m2k: 3,
      inside_lower_w_per_m2k: 4,
      origin: "own measurement",
    },
    cover: {
      resistance_m2k_per_w: 0.04,
      heat_capacity_j_per_m2k: 300,
      emissivity: 0.8,
      vapour_leak: 0.2,
      origin: "bed sheet",
    },
  });
  expect(request.panel).toEqual({
    name: "tail",
    chord: 0.8,
    span: 3,
    heatCapacityUpper: 1500,
    heatCapacityLower: 1400,
    emissivity: 0.85,
    inside: { heatCapacity: 2000, coefficientUpper: 3, coefficientLower: 4 },
    origin: "own measurement",
  });
  expect(request.cover).toEqual({
    resistance: 0.04,
    heatCapacity: 300,
    emissivity: 0.8,
    vapourLeak: 0.2,
    origin: "bed sheet",
  });
});

test("a departure takes the place of hours", () => {
  const at = (departure: string) => readNight({ hours: undefined, departure }).request.duration / 3600;
  expect(at("05:30")).toBeCloseTo(11.5, 10);
  expect(at("2026-01-15T06:00+01:00")).toBeCloseTo(12, 10);
});

describe("what is left out is assumed out loud, on the side of more frost", () => {
  const said = (changes: Parameters<typeof readNight>[0]) => plainWords(readNight(changes).assumptions);

  test.each([
    ["site", /snow-covered fields.*1\.5 m up, open sky all around, sea level/],
    ["fuel", /no tank behind it/],
    ["zone", /No time zone is given/],
    ["ensemble", /counted over 100 drawn cases/],
  ] as const)("%s", (key, words) => {
    expect(said({ [key]: undefined })).toMatch(words);
    expect(said({})).not.toMatch(words);
  });

  test("no panel: painted aluminium", () => {
    expect(readNight({ panel: undefined, fuel: undefined }).request.panel).toEqual(
      PANELS["aluminium-painted"],
    );
  });

  test("fuel nobody measured is as warm as the air", () => {
    const { request, assumptions } = readNight({ fuel: { depth_mm: 100, full: true } });
    expect(request.tempInside).toBeCloseTo(268.15, 10);
    expect(plainWords(assumptions)).toMatch(/Fuel is taken as warm as the air at the start/);
  });

  test("wind nobody gave is light, not the fresh wind that cools an engine", () => {
    const points = [0, 3, 6, 9, 12].map((at_h) => ({ at_h, air_c: -5, dew_point_c: -7, cloud_fraction: 0 }));
    const { request, assumptions } = readNight({ weather: { points } });
    expect([...request.weather.windSpeed]).toEqual([1, 1, 1, 1, 1]);
    expect(plainWords(assumptions)).toMatch(/no wind is given it is taken as 1 m\/s/);
    expect(plainWords(assumptions)).not.toMatch(/wind taken as 5 m\/s/);
  });

  test("where a forecast's gusts are taken to last, a lull is said to bring more frost", () => {
    const metar = "METAR XXRV 141650Z 24002KT CAVOK M05/M07 Q1013";
    const taf = (passing: string) =>
      `TAF XXRV 141400Z 1415/1512 24002KT CAVOK ${passing} TNM09/1506Z TXM03/1511Z`;
    const lull = /a lull brings more frost/;
    expect(said({ weather: { metar, taf: taf("TEMPO 1420/1502 24020KT") } })).toMatch(lull);
    expect(said({ weather: { metar, taf: taf("") } })).not.toMatch(lull);
  });

  test("a wind of 5 m/s that was given stays", () => {
    const points = [0, 3, 6, 9, 12].map((at_h) => ({ ...NIGHT.weather.points?.[0], at_h, wind_mps: 5 }));
    const { request, assumptions } = readNight({ weather: { points } });
    expect(request.weather.windSpeed[2]).toBe(5);
    expect(assumptions).toEqual([]);
  });
});

test("the schema takes a whole night as it is", () => {
  expect(frostSchema.parse(NIGHT)).toEqual(NIGHT);
});

test("no document makes the reader throw", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...Object.keys(NIGHT)),
      fc.oneof(fc.jsonValue(), fc.constantFrom(-1, 1e9, {}, [], "")),
      (key, spoilt) => {
        const reading = readFrostDocument({ ...NIGHT, [key]: spoilt });
        if (!reading.ok) expect(reading.issues.length).toBeGreaterThan(0);
      },
    ),
  );
});
