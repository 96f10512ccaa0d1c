import { describe, expect, test } from "vitest";
import { stayAway } from "../../src/planning/index.js";
import { temperatureCriteria } from "../../src/readiness/index.js";
import { drawEnsemble, type Scenario } from "../../src/simulation/index.js";
import { english } from "../../src/words/index.js";
import { coldSoaked, HOUR, steadyWeather } from "../simulation/example-scenario.js";

/** Just shut down after a cruise: warm all through. */
function warm(tempAir: number, wind = 3): Scenario {
  const scenario = coldSoaked({ weather: steadyWeather(tempAir, wind) });
  const temps = new Map([
    ["oil", 353],
    ["sump", 348],
    ["heads_front", 380],
    ["heads_rear", 380],
  ]);
  return { ...scenario, initial: { ...scenario.initial, temps, tempOthers: 335 } };
}

function report(scenario: Scenario) {
  const away = stayAway({
    scenario,
    criteria: temperatureCriteria(scenario.installation, scenario.kit),
    draws: drawEnsemble({ members: 60, seed: 2, weather: scenario.weather }),
    chance: 0.9,
  });
  if (away.status !== "judged") throw new Error(english(away.message));
  if (away.covered === undefined) throw new Error("the example carries covers");
  return { now: away.now, covered: away.covered.lasting, uncovered: away.uncovered.lasting };
}

describe("stayAway", () => {
  const deep = report(warm(243));

  test("a warm aircraft is ready now and for some time, longer under its cover", () => {
    expect(deep.now.chance).toBeGreaterThan(0.95);
    expect(deep.uncovered.sure).toBeGreaterThan(0.3 * HOUR);
    expect(deep.uncovered.sure).toBeLessThan(6 * HOUR);
    expect(deep.covered.sure).toBeGreaterThan(1.3 * deep.uncovered.sure);
    expect(deep.covered.median).toBeGreaterThanOrEqual(deep.covered.sure);
  });

  test("wind and deeper cold leave less time", () => {
    expect(report(warm(243, 10)).uncovered.sure).toBeLessThan(deep.uncovered.sure);
    expect(report(warm(253)).uncovered.sure).toBeGreaterThan(deep.uncovered.sure);
  });

  test("above the limits it has all the time that is looked at", () => {
    const mild = report(warm(283));
    expect(mild.covered.sure).toBe(mild.covered.horizon);
  });

  test("a cold aircraft has no time", () => {
    const cold = report(coldSoaked({ weather: steadyWeather(243) }));
    expect(cold.now.chance).toBe(0);
    expect(cold.covered).toMatchObject({ sure: 0, median: 0 });
  });
});
