import { describe, expect, test } from "vitest";
import { refreezeCheck } from "../../src/airframe/index.js";
import { thawFromDocument } from "../../src/airframe-pipeline.js";
import { thawOutlookSchema } from "../../src/documents/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { completed, readStay, STAY } from "./airframe-documents.js";

const outlook = completed(thawFromDocument(STAY));
const { roll_out: _, ...STAYING } = STAY;

describe("a thaw outlook", () => {
  test("is a document of its schema, also after a way through JSON", () => {
    expect(thawOutlookSchema.parse(JSON.parse(JSON.stringify(outlook)))).toEqual(outlook);
  });

  test("melts before it dries, and all dry is the last of all", () => {
    const { skin_clear, skin_dry, gaps_dry, all_dry } = outlook;
    const at = (times: typeof skin_dry) => times.p50?.at_h ?? Number.POSITIVE_INFINITY;
    expect(at(skin_clear)).toBeLessThan(at(skin_dry));
    expect(at(all_dry)).toBeGreaterThanOrEqual(Math.max(at(skin_dry), at(gaps_dry)));
    expect(all_dry.share).toBeLessThanOrEqual(Math.min(skin_dry.share, gaps_dry.share));
  });

  test("what has not come within the hours has no time", () => {
    const short = completed(thawFromDocument({ ...STAYING, hours: 1 }));
    expect(thawOutlookSchema.parse(JSON.parse(JSON.stringify(short)))).toEqual(short);
    expect(short.roll_out).toBeNull();
    expect(short.all_dry).toEqual({ p05: null, p50: null, p95: null, share: 0 });
    expect(short.trials.as_is.all_dry_h).toBeNull();
  });

  test("tries what is left to try, one thing at a time", () => {
    const ids = (stay: typeof outlook) => stay.trials.changes.map(({ id }) => id);
    expect(ids(outlook)).toEqual(["brush", "blow", "warmer"]);
    const plain = completed(
      thawFromDocument({
        ...STAYING,
        film: "dripping",
        snow: { kind: "ice", depth_mm: 1 },
        hangar: { ...STAY.hangar, fan_mps: 0, floor_swept: false },
      }),
    );
    expect(ids(plain)).toEqual(["blow", "wipe", "wipe-and-blow", "fan", "sweep", "warmer"]);
    const { as_is, changes } = plain.trials;
    const of = (id: string) => changes.find((change) => change.id === id);
    expect(of("wipe")?.skin_dry_h).toBeLessThan(as_is.skin_dry_h ?? 0);
    expect(of("blow")?.gaps_dry_h ?? 12).toBeLessThan(as_is.gaps_dry_h ?? 12);
    expect(of("blow")?.skin_dry_h).toBeCloseTo(as_is.skin_dry_h ?? 0, 1);
    expect(of("fan")?.skin_dry_h).toBeLessThan(as_is.skin_dry_h ?? 0);
  });

  test("a trial is what the document with that change would say", () => {
    const dripping = completed(thawFromDocument({ ...STAYING, film: "dripping" }));
    const trial = dripping.trials.changes.find(({ id }) => id === "wipe");
    expect(trial).toMatchObject(outlook.trials.as_is);
  });

  test("counts energy, humidity and water in the user's units", () => {
    const { heater_kwh, highest_humidity_percent, floor_water_kg, snow_kg_per_m2 } = outlook;
    expect(heater_kwh.p95).toBeLessThanOrEqual(30 * 12 + 1e-9);
    expect(heater_kwh.p50).toBeGreaterThan(50);
    expect(highest_humidity_percent.p05).toBeGreaterThanOrEqual(40 - 1e-9);
    expect(highest_humidity_percent.p95).toBeLessThanOrEqual(105);
    const lying = 0.02 * Math.sqrt(50 * 100);
    expect(snow_kg_per_m2).toBeCloseTo(lying, 3);
    // what lay on 25 m2, in the middle less than a tenth off, less what the film keeps and gives to the air
    expect(floor_water_kg.p50).toBeLessThan(1.1 * 25 * lying);
    expect(floor_water_kg.p50).toBeGreaterThan(0.7 * 25 * lying);
  });
});

describe("the roll-out", () => {
  const { roll_out, course } = outlook;
  if (roll_out === null) throw new Error("missing roll-out");

  test("starts from what the stay left, and takes off later", () => {
    const s = course.time_h.indexOf(6);
    const { state, at, take_off } = roll_out;
    expect(at).toEqual({ at_h: 6, time: "2026-01-14T22:00+01:00" });
    expect(take_off.time).toBe("2026-01-14T22:20+01:00");
    expect(state.skin_c).toBeCloseTo(course.skin_c.p50[s], 1);
    expect(state.fittings_c).toBeCloseTo(course.fittings_c.p50[s], 1);
    expect(state.inside_c).toBeCloseTo(course.inside_c.p50[s], 1);
    expect(state.gap_water_kg_per_m2.p95).toBeCloseTo(
      course.gap_ice_kg_per_m2.p95[s] + course.gap_water_kg_per_m2.p95[s],
      3,
    );
  });

  test("is what the airframe says of the gap's remaining fill, film and temperatures", () => {
    const read = readStay();
    if (read.rollOut === undefined) throw new Error("missing roll-out");
    const { state, members } = roll_out;
    const { at: _, ...outdoors } = read.rollOut;
    const { result } = refreezeCheck({
      ...outdoors,
      panel: read.request.panel,
      site: read.site,
      gap: { ...read.request.gap, fill: state.gap_water_kg_per_m2.p95 / (1000 * 0.005) },
      tempSkin: kelvinFromCelsius(state.skin_c),
      tempInside: kelvinFromCelsius(state.inside_c),
      tempGap: kelvinFromCelsius(state.fittings_c),
      film: state.film_kg_per_m2.p95,
      ensemble: { members, seed: 1 },
    });
    expect(roll_out.wettest.gaps).toEqual({
      verdict: result?.gaps.verdict,
      at_take_off: result?.gaps.atTakeOff,
      in_climb: result?.gaps.inClimb,
    });
    // temperatures of the state are rounded to a tenth
    expect(roll_out.skin_freezing_min.p50).toBeCloseTo((result?.skinFreezing.middle ?? 0) / 60, 0);
    expect(Math.abs((roll_out.climb?.cruise_c ?? 0) - (-12 - 0.0065 * 1300))).toBeLessThan(0.06);
    expect(roll_out.climb?.freezing_level_m).toBe(200);
  });

  test("falling snow melts on a warm skin, and the doors are opened first", () => {
    expect(roll_out.melts_what_falls).toBe(true);
    expect(roll_out.cool_indoors_min?.p50).toBeGreaterThan(roll_out.skin_freezing_min.p50 ?? 0);
  });

  test("in air well above 0 °C nothing freezes", () => {
    const mild = completed(
      thawFromDocument({
        ...STAY,
        hours: 3,
        roll_out: { at_h: 3, falling: "nothing", air_c: 8, dew_point_c: 6, wind_mps: 2, cloud_fraction: 1 },
      }),
    ).roll_out;
    expect(mild?.melts_what_falls).toBe(false);
    expect(mild?.cool_indoors_min).toBeNull();
    expect(mild?.climb).toBeNull();
    expect(mild?.skin_freezing_min).toEqual({ p05: null, p50: null, p95: null, share: 0 });
    expect(mild?.wettest.gaps).toEqual({ verdict: "none", at_take_off: 0, in_climb: 0 });
  });

  test("names what can hurt: controls, ports, the climb, flames without a flue", () => {
    const hangar = { ...STAY.hangar, unflued_burner: true };
    const burning = completed(thawFromDocument({ ...STAYING, hours: 1, hangar }));
    expect(burning.cautions.map(({ text }) => text).join("\n")).toMatch(/carbon monoxide/);
    const texts = outlook.cautions.map(({ text }) => text);
    expect(texts.join("\n")).not.toMatch(/carbon monoxide/);
    for (const words of [
      /static ports freezes/,
      /do not force it/,
      /below freezing first/,
      /cold windshield/,
    ]) {
      expect(texts.filter((text) => words.test(text)).length).toBe(1);
    }
    expect(new Set(texts).size).toBe(texts.length);
  });
});

test("thaw stops when told to, at any of its stages", () => {
  for (const last of [0, 0.5]) {
    const onProgress = (done = 0) => done < last;
    expect(thawFromDocument({ ...STAYING, hours: 1 }, { onProgress }).status).toBe("cancelled");
  }
  const stages: (number | undefined)[] = [];
  const watched = { onProgress: (done?: number) => stages.push(done) > 0 };
  expect(thawFromDocument({ ...STAYING, hours: 1 }, watched).status).toBe("completed");
  expect(stages).toEqual([0, 0.5, 0.6]);
});

test("a document of another kind is refused by that alone", () => {
  expect(thawFromDocument({ soakline: 2, aircraft: "four-carburettor-160" })).toEqual({
    status: "refused",
    issues: [{ path: "kind", expected: '"thaw"', received: "nothing" }],
  });
});
