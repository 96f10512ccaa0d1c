import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { AwayDocument } from "../../src/documents/index.js";
import { runs } from "../tiers.js";
import { awayOf, faultsOf, replayOf } from "./away-checks.js";
import { randomAway } from "./away-random.js";

const SEED = 20260115;
const CASES = runs(150, 1000, process.env.AWAY_CASES);

describe("away, over random aircraft, covers, places, weathers, shut-downs and returns", () => {
  test(`nothing is said that a replay does not bear out (seed ${SEED})`, () => {
    const seen = { ready: 0, lost: 0, cover: 0, run: 0, runs: 0, furthest: 0, lasting: 0, cold: 0 };
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2 ** 30 }), (seed) => {
        const source = randomAway(seed);
        const away = awayOf(source);
        expect(faultsOf(away, replayOf(source))).toEqual([]);
        if (away.status === "ready") seen.ready++;
        else seen.lost++;
        if (away.bridges.some(({ kind }) => kind === "cover")) seen.cover++;
        if (away.bridges.some(({ runs }) => runs.length === 1)) seen.run++;
        if (away.bridges.some(({ runs }) => runs.length > 1)) seen.runs++;
        if ((away.furthest?.back.at_h ?? 0) > 0) seen.furthest++;
        if (away.uncovered.sure_h > 0 && away.uncovered.sure_h < away.uncovered.horizon_h) seen.lasting++;
        if (away.engine_from === "air") seen.cold++;
      }),
      { seed: SEED, numRuns: CASES },
    );
    console.log(`away, seed ${SEED}, ${CASES} cases: ${JSON.stringify(seen)}`);
    // Each kind of answer is seen often enough to be tested.
    for (const [kind, count] of Object.entries(seen)) expect(count, kind).toBeGreaterThan(CASES / 100);
  }, 900_000);

  describe("the replay finds a result that was broken on purpose", () => {
    // Warm, cooling, back after an hour and a half: a cover is not enough, a run is.
    const source = {
      ...randomAway(1),
      ...{ aircraft: "four-carburettor-160", place: "ramp" as const, events: [], hours: 6 },
      kit: { heaters: [], covers: ["insulated-cover"] },
      fitted: { covers: [] },
      initial: { shut_down_h_ago: 0.5 },
      weather: {
        points: Array.from({ length: 11 }, (_, i) => ({
          at_h: i - 4,
          air_c: -26,
          wind_mps: 4,
          dew_point_c: -29,
          cloud_fraction: 0.2,
        })),
      },
      want: { departure: "2026-01-15T14:30+01:00", chance: 0.8 },
      ensemble: { members: 30, seed: 7 },
    };
    const away = awayOf(source);
    const replay = replayOf(source);

    test("unbroken it finds nothing, and there is a run to break", () => {
      expect(faultsOf(away, replay)).toEqual([]);
      expect(away.status).toBe("not-ready");
      expect(away.uncovered.sure_h).toBeGreaterThan(0);
      expect(away.bridges.some(({ runs }) => runs.length > 0)).toBe(true);
    });

    const uncovered = away.uncovered;
    const broken: readonly (readonly [string, Partial<AwayDocument>])[] = [
      ["a tick below the wanted chance", { status: "ready" }],
      [
        "a time among the cases that are ready longest",
        { uncovered: { ...uncovered, sure_h: uncovered.median_h } },
      ],
      [
        "a chance at the return that is too good",
        {
          uncovered: {
            ...uncovered,
            at_return: uncovered.at_return && { ...uncovered.at_return, chance: 0.9, status: "ready" },
          },
        },
      ],
      ["a start without a sure engine", { status_now: "ready", chance_now: 0.2 }],
      [
        "a run that comes too soon",
        {
          bridges: away.bridges.map((bridge) => ({
            ...bridge,
            runs: bridge.runs.map(({ start, stop }) => ({
              start: { ...start, at_h: 0 },
              stop: { ...stop, at_h: stop.at_h - start.at_h },
            })),
          })),
        },
      ],
      [
        "a cover that does not do it",
        {
          bridges: [
            { kind: "cover", cover_on_by: away.start, runs: [], run_from: null, run_min: null, chance: 0.9 },
          ],
        },
      ],
    ];
    test.each(broken)("%s", (_, change) => {
      expect(faultsOf({ ...away, ...change }, replay)).not.toEqual([]);
    });
  });
});
