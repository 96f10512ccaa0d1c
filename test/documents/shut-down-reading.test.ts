import { describe, expect, test } from "vitest";
import { celsiusFromKelvin } from "../../src/units/index.js";
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
    expect(reading.assumptions.join(" ")).toMatch(/shut down from cruise 2 h before the start/);
    expect(reading.assumptions.join(" ")).toMatch(/first values are held back/);
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
