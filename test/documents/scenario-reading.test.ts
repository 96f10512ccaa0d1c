import { describe, expect, test } from "vitest";
import { readScenarioDocument } from "../../src/documents/index.js";
import { celsiusFromKelvin } from "../../src/units/index.js";
import { plainWords } from "../plain-words.js";
import { EXAMPLE, issuesOf, readExample, steady } from "./example-document.js";

const START = Date.UTC(2026, 0, 14, 17) / 1000;

test("a full document becomes a scenario in SI without an assumption", () => {
  const read = readExample();
  const { scenario, want, ensemble, assumptions } = read;
  expect(assumptions).toEqual([]);
  expect(scenario.start).toBe(START);
  expect(scenario.duration).toBe(20 * 3600);
  expect(scenario.site).toEqual({ tempHangar: 278.15, roughness: 0.03 });
  expect(scenario.weather.windSpeed[0]).toBe(1);
  expect(scenario.weather.tempAir[0]).toBeCloseTo(258.15, 10);
  expect([...scenario.initial.configuration.coversOn]).toEqual(["insulated-cover"]);
  expect(want?.wish).toEqual({
    departure: 16 * 3600,
    chance: 0.8,
    unplugBefore: 900,
    coverOffBefore: 600,
    pulledOut: false,
  });
  expect(want?.heaters).toEqual(["whole-engine-4"]);
  expect(ensemble).toEqual({ members: 40, seed: 1 });
});

test("text and value are read alike, with or without a byte order mark", () => {
  const { document } = readExample();
  for (const source of [JSON.stringify(EXAMPLE), `\ufeff${JSON.stringify(EXAMPLE)}`]) {
    expect(readScenarioDocument(source)).toMatchObject({ ok: true, document });
  }
});

describe("what is left out is assumed out loud", () => {
  const said = (changes: Parameters<typeof readExample>[0]) => plainWords(readExample(changes).assumptions);

  test.each([
    ["site", /roughness length 0\.005 m/],
    ["hangar", /its air is taken at 5 °C/],
    ["fitted", /No cover or plug is named as fitted/],
    ["initial", /all parts are taken at -15\.0 °C/],
    ["zone", /No time zone is given: local times are shown at the start's offset, UTC\+01:00/],
    ["ensemble", /counted over 200 drawn cases/],
  ] as const)("%s", (key, words) => {
    const { [key]: _, ...rest } = EXAMPLE;
    const reading = readScenarioDocument(rest);
    expect(reading.ok && plainWords(reading.assumptions)).toMatch(words);
    expect(said({})).not.toMatch(words);
  });

  test("wind, dew point and cloud that no point gives", () => {
    const points = [
      { at_h: 0, air_c: -15 },
      { at_h: 20, air_c: -15 },
    ];
    const words = said({ weather: { points } });
    expect(words).toMatch(/wind taken as 5 m\/s/);
    expect(words).toMatch(/dew point taken 2 K below/);
    expect(words).toMatch(/sky taken as clear/);
  });

  test("a wish that only names its time", () => {
    const words = said({ want: { departure: "10:00" } });
    expect(words).toMatch(/Wanted chance of being ready: 90 %/);
    expect(words).toMatch(/unplugged 15 min before/);
    expect(words).toMatch(/Covers come off 10 min before/);
  });

  test("several heaters without a choice are used together", () => {
    const kit = { ...EXAMPLE.kit, heaters: ["sump-pad-220", "in-cowl-400"] };
    expect(said({ kit })).toMatch(/used together: sump-pad-220, in-cowl-400/);
    expect(said({ kit, want: { ...EXAMPLE.want, heaters: ["sump-pad-220"] } })).not.toMatch(/together/);
  });
});

describe("initial temperatures", () => {
  test("parts that were read keep their own, the rest take the coldest air of the hours before", () => {
    const points = [
      { at_h: -5, air_c: -22, wind_mps: 1, dew_point_c: -25, cloud_fraction: 0 },
      { at_h: 0, air_c: -18, wind_mps: 1, dew_point_c: -25, cloud_fraction: 0 },
      { at_h: 20, air_c: -10, wind_mps: 1, dew_point_c: -25, cloud_fraction: 0 },
    ];
    const { scenario } = readExample({ weather: { points }, initial: { oil_c: 12, heads_c: 3 } });
    const { temps, tempOthers, sd } = scenario.initial;
    expect(celsiusFromKelvin(tempOthers)).toBeCloseTo(-22, 10);
    expect(celsiusFromKelvin(temps.get("oil") ?? 0)).toBeCloseTo(12, 10);
    expect(temps.get("heads_front")).toBe(temps.get("heads_rear"));
    expect(sd).toBe(3);
  });

  test("in a hangar the hangar's air counts", () => {
    const { scenario } = readExample({ place: "hangar", initial: {} });
    expect(celsiusFromKelvin(scenario.initial.tempOthers)).toBeCloseTo(5, 10);
  });

  test("cylinders are the barrels", () => {
    expect(
      readExample({ initial: { all_c: 0, cylinders_c: 9 } }).scenario.initial.temps.get("barrels"),
    ).toBeCloseTo(282.15);
  });
});

describe("departure", () => {
  const departure = (changes: Parameters<typeof readExample>[0]) =>
    (readExample(changes).want?.wish.departure ?? Number.NaN) / 3600;

  test("a clock time is the next one after the start", () => {
    expect(departure({ want: { departure: "19:30" } })).toBeCloseTo(1.5, 10);
    expect(departure({ want: { departure: "6:15" } })).toBeCloseTo(12.25, 10);
  });

  test("a date and time with offset is itself, and without one it is local", () => {
    expect(departure({ want: { departure: "2026-01-15T08:00Z" } })).toBeCloseTo(15, 10);
    expect(departure({ want: { departure: "2026-01-15T08:00" } })).toBeCloseTo(14, 10);
  });

  test("the night the clock goes forward is an hour shorter", () => {
    const points = EXAMPLE.weather.points;
    const start = "2026-03-28T18:00+01:00";
    expect(departure({ start, want: { departure: "08:00" }, weather: { points } })).toBeCloseTo(13, 10);
  });

  test("the night the clock goes back is an hour longer", () => {
    expect(departure({ start: "2026-10-24T18:00+02:00", want: { departure: "08:00" } })).toBeCloseTo(15, 10);
  });

  test("the start's own clock time means the next day", () => {
    const points = steady(0, 30);
    expect(departure({ hours: 30, weather: { points }, want: { departure: "18:00" } })).toBeCloseTo(24, 10);
  });
});

describe("events", () => {
  test("are put in order and on one time axis", () => {
    const events = [
      { time: "2026-01-14T23:00", do: "unplug", heaters: ["whole-engine-4"] },
      { at_h: 2, do: "plug_in", heaters: ["whole-engine-4"] },
      { at_h: 3, do: "move", to: "hangar" },
    ];
    expect(readExample({ events }).scenario.events).toEqual([
      { at: 7200, change: { do: "plug-in", heaters: ["whole-engine-4"] } },
      { at: 10_800, change: { do: "move", to: "hangar" } },
      { at: 18_000, change: { do: "unplug", heaters: ["whole-engine-4"] } },
    ]);
  });

  test("a heater left on longer than allowed is warned of", () => {
    const kit = { ...EXAMPLE.kit, heaters: ["ducted-electric-1500"] };
    const heaters = ["ducted-electric-1500"];
    const on = (from: number, to: number) => [
      { at_h: from, do: "plug_in", heaters },
      { at_h: to, do: "unplug", heaters },
    ];
    expect(readExample({ kit, events: on(1, 5) }).warnings).toEqual([]);
    expect(readExample({ kit, events: on(1, 5.5) }).warnings).toEqual([
      { path: "events", expected: "ducted-electric-1500 on for at most 4 h in one go", received: '"4.5 h"' },
    ]);
    expect(readExample({ kit, plugged_in: heaters }).warnings[0].received).toBe('"20.0 h"');
  });
});

describe("limits", () => {
  test("stricter ones are taken", () => {
    const limits = { engine_at_least_c: 0, oil_at_least_c: 10, evenness_at_most_k: 30 };
    expect(readExample({ limits }).limits).toEqual({
      engineAtLeast: 273.15,
      oilAtLeast: 283.15,
      evennessAtMost: 30,
    });
  });

  test("laxer ones are refused with what it would take", () => {
    const limits = { engine_at_least_c: -20, oil_at_least_c: -20, evenness_at_most_k: 90 };
    const issues = issuesOf({ limits });
    expect(issues.map((i) => i.path)).toEqual([
      "limits.engine_at_least_c",
      "limits.oil_at_least_c",
      "limits.evenness_at_most_k",
    ]);
    for (const { expected } of issues)
      expect(expected).toMatch(/a named override, which this version does not take/);
  });
});

test("weather files are read by what is handed in, under the name in the document", () => {
  const text = "time,air_c,wind_mps\n2026-01-14T17:00Z,-15,2\n2026-01-15T13:00Z,-20,2\n";
  const asked: string[] = [];
  const reading = readScenarioDocument(
    { ...EXAMPLE, weather: { csv_file: "logs/night.csv" } },
    {
      readFile: (name) => {
        asked.push(name);
        return { ok: true, text };
      },
    },
  );
  expect(asked).toEqual(["logs/night.csv"]);
  expect(reading.ok && celsiusFromKelvin(reading.scenario.weather.tempAir.at(-1) ?? 0)).toBeCloseTo(-20, 9);
  expect(issuesOf({ weather: { csv_file: "logs/night.csv" } })[0].path).toBe("weather.csv_file");
});

test("keys that every object inherits are still unknown keys", () => {
  for (const key of ["toString", "constructor"]) {
    expect(issuesOf({ [key]: 1 })).toMatchObject([{ path: key, received: "1" }]);
  }
});

test("faults of every part are named at once", () => {
  const issues = issuesOf({
    aircraft: "none",
    kit: { heaters: ["none"], covers: ["none"] },
    fitted: { covers: ["none"] },
    hours: 0,
    place: "lake",
    weather: {},
    events: [{ do: "fly" }],
    want: { departure: "noon", chance: 1 },
    ensemble: { members: 1 },
    extra: 1,
  });
  const paths = issues.map((i) => i.path);
  for (const path of [
    "aircraft",
    "kit.heaters[0]",
    "kit.covers[0]",
    "hours",
    "place",
    "weather",
    "events[0].do",
    "want.chance",
    "ensemble.members",
    "extra",
  ]) {
    expect(paths).toContain(path);
  }
});
