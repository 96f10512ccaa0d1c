import { describe, expect, test, vi } from "vitest";
import { refreezeCheck } from "../../src/airframe/refreeze.js";
import { bestRemedies, thawOutlookSchema, thawRemedies } from "../../src/documents/index.js";
import { thawFromDocument } from "../../src/questions/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { english } from "../../src/words/index.js";
import { completed, readStay, STAY } from "./airframe-documents.js";

// Each outlook is a stay and all its trials, some seconds of one core.
vi.setConfig({ testTimeout: 300_000 });

const { roll_out: _, ...STAYING } = STAY;
const outlook = completed(thawFromDocument(STAY));

describe("a thaw outlook", () => {
  test("is a document of its schema, also after a way through JSON", () => {
    expect(thawOutlookSchema.parse(JSON.parse(JSON.stringify(outlook)))).toEqual(outlook);
  });

  test("melts before it dries, and the gaps are the last of all", () => {
    const { skin_clear, skin_dry, gaps_thawed, gaps_dry } = outlook;
    const at = (times: typeof skin_dry) => times.p50?.at_h ?? Number.POSITIVE_INFINITY;
    expect(at(skin_clear)).toBeLessThan(at(skin_dry));
    expect(at(gaps_thawed)).toBeGreaterThanOrEqual(at(skin_clear));
    expect(at(gaps_dry)).toBeGreaterThanOrEqual(Math.max(at(skin_dry), at(gaps_thawed)));
    expect(gaps_dry.share).toBeLessThanOrEqual(Math.min(skin_dry.share, gaps_thawed.share));
  });

  test("what has not come within the hours has no time", () => {
    const short = completed(thawFromDocument({ ...STAYING, hours: 1 }));
    expect(thawOutlookSchema.parse(JSON.parse(JSON.stringify(short)))).toEqual(short);
    expect(short.roll_out).toBeNull();
    expect(short.gaps_dry).toEqual({ p05: null, p50: null, p95: null, share: 0 });
    expect(short.trials.as_is.chance).toBe(0);
  });

  test("tries what is left to try: one thing at a time, all handwork, everything", () => {
    const ids = (stay: typeof outlook) => stay.trials.changes.map(({ id }) => id);
    expect(ids(outlook)).toEqual(["brush", "blow", "warmer", "by-hand", "together"]);
    const plain = completed(
      thawFromDocument({
        ...STAYING,
        film: "dripping",
        snow: { kind: "ice", depth_mm: 1 },
        hangar: { ...STAY.hangar, fan_mps: 0, floor_swept: false },
      }),
    );
    // Ice does not come off with a broom.
    expect(ids(plain)).toEqual(["wipe", "blow", "fan", "sweep", "warmer", "by-hand", "together"]);
    expect(plain.brushable_kg_per_m2).toBe(0);
    const { as_is, changes } = plain.trials;
    const of = (id: string) => changes.find((change) => change.id === id)!;
    expect(of("wipe").skin_dry_h).toBeLessThan(as_is.skin_dry_h!);
    expect(of("blow").gaps_dry_h).toBeLessThan(as_is.gaps_dry_h!);
    expect(of("blow").skin_dry_h).toBeCloseTo(as_is.skin_dry_h!, 1);
    expect(of("fan").skin_dry_h).toBeLessThan(as_is.skin_dry_h!);
    expect(of("warmer").set_c).toBe(23);
    for (const { chance } of changes) expect(of("together").chance).toBeGreaterThanOrEqual(chance);
    expect(of("together").gaps_dry_h).toBeLessThan(of("by-hand").gaps_dry_h!);
  });

  test("a trial is what the document with that change would say", () => {
    const dripping = completed(thawFromDocument({ ...STAYING, film: "dripping" }));
    const trial = dripping.trials.changes.find(({ id }) => id === "wipe");
    expect(trial).toMatchObject(completed(thawFromDocument(STAYING)).trials.as_is);
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
    expect(burning.cautions.map(english).join("\n")).toMatch(/carbon monoxide/);
    const texts = outlook.cautions.map(english);
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

describe("what would help", () => {
  // 14.7 kg/m2 that nobody brushed off, in a hangar that does not melt it in a day.
  const HEAVY = {
    ...STAYING,
    hours: 24,
    film: "dripping",
    aircraft: { area_m2: 24, temp_c: -15 },
    snow: { kind: "settled", depth_mm: 60 },
    hangar: {
      ...STAY.hangar,
      set_c: 12,
      heater_kw: 15,
      fan_mps: 0,
      floor_swept: false,
      unflued_burner: true,
    },
    outside: { air_c: -15, dew_point_c: -17 },
    roll_out: { at_h: 14, falling: "nothing" },
  } as const;
  const heavy = completed(thawFromDocument(HEAVY));
  const of = (stay: typeof outlook, id: string) => stay.trials.changes.find((change) => change.id === id)!;

  test("snow that nobody brushed off is brushed first, and is never nothing to be done about", () => {
    expect(heavy.snow_kg_per_m2).toBeCloseTo(14.7, 1);
    expect(heavy.brushable_kg_per_m2).toBeCloseTo(0.9 * heavy.snow_kg_per_m2, 2);
    expect(heavy.roll_out!.dry_chance).toBe(0);
    const ids = heavy.trials.changes.map(({ id }) => id);
    expect(ids).toEqual(["brush", "wipe", "blow", "fan", "sweep", "warmer", "by-hand", "together"]);
    expect(of(heavy, "brush").gaps_dry_h).toBeLessThan(0.7 * heavy.trials.as_is.gaps_dry_h!);
    expect(of(heavy, "together").chance).toBeGreaterThan(0.9);
    const remedies = thawRemedies(heavy);
    expect(remedies.map(({ kind }) => kind)).toEqual([...ids.map(() => "change"), "longer"]);
    expect(bestRemedies(remedies)[0]).toMatchObject({ kind: "change", helps: true });
  });

  test("more heat is warmer hangar air, electric or with a flue, with the power it takes", () => {
    const warmer = of(heavy, "warmer");
    expect(english(warmer.text).replaceAll("\u00a0", " ")).toMatch(
      /^hangar air at 17 °C .* electric or with a flue$/,
    );
    expect(warmer.heater_kw).toBeGreaterThanOrEqual(15);
    for (const { text } of heavy.trials.changes)
      expect(english(text)).not.toMatch(/burner|hot air|windshield/);
    const unheated = completed(
      thawFromDocument({
        ...HEAVY,
        hangar: { ...HEAVY.hangar, heater_kw: 0, set_c: -5 },
        hours: 2,
        roll_out: { at_h: 1, falling: "nothing" },
      }),
    );
    expect(of(unheated, "warmer")).toMatchObject({ set_c: 10 });
    expect(of(unheated, "warmer").heater_kw).toBeGreaterThan(5);
  });

  test("nothing would help only after all was tried: every change, a longer stay and the forecast", () => {
    // Far below zero whatever is done: even the warmest try here does not dry it by then.
    const hopeless = thawRemedies({
      ...heavy,
      trials: {
        ...heavy.trials,
        as_is: { chance: 0, skin_dry_h: null, gaps_dry_h: null, gaps_dry_surely_h: null },
        changes: heavy.trials.changes.map((change) => ({
          ...change,
          chance: 0,
          gaps_dry_h: null,
          gaps_dry_surely_h: null,
        })),
        mild_window: { looked_until: heavy.start, window: null },
      },
    });
    expect(hopeless.length).toBe(10);
    expect(hopeless.map(({ kind }) => kind).slice(-2)).toEqual(["longer", "mild"]);
    expect(hopeless.filter(({ helps }) => helps)).toEqual([]);
    expect(bestRemedies(hopeless)).toEqual([]);
  });

  test("with a forecast the next mild window is tried, and told when there is none", () => {
    const points = (airs: readonly number[]) =>
      airs.map((air_c, i) => ({
        at_h: 6 * i,
        air_c,
        dew_point_c: air_c - 2,
        wind_mps: 4,
        cloud_fraction: 1,
      }));
    const mildFrom = (airs: readonly number[]) =>
      completed(thawFromDocument({ ...HEAVY, snow: STAY.snow, weather: { points: points(airs) } })).trials;
    const { mild_window, as_is } = mildFrom([-15, -6, 1, 5, 6, 6, 5]);
    // +2 °C is passed a quarter of the way from 12 to 18 h.
    expect(mild_window?.window?.leave.at_h).toBeGreaterThanOrEqual(13.5);
    expect(mild_window?.window?.mild_until.at_h).toBeCloseTo(36, 0);
    expect(mild_window!.window!.air_c).toBeGreaterThanOrEqual(2);
    expect(mild_window!.window!.chance).toBeGreaterThan(as_is.chance);
    expect(mildFrom([-15, -14, -12, -10, -9])?.mild_window).toEqual({
      looked_until: { at_h: 24, time: "2026-01-15T16:00+01:00" },
      window: null,
    });
    expect(heavy.trials.mild_window).toBeNull();
  });
});

test("beside a skin that is still wet a gap leaves as full as it can be", () => {
  const early = completed(
    thawFromDocument({
      ...STAY,
      gap: { ...STAY.gap, filled_fraction: 0.2 },
      roll_out: { ...STAY.roll_out, at_h: 1 },
    }),
  );
  const { state, wettest } = early.roll_out!;
  expect(state.film_kg_per_m2.p50 + state.snow_kg_per_m2.p50).toBeGreaterThan(0.005);
  // 5 mm deep, a fifth full.
  expect(state.gap_water_kg_per_m2.p50).toBeGreaterThanOrEqual(1);
  expect(wettest.gaps.verdict).toBe("likely");
});

test("thaw stops when told to, at any of its stages", () => {
  for (const last of [0, 0.1, 0.5, 0.9]) {
    const onProgress = (done = 0) => done < last;
    expect(thawFromDocument({ ...STAYING, hours: 1 }, { onProgress }).status).toBe("cancelled");
  }
  const stages: number[] = [];
  const watched = { onProgress: (done?: number) => stages.push(done ?? 0) > 0 };
  expect(thawFromDocument({ ...STAYING, hours: 1 }, watched).status).toBe("completed");
  expect(stages).toEqual(stages.toSorted((a, b) => a - b));
  expect([stages[0], stages.at(-1)]).toEqual([0, expect.closeTo(0.9, 9)]);
});

test("a document of another kind is refused by that alone", () => {
  expect(thawFromDocument({ soakline: 2, aircraft: "four-carburettor-160" })).toEqual({
    status: "refused",
    issues: [{ path: "kind", expected: '"thaw"', received: "nothing" }],
  });
});
