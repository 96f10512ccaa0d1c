import { describe, expect, test } from "vitest";
import { celsiusFromKelvin } from "../../src/units/index.js";
import { plainWords } from "../plain-words.js";
import { issuesOf, readExample, steady } from "./example-document.js";

const past = { weather: { points: steady(-12, 20) } };
const initialAfter = (hours: number, changes: object = {}) =>
  readExample({ ...past, ...changes, initial: { shut_down_h_ago: hours } }).scenario.initial;
const oilOf = ({ temps }: { temps: ReadonlyMap<string, number> }) =>
  celsiusFromKelvin(temps.get("oil") ?? Number.NaN);

describe("an engine shut down some hours ago", () => {
  test("is at its class's temperatures when it has just stopped, and less well known than a reading", () => {
    const initial = initialAfter(0);
    expect(oilOf(initial)).toBeGreaterThan(40);
    expect(initial.temps.get("heads_rear")).toBeGreaterThan(initial.temps.get("battery") ?? 0);
    expect(initial.sd).toBe(15);
  });

  test("cools with time towards the air, heads before oil, and its doubt with it", () => {
    const hours = [0, 1, 3, 9].map((h) => initialAfter(h));
    for (let i = 1; i < hours.length; i++) {
      expect(oilOf(hours[i])).toBeLessThan(oilOf(hours[i - 1]));
      expect(hours[i].sd).toBeLessThan(hours[i - 1].sd);
    }
    expect(oilOf(hours[3])).toBeGreaterThan(-15);
    expect(oilOf(hours[3])).toBeLessThan(-3);
    expect(hours[2].temps.get("heads_front")).toBeLessThan(hours[2].temps.get("oil") ?? 0);
  });

  test("cools less under its cover", () => {
    const bare = initialAfter(2, { fitted: { covers: [] } });
    expect(oilOf(initialAfter(2))).toBeGreaterThan(oilOf(bare) + 3);
  });

  test("a reading counts more than what is typical", () => {
    const { scenario } = readExample({ ...past, initial: { shut_down_h_ago: 2, oil_c: 31 } });
    expect(oilOf(scenario.initial)).toBeCloseTo(31, 9);
  });

  test("says what it assumed, also about weather that does not reach back", () => {
    const reading = readExample({ initial: { shut_down_h_ago: 2 } });
    expect(plainWords(reading.assumptions)).toMatch(/shut down from cruise 2 h before the start/);
    expect(plainWords(reading.assumptions)).toMatch(/first values are held back/);
  });

  test("cannot be longer ago than the weather lets one tell, nor beside one temperature for all", () => {
    expect(issuesOf({ initial: { shut_down_h_ago: 30 } })).toMatchObject([
      { path: "initial.shut_down_h_ago" },
    ]);
    expect(issuesOf({ initial: { shut_down_h_ago: 1, all_c: 5 } })).toMatchObject([
      { path: "initial", expected: "either all_c or shut_down_h_ago, not both" },
    ]);
  });
});

test("snow on the cowl reaches the scenario", () => {
  expect(readExample({ initial: { all_c: -5, snow_on_cowl_kg_m2: 4 } }).scenario.initial.snowOnCowl).toBe(4);
  expect(issuesOf({ initial: { all_c: -5, snow_on_cowl_kg_m2: -4 } })).toMatchObject([
    { path: "initial.snow_on_cowl_kg_m2" },
  ]);
});

describe("a ground run up to the start", () => {
  const cold = { all_c: -15, uncertainty_k: 1 };
  const at = (initial: object, part: string) => {
    const { temps, tempOthers } = readExample({ ...past, initial }).scenario.initial;
    return celsiusFromKelvin(temps.get(part) ?? tempOthers);
  };

  test("warms the heads long before the oil, also parts that were not named", () => {
    const run = { ...cold, ground_run_min: 10 };
    expect(at(run, "heads_front")).toBeGreaterThan(60);
    expect(at(run, "oil")).toBeGreaterThan(0);
    expect(at(run, "oil")).toBeLessThan(at(run, "heads_rear") - 40);
    expect(at(run, "battery")).toBe(-15);
    expect(at({ ...cold, ground_run_min: 120 }, "oil")).toBeGreaterThan(at(run, "oil") + 20);
  });

  test("starts from readings and from what has cooled, and cools nothing that is warmer", () => {
    const warmed = { shut_down_h_ago: 2, ground_run_min: 5 };
    expect(at(warmed, "oil")).toBeGreaterThan(at({ shut_down_h_ago: 2 }, "oil"));
    const [read, unread] = [10, -10].map((oil_c) => at({ ...cold, oil_c, ground_run_min: 5 }, "oil"));
    expect(read - unread).toBeGreaterThan(10);
    expect(at({ ...cold, heads_c: 150, ground_run_min: 30 }, "heads_front")).toBeCloseTo(150, 9);
  });

  test("none is as if it were not named", () => {
    const { scenario, assumptions } = readExample({ ...past, initial: { ...cold, ground_run_min: 0 } });
    const without = readExample({ ...past, initial: cold });
    expect(scenario.initial).toEqual(without.scenario.initial);
    expect(assumptions).toEqual(without.assumptions);
  });

  test("an engine without coolant gets none; one with it has it warmed", () => {
    const run = { ...cold, ground_run_min: 10 };
    const { scenario } = readExample({ ...past, initial: run });
    expect(scenario.initial.temps.has("coolant")).toBe(false);
    const liquid = readExample({
      ...past,
      aircraft: "liquid-light-100",
      kit: { heaters: [], covers: [] },
      fitted: undefined,
      want: undefined,
      initial: run,
    });
    expect(celsiusFromKelvin(liquid.scenario.initial.temps.get("coolant") ?? 0)).toBeGreaterThan(30);
  });

  test("says so with its caution, and is known less well than a reading unless the owner says how well", () => {
    const reading = readExample({ ...past, initial: { all_c: -15, ground_run_min: 10 } });
    expect(plainWords(reading.assumptions)).toMatch(
      /idled for 10 min up to the start, .* in air of -15 °C: oil then at 7 °C, front heads at 71 °C, .* makes more water than it drives off/,
    );
    expect(reading.scenario.initial.sd).toBeCloseTo(17.3, 1);
    expect(readExample({ ...past, initial: { ...cold, ground_run_min: 10 } }).scenario.initial.sd).toBe(1);
  });

  test.each([-1, 121, "ten"])("%s is refused by name", (ground_run_min) => {
    expect(issuesOf({ initial: { all_c: -15, ground_run_min } })).toMatchObject([
      { path: "initial.ground_run_min" },
    ]);
  });
});
