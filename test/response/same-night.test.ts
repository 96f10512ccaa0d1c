import { describe, expect, test } from "vitest";
import { coverById, heaterById, installationById } from "../../src/aircraft/index.js";
import { planBase } from "../../src/base-plan/index.js";
import { solveMilp } from "../../src/node/index.js";
import { createReplanner, type PlanRequest, planPreheat } from "../../src/planning/index.js";
import { allCriteria } from "../../src/readiness/index.js";
import { finished } from "../../src/response/index.js";
import { drawEnsemble } from "../../src/simulation/index.js";
import { createColdCase, STEADY } from "../../src/winter/cold-case.js";
import { leastLead } from "../../src/winter/least-lead.js";
import { english } from "../../src/words/index.js";
import { coldSoaked, HOUR, steadyWeather } from "../simulation/example-scenario.js";

// One aircraft, one night, asked in four places: the plan, a drag in the app, the plan of a base and a winter's case.

const MEMBERS = 200;
const TEMP = 258;
const WIND = 3;
const installation = installationById("four-carburettor-160");
const kit = { heaters: [heaterById("whole-engine-4")], covers: [coverById("insulated-cover")] };
const weather = steadyWeather(TEMP, WIND, 30);
const night = {
  ...weather,
  issued: weather.time[0],
  tempDewPoint: weather.time.map(() => TEMP - STEADY.depression),
  cloudCover: weather.time.map(() => STEADY.cloudCover),
};
const wish = { departure: 8 * HOUR, chance: 0.9, unplugBefore: 900, coverOffBefore: 600, pulledOut: true };
const criteria = allCriteria(installation, kit);
const request: PlanRequest = {
  scenario: coldSoaked({ installation, kit, weather: night, duration: 16 * HOUR }),
  wish,
  heaters: ["whole-engine-4"],
  criteria,
  draws: drawEnsemble({ members: MEMBERS, seed: 1, weather: night }),
};

/** [h] before the departure. */
const leadOf = (plugIn: number | undefined) => (wish.departure - (plugIn ?? wish.departure)) / HOUR;

describe("the same night", () => {
  const plan = planPreheat(request);
  if (!("course" in plan)) throw new Error("no plan");
  const lead = leadOf(plan.plugIn);

  test("is worth asking about", () => {
    expect(plan.status).toBe("ready");
    expect(lead).toBeGreaterThan(1);
    expect(lead).toBeLessThan(6);
  });

  test("a drag reads it to ten minutes and 5 % of the chance", () => {
    const planner = createReplanner(request);
    finished(planner.prepare());
    const first = planner.first(wish);
    expect(first.basis).toBe("looked-up");
    expect(Math.abs(leadOf(first.plugIn) - lead)).toBeLessThanOrEqual(1 / 6 + 1e-9);
    expect(Math.abs(first.chance - plan.chance)).toBeLessThanOrEqual(0.05);
  });

  test("a base of one aircraft plans it to its step of ten minutes", async () => {
    const base = await planBase({
      aircraft: [
        {
          id: "one",
          name: "One",
          plan: request,
          circuits: [0],
          switched: true,
          connected: undefined,
          carts: [],
          told: undefined,
        },
      ],
      parked: [],
      limits: {
        circuits: [
          {
            id: "c",
            name: "C",
            breaker: 16,
            currentMost: 12.8,
            voltage: 230,
            outlets: 1,
            generator: false,
            available: undefined,
          },
        ],
        carts: [],
        hangar: undefined,
        people: undefined,
      },
      solveMilp,
      isNight: () => false,
    });
    if (base.status !== "planned") throw new Error(english(base.message));
    const [{ course, played }] = base.aircraft;
    expect(Math.abs(leadOf(course.blocks[0]?.from) - lead)).toBeLessThanOrEqual(1 / 6 + 1e-9);
    expect(played.missesWarm).toBe(plan.aim !== "warm-through");
    expect(Math.abs(played.chance - plan.chance)).toBeLessThanOrEqual(0.05);
  });

  test("a winter's case in this weather finds it to half an hour, over cases of its own", () => {
    const hours = Array.from({ length: 24 }, (_, i) => (i + 1) / 4);
    const leads = hours.map((h) => h * HOUR + wish.unplugBefore);
    const cold = createColdCase(
      {
        ...{ installation, kit, criteria, leads, place: "ramp", site: request.scenario.site },
        ensemble: { members: MEMBERS, seed: 1 },
        age: 0,
        unplugBefore: wish.unplugBefore,
        coverOffBefore: wish.coverOffBefore,
      },
      { tempAir: TEMP, windSpeed: WIND },
    );
    const found = leastLead(cold, leads, wish.chance);
    expect(found.aim).toBe(plan.aim);
    expect(Math.abs(found.lead / HOUR - lead)).toBeLessThanOrEqual(0.5);
  });
});
