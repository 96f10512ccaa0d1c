import { beforeEach, describe, expect, test, vi } from "vitest";
import { coverById, heaterById, installationById } from "../../src/aircraft/index.js";
import { createReplanner, type PlanRequest } from "../../src/planning/index.js";
import { firstCarriers } from "../../src/planning/spread.js";
import { whatIfScenario } from "../../src/planning/what-if.js";
import { createWindRange } from "../../src/planning/wind-range.js";
import { allCriteria } from "../../src/readiness/index.js";
import { createHeatResponse, finished } from "../../src/response/index.js";
import { drawEnsemble, firstMembers, trajectory } from "../../src/simulation/index.js";
import { coldSoaked, HOUR, steadyWeather } from "../simulation/example-scenario.js";

vi.mock("../../src/simulation/index.js", async (original) => {
  const actual = await original<typeof import("../../src/simulation/index.js")>();
  return { ...actual, trajectory: vi.fn(actual.trajectory) };
});
/** Courses that were integrated: what takes the time, however fast the machine is. */
const courses = vi.mocked(trajectory).mock;

const MEMBERS = 60;
const installation = installationById("four-carburettor-160");
const kit = { heaters: [heaterById("whole-engine-4")], covers: [coverById("insulated-cover")] };
const weather = { ...steadyWeather(255, 4, 30), issued: 0 };
const request: PlanRequest = {
  scenario: coldSoaked({ installation, kit, weather, duration: 24 * HOUR }),
  wish: { departure: 13 * HOUR, chance: 0.9, unplugBefore: 900, coverOffBefore: 600, pulledOut: true },
  heaters: ["whole-engine-4"],
  criteria: allCriteria(installation, kit),
  draws: drawEnsemble({ members: MEMBERS, seed: 1, weather }),
};

describe("winds and covers that are being moved", () => {
  const planner = createReplanner(request);
  const changes = [
    { windFactor: 0.8 },
    { windFactor: 1.9 },
    { coversOn: [], windFactor: 1.1 },
    { coversOn: [] },
  ];
  const answer = () => changes.map((change) => planner.whatIf(change).first(request.wish));
  beforeEach(() => {
    courses.calls.length = 0;
  });

  test("play nothing anew once all was prepared, and answer as they did when they were played for it", () => {
    finished(planner.prepare());
    courses.calls.length = 0;
    const asPlayed = answer();
    // The soak and the heated courses around, for each wind and cover: this is what a drag must not wait for.
    expect(courses.calls.length).toBeGreaterThan(20);
    finished(planner.prepareWhatIfs());
    courses.calls.length = 0;
    expect(answer().map(({ plugIn, chance }) => [plugIn, chance])).toEqual(
      asPlayed.map(({ plugIn, chance }) => [plugIn, chance]),
    );
    expect(courses.calls.length).toBe(0);
    for (const { basis } of asPlayed) expect(basis).toBe("carried-over");
  });

  test("a wind beyond those played is played itself", () => {
    planner.whatIf({ windFactor: 3 }).first(request.wish);
    expect(courses.calls.length).toBeGreaterThan(0);
  });
});

describe("between two winds", () => {
  const draws = firstMembers(request.draws, 16);
  const range = createWindRange(request, firstCarriers(16, MEMBERS), draws);

  test.each([0.4, 0.8, 1.2, 1.8])(
    "%f of the wind reads within half a kelvin of what it plays",
    (windFactor) => {
      const scenario = whatIfScenario(request.scenario, { windFactor });
      const own = createHeatResponse({ scenario, heaters: request.heaters }, draws);
      const read = range.responseAt(windFactor);
      const [played, between] = [0, 1].map(() => new Float64Array(own.parts.length * 16));
      let most = 0;
      let apart = 0;
      for (const [plugIn, t] of [
        [undefined, 6],
        [undefined, 13],
        [10, 13],
        [7, 13],
        [16, 20],
      ] as const) {
        own.temps(plugIn && plugIn * HOUR, t * HOUR, played);
        range.responseAt(1).temps(plugIn && plugIn * HOUR, t * HOUR, between);
        own.parts.forEach((part, row) => {
          // A heater's own element is hundreds of kelvins above the air.
          if (part.startsWith("heater:")) return;
          for (let k = 16 * row; k < 16 * (row + 1); k++)
            apart = Math.max(apart, Math.abs(played[k] - between[k]));
        });
        read.temps(plugIn && plugIn * HOUR, t * HOUR, between);
        own.parts.forEach((part, row) => {
          if (part.startsWith("heater:")) return;
          for (let k = 16 * row; k < 16 * (row + 1); k++)
            most = Math.max(most, Math.abs(played[k] - between[k]));
        });
      }
      expect(most).toBeLessThan(0.5);
      // The winds do differ: the forecast's own would have missed by more.
      expect(apart).toBeGreaterThan(2 * most);
    },
  );

  test("the winds played are themselves", () => {
    const [one, two] = [0, 1].map(() => new Float64Array(range.responseAt(1).parts.length * 16));
    const own = createHeatResponse(request, draws);
    own.temps(9 * HOUR, 13 * HOUR, one);
    range.responseAt(1).temps(9 * HOUR, 13 * HOUR, two);
    expect([...two]).toEqual([...one]);
  });
});
