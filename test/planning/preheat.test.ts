import { describe, expect, test } from "vitest";
import type { Configuration } from "../../src/aircraft/index.js";
import { type Plan, type PlanRequest, planPreheat } from "../../src/planning/index.js";
import { isGating, temperatureCriteria } from "../../src/readiness/index.js";
import { drawEnsemble, type Scenario } from "../../src/simulation/index.js";
import { english } from "../../src/words/index.js";
import { coldSoaked, HOUR, steadyWeather } from "../simulation/example-scenario.js";

function request(scenario: Scenario, change: Partial<PlanRequest> = {}): PlanRequest {
  return {
    scenario,
    wish: { departure: 13 * HOUR, chance: 0.9, unplugBefore: 900, coverOffBefore: 600, pulledOut: true },
    heaters: ["whole-engine-4"],
    criteria: temperatureCriteria(scenario.installation, scenario.kit),
    draws: drawEnsemble({ members: 60, seed: 3, weather: scenario.weather }),
    ...change,
  };
}

function planned(r: PlanRequest): Plan {
  const plan = planPreheat(r);
  if (!("course" in plan)) throw new Error(english(plan.message));
  return plan;
}

const frost = coldSoaked({ weather: steadyWeather(248) });

describe("planPreheat", () => {
  const plan = planned(request(frost));

  test("plugs in late enough to save power and early enough for the wanted chance", () => {
    expect(plan.status).toBe("ready");
    expect(plan.message).toBeNull();
    expect(plan.chance).toBeGreaterThanOrEqual(0.9);
    expect(plan.plugIn).toBeGreaterThan(6 * HOUR);
    expect(plan.plugIn).toBeLessThan(12.5 * HOUR);
  });

  test("is the latest on the grid: five minutes later is not enough", () => {
    const wish = {
      departure: 13 * HOUR,
      chance: 0.9,
      unplugBefore: 900,
      coverOffBefore: 600,
      pulledOut: true,
    };
    const heaters = ["whole-engine-4"];
    const events = [
      { at: (plan.plugIn ?? 0) + 300, change: { do: "plug-in" as const, heaters } },
      { at: plan.unplug, change: { do: "unplug" as const, heaters } },
    ];
    // The same members, plugged in by the scenario's own event instead of the planner.
    const later = planned(request({ ...frost, events }, { heaters: [], wish }));
    expect(later.chance).toBeLessThan(0.9);
  });

  test("every criterion is judged, the weakest one is among those that hold least", () => {
    const ids = plan.verdict.criteria.map((c) => c.criterion.id);
    expect(ids).toEqual(
      expect.arrayContaining(["oil", "bearings", "crankcase", "barrels", "heads", "evenness", "oil-film"]),
    );
    const starts = plan.verdict.criteria.filter((c) => isGating(c.criterion));
    expect(plan.verdict.weakest.chance).toBe(Math.min(...starts.map((c) => c.chance)));
  });

  test("later plug-ins have smaller chances, and habits are compared", () => {
    const chances = [plan.chance, ...plan.late.map((l) => l.chance)];
    expect(plan.late[0].lateBy).toBe(1800);
    for (let i = 1; i < chances.length; i++) expect(chances[i]).toBeLessThan(chances[i - 1]);
    expect(plan.habits.map((h) => h.lead)).toEqual([2 * HOUR, 4 * HOUR]);
    expect(plan.habits[1].energy).toBeCloseTo(400 * 3.75 * HOUR, -4);
    for (let i = 1; i < plan.curve.length; i++) {
      expect(plan.curve[i].plugIn).toBeGreaterThan(plan.curve[i - 1].plugIn);
    }
  });

  test("the window as planned begins when covers are off; with covers left on it is longer on both sides", () => {
    const { window, coveredWindow, stayWarm } = plan;
    if (window === undefined || coveredWindow === undefined) throw new Error("no window");
    expect(window.opens.sure).toBeGreaterThanOrEqual(plan.coverOff);
    expect(window.opens.sure).toBeLessThanOrEqual(plan.departure);
    expect(window.closes.sure).toBe(plan.departure + stayWarm.uncovered.sure);
    expect(coveredWindow.opens.sure).toBeLessThan(window.opens.sure);
    expect(coveredWindow.closes.sure).toBeGreaterThan(window.closes.sure);
    expect(window.closes.half).toBeGreaterThanOrEqual(window.closes.sure);
    expect(stayWarm.covered.median).toBeGreaterThan(stayWarm.uncovered.median);
    expect(stayWarm.uncovered.sure).toBeGreaterThan(0);
  });

  test("both lines are told, warm through never later than the least", () => {
    const { least, warmThrough } = plan.lines;
    expect(least.reached).toBe(true);
    expect(least.chance).toBeGreaterThanOrEqual(0.9);
    if (warmThrough.plugIn !== undefined) expect(warmThrough.plugIn).toBeLessThanOrEqual(least.plugIn ?? 0);
    expect(plan.plugIn).toBe(plan.aim === "least" ? least.plugIn : warmThrough.plugIn);
    expect(plan.chance).toBeGreaterThanOrEqual(plan.warmChance);
  });

  test("energy is the heater's power from plug-in to unplug", () => {
    const hours = (plan.unplug - (plan.plugIn ?? 0)) / HOUR;
    expect(plan.energy.mid / 3.6e6).toBeCloseTo(0.4 * hours, 1);
    expect(plan.energy.low).toBeLessThan(plan.energy.high);
  });

  test("the course runs from now to the end and heats only while plugged in", () => {
    const { course } = plan;
    expect(course.time[0]).toBe(0);
    expect(course.time[course.time.length - 1]).toBe(frost.duration);
    const spentAt = (t: number) => course.energy[course.time.indexOf(t) * course.members];
    expect(spentAt(plan.plugIn ?? 0)).toBe(0);
    expect(spentAt(plan.unplug)).toBeGreaterThan(0);
    expect(spentAt(frost.duration)).toBeCloseTo(spentAt(plan.unplug), 6);
  });

  test("leaving it plugged in costs more power, more heater hours and more wet hours, and gets hotter", () => {
    const { toll } = plan;
    expect(toll?.planned.plugIn).toBe(plan.plugIn);
    expect(toll?.leftOn.plugIn).toBe(0);
    expect(toll?.leftOn.heaterTime).toBe(plan.unplug);
    expect(toll?.leftOn.energy).toBeCloseTo(400 * plan.unplug, -3);
    expect(toll?.leftOn.wetTime).toBeGreaterThan((toll?.planned.wetTime ?? 0) + HOUR);
    expect(toll?.leftOn.hottestFilm).toBeGreaterThan(toll?.planned.hottestFilm ?? 0);
    expect(toll?.planned.hottestSurface).toBeGreaterThan(330);
  });

  test("a departure off the ten-minute grid is planned as well", () => {
    const wish = {
      ...request(frost).wish,
      departure: 13 * HOUR + 437,
      unplugBefore: 850,
      coverOffBefore: 333,
    };
    const odd = planned(request(frost, { wish }));
    expect(odd.status).toBe("ready");
    expect(odd.course.time).toContain(wish.departure);
    expect(odd.stayWarm.covered.sure).toBeGreaterThan(0);
  });

  test("is the same again", () => {
    const again = planned(request(frost));
    expect(again.plugIn).toBe(plan.plugIn);
    expect(again.course.temps).toEqual(plan.course.temps);
  });
});

describe("what changes a plan", () => {
  const base = planned(request(frost));
  const lead = (plan: Plan) => plan.departure - (plan.plugIn ?? plan.departure);

  test("no cover, more wind, more cold and a higher chance all want an earlier plug-in", () => {
    const bare: Configuration = { place: "ramp", heatersOn: new Set(), coversOn: new Set() };
    const without = planned(request({ ...frost, initial: { ...frost.initial, configuration: bare } }));
    expect(lead(without)).toBeGreaterThan(lead(base));
    expect(lead(planned(request(coldSoaked({ weather: steadyWeather(248, 9) }))))).toBeGreaterThan(
      lead(base),
    );
    expect(lead(planned(request(coldSoaked({ weather: steadyWeather(245) }))))).toBeGreaterThan(lead(base));
    const surer = planned(request(frost, { wish: { ...request(frost).wish, chance: 0.97 } }));
    expect(lead(surer)).toBeGreaterThan(lead(base));
  });

  test("an aircraft that is warm enough needs no heat", () => {
    const mild = planned(request(coldSoaked({ weather: steadyWeather(285) })));
    expect(mild).toMatchObject({ status: "not-required", heatNeeded: false, plugIn: undefined });
    expect(mild.energy.high).toBe(0);
  });

  test("a pad that cannot lift deep cold says what binds and what would help", () => {
    const arctic = coldSoaked({ weather: steadyWeather(235, 8) });
    const plan = planned(request(arctic, { heaters: ["sump-pad-220"] }));
    expect(plan.status).toBe("not-reachable");
    expect(plan.chance).toBeLessThan(0.1);
    // When nothing is enough it says what the longest heating allowed brings.
    expect(plan.plugIn).toBe(0);
    expect(english(plan.message ?? "")).toMatch(
      /the chance is under 1 in 100, not 9 in 10; .*: OK in \d+ of 100, [\d.]+.K short in the middle case/,
    );
    expect(plan.remedies.length).toBeGreaterThan(1);
    for (const remedy of plan.remedies) expect(remedy.chance).toBeGreaterThan(plan.chance);
    // What reaches the wanted chance comes first.
    const reaches = plan.remedies.map((r) => r.chance >= 0.9);
    expect(reaches).toEqual([...reaches].sort((a, b) => Number(b) - Number(a)));
    expect(plan.remedies.some((r) => r.text.code === "help-hangar")).toBe(true);
  });

  test("a heater is never planned longer than its longest-on time", () => {
    const scenario = coldSoaked({ weather: steadyWeather(238, 6) });
    const kit = { ...scenario.kit, heaters: scenario.kit.heaters.map((h) => ({ ...h, longest_on_h: 3 })) };
    const plan = planned(request({ ...scenario, kit }, { heaters: ["sump-pad-220"] }));
    for (const { plugIn } of plan.curve) expect(plan.unplug - plugIn).toBeLessThanOrEqual(3 * HOUR);
  });

  test("a course that overheats its pad is not planned", () => {
    const { installation, kit } = frost;
    const criteria = temperatureCriteria(installation, kit).map((c) =>
      c.id === "surface:whole-engine-4:sump pad" ? { ...c, limit: 300 } : c,
    );
    const plan = planned(request(frost, { criteria }));
    expect(plan.status).toBe("not-reachable");
    expect(english(plan.message ?? "")).toMatch(/sump pad would get too hot: \d+ K over its limit/);
  });
});

describe("what a plan refuses", () => {
  const { wish } = request(frost);
  test.each([
    [
      "departure beyond the scenario",
      { wish: { ...wish, departure: 30 * HOUR } },
      /^invalid departure: 108000 s/,
    ],
    ["departure not a number", { wish: { ...wish, departure: Number.NaN } }, /^invalid departure: NaN/],
    ["certainty", { wish: { ...wish, chance: 1 } }, /^invalid chance: 1 \(expected between 0 and 1\)/],
    [
      "covers off before unplugging",
      { wish: { ...wish, coverOffBefore: 1200 } },
      /^invalid coverOffBefore: 1200 s/,
    ],
    ["a heater not carried", { heaters: ["immersion-250"] }, /^unknown heater: immersion-250/],
    ["no criteria", { criteria: [] }, /^missing criteria/],
  ] as const)("%s", (_, change, message) => {
    expect(() => planPreheat(request(frost, change as Partial<PlanRequest>))).toThrow(message);
  });

  test("a stop is a status", () => {
    let calls = 0;
    const plan = planPreheat(request(frost, { onProgress: () => ++calls < 3 }));
    expect(plan.status).toBe("cancelled");
    expect(calls).toBe(3);
  });
});
