import { describe, expect, test } from "vitest";
import { CALIBRATED } from "../../src/aircraft/index.js";
import { bandOf } from "../../src/numerics/index.js";
import {
  type Change,
  centralDraws,
  drawEnsemble,
  firstMembers,
  joined,
  partTemps,
  prepareRun,
  type Scenario,
  simulate,
  timelineOf,
  trajectory,
} from "../../src/simulation/index.js";
import { coldSoaked, HOUR, steadyWeather } from "./example-scenario.js";

const plugIn: Change = { do: "plug-in", heaters: ["whole-engine-4"] };
const unplug: Change = { do: "unplug", heaters: ["whole-engine-4"] };
const every = (step: number, end: number) => Array.from({ length: end / step + 1 }, (_, i) => i * step);

function central(scenario: Scenario, times: number[]) {
  return simulate(scenario, centralDraws(scenario.weather), times);
}

function at(scenario: Scenario, part: string, t: number): number {
  const course = central(scenario, [0, t]);
  expect(course.status).toBe("completed");
  return partTemps(course, part, 1)[0];
}

describe("simulate", () => {
  test("what nobody heats and the sky does not cool stays at air temperature", () => {
    const weather = { ...steadyWeather(253.15, 5, 48, 1), tempDewPoint: steadyWeather(253.15).tempAir };
    const course = central(coldSoaked({ weather }), [0, 20 * HOUR]);
    for (const part of course.parts)
      expect(Math.abs(partTemps(course, part, 1)[0] - 253.15), part).toBeLessThan(1);
  });

  test("energy is power times time, across switchings between samples", () => {
    const events = [
      { at: 1000, change: plugIn },
      { at: 1000 + 5555, change: unplug },
    ];
    const course = central(coldSoaked({ events }), [0, 700, 4000, 9000, 12_000]);
    const spent = course.energy.subarray(4);
    expect(course.energy[1]).toBe(0);
    expect(spent[0]).toBeCloseTo(400 * 5555, 6);
  });

  test("cover, calm and hangar each keep an aircraft warmer", () => {
    const events = [
      { at: 0, change: plugIn },
      { at: 4 * HOUR, change: unplug },
    ];
    const covered = coldSoaked({ events });
    const stripped = coldSoaked({
      events: [{ at: 0, change: { do: "cover-off", covers: ["insulated-cover"] } }, ...events],
    });
    const windy = coldSoaked({ events, weather: steadyWeather(253.15, 12) });
    const indoors = coldSoaked({ events: [{ at: 0, change: { do: "move", to: "hangar" } }, ...events] });
    const warm = at(covered, "heads_front", 6 * HOUR);
    expect(at(stripped, "heads_front", 6 * HOUR)).toBeLessThan(warm - 3);
    expect(at(windy, "heads_front", 6 * HOUR)).toBeLessThan(warm - 1);
    expect(at(indoors, "heads_front", 6 * HOUR)).toBeGreaterThan(warm + 5);
  });

  test("snow on the cowl holds its skin at 0 °C until it has melted", () => {
    const weather = steadyWeather(278, 1);
    const bare = coldSoaked({ weather, initial: { ...coldSoaked().initial, tempOthers: 268 } });
    const snowy = { ...bare, initial: { ...bare.initial, snowOnCowl: 3 } };
    expect(at(bare, "cowl_skin", 2 * HOUR)).toBeGreaterThan(274);
    expect(Math.abs(at(snowy, "cowl_skin", 2 * HOUR) - 273.15)).toBeLessThan(0.8);
    expect(at(snowy, "crankcase", 6 * HOUR)).toBeLessThan(at(bare, "crankcase", 6 * HOUR));
    expect(() => central({ ...bare, initial: { ...bare.initial, snowOnCowl: -1 } }, [0, 1])).toThrow(
      "invalid snowOnCowl: -1",
    );
  });

  test("warm oil hides a cold crankshaft under a sump pad", () => {
    const events = [{ at: 0, change: { do: "plug-in", heaters: ["sump-pad-220"] } as const }];
    const course = central(coldSoaked({ events }), [0, 2 * HOUR]);
    const oil = partTemps(course, "oil", 1)[0];
    const crankshaft = partTemps(course, "crankshaft", 1)[0];
    expect(oil).toBeGreaterThan(293);
    expect(crankshaft).toBeLessThan(oil - 25);
  });

  test("a course run in two pieces is the course run in one", () => {
    const scenario = coldSoaked({ events: [{ at: HOUR, change: plugIn }] });
    const run = prepareRun(scenario, drawEnsemble({ members: 20, seed: 1, weather: scenario.weather }));
    const timeline = timelineOf(scenario.initial.configuration, scenario.events);
    const whole = trajectory(run, { state: run.initial, timeline, sampleTimes: every(HOUR, 6 * HOUR) });
    const first = trajectory(run, { state: run.initial, timeline, sampleTimes: [0, HOUR, 2 * HOUR] });
    const size = run.initial.length;
    const second = trajectory(run, {
      state: first.temps.slice(2 * size),
      timeline,
      sampleTimes: [2 * HOUR, 3 * HOUR, 4 * HOUR, 5 * HOUR, 6 * HOUR],
    });
    const both = joined(first, second);
    expect([...both.time]).toEqual([...whole.time]);
    for (let k = 0; k < whole.temps.length; k++)
      expect(Math.abs(both.temps[k] - whole.temps[k])).toBeLessThan(0.1);
    const last = (values: Float64Array) => [...values.slice(-20)];
    last(both.energy).forEach((e, m) => {
      expect(e / last(whole.energy)[m]).toBeCloseTo(1, 3);
    });
  });

  test("stops when told to, and says so", () => {
    const scenario = coldSoaked();
    const course = simulate(scenario, centralDraws(scenario.weather), [0, HOUR], () => false);
    expect(course.status).toBe("cancelled");
  });

  test("refuses weather that does not cover the scenario", () => {
    const scenario = coldSoaked({ weather: steadyWeather(253.15, 3, 10) });
    expect(() => central(scenario, [0, HOUR])).toThrow(/^invalid weather: it runs from 0 to 36000 s/);
  });
});

describe("ensembles", () => {
  const scenario = coldSoaked({ events: [{ at: 0, change: plugIn }] });
  const draws = drawEnsemble({ members: 200, seed: 42, weather: scenario.weather });

  test("the same seed gives the same members, another seed others", () => {
    const again = drawEnsemble({ members: 200, seed: 42, weather: scenario.weather });
    expect(again.multipliers).toEqual(draws.multipliers);
    expect(again.weather).toEqual(draws.weather);
    expect(drawEnsemble({ members: 200, seed: 43, weather: scenario.weather }).multipliers).not.toEqual(
      draws.multipliers,
    );
  });

  test("multipliers have the median and spread of their priors", () => {
    const logs = draws.multipliers.get("journals")?.map(Math.log) ?? new Float64Array();
    const mean = logs.reduce((a, b) => a + b) / logs.length;
    const sd = Math.sqrt(logs.reduce((a, b) => a + (b - mean) ** 2, 0) / logs.length);
    expect(Math.abs(mean)).toBeLessThan(0.02);
    expect(sd).toBeCloseTo(Math.hypot(...CALIBRATED.factor[CALIBRATED.names.indexOf("journals")]), 1);
  });

  test("the band holds the central course and widens with heating", () => {
    const ensemble = simulate(scenario, draws, [0, 600, 4 * HOUR]);
    const single = central(scenario, [0, 600, 4 * HOUR]);
    const early = bandOf(partTemps(ensemble, "oil", 1));
    const later = bandOf(partTemps(ensemble, "oil", 2));
    const middle = partTemps(single, "oil", 2)[0];
    expect(later.low).toBeLessThan(middle);
    expect(later.high).toBeGreaterThan(middle);
    expect(later.high - later.low).toBeGreaterThan(early.high - early.low);
  });

  test("the first members of an ensemble run as they do within it", () => {
    const few = firstMembers(draws, 5);
    const part = simulate(scenario, few, [0, 2 * HOUR]);
    const all = simulate(scenario, draws, [0, 2 * HOUR]);
    partTemps(part, "crankshaft", 1).forEach((temp, m) => {
      expect(Math.abs(temp - partTemps(all, "crankshaft", 1)[m])).toBeLessThan(0.05);
    });
  });

  test.each([0, -3, 2.5, Number.NaN])("refuses %s members", (members) => {
    expect(() => drawEnsemble({ members, seed: 1, weather: scenario.weather })).toThrow(
      `invalid members: ${members}`,
    );
  });
});
