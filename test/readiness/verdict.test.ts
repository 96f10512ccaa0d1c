import { describe, expect, test } from "vitest";
import { heaterById, INSTALLATIONS, installationById } from "../../src/aircraft/index.js";
import {
  type Criterion,
  type EnsembleState,
  judge,
  marginOf,
  temperatureCriteria,
} from "../../src/readiness/index.js";

const PARTS = [
  "oil",
  "crankcase",
  "crankshaft",
  "barrels",
  "heads_front",
  "heads_rear",
  "hub",
  "sump",
  "heater:sump-pad-220:pad",
  "accessories",
];
const KIT = { heaters: [heaterById("sump-pad-220")], covers: [] };
const injected = installationById("four-injected-200");

/** One column of temperatures [°C] per member, in the order of PARTS. */
function state(...members: number[][]): EnsembleState {
  const temps = new Float64Array(PARTS.length * members.length);
  members.forEach((column, m) => {
    column.forEach((c, i) => {
      temps[i * members.length + m] = c + 273.15;
    });
  });
  return { temps, parts: PARTS, members: members.length };
}

const READY = [30, 10, 8, 9, 6, 7, -10, 40, 180, 9];

function verdictOf(id: string, ...members: number[][]) {
  const verdict = judge(temperatureCriteria(injected, KIT), state(...members));
  const found = verdict.criteria.find((c) => c.criterion.id === id);
  if (found === undefined) throw new Error(`no criterion ${id}`);
  return found;
}

describe("judge", () => {
  test("a warm engine is ready", () => {
    const verdict = judge(temperatureCriteria(injected, KIT), state(READY));
    expect(verdict.chance).toBe(1);
    expect(verdict.tooHot).toEqual([]);
  });

  test("each cold part is named by its own criterion, and only by it", () => {
    const cold: [string, number][] = [
      ["oil", 0],
      ["crankcase", 1],
      ["bearings", 2],
      ["barrels", 3],
      ["heads", 4],
      ["hub", 6],
      ["oil-cooler", 9],
    ];
    for (const [id, row] of cold) {
      const temps = [...READY];
      temps[row] = id === "hub" ? -30 : -8;
      const verdict = judge(temperatureCriteria(injected, KIT), state(temps));
      const failing = verdict.criteria.filter((c) => c.chance < 1).map((c) => c.criterion.id);
      // Too cold for the least is too cold for warm through as well.
      expect(failing.filter((each) => each !== `${id}-warm`)).toEqual([id]);
      expect(verdict.weakest.criterion.id).toBe(id);
      expect(verdict.chance).toBe(0);
    }
  });

  test("past the maker's limit but not warm, the engine may be started and is not warm through", () => {
    const cool = [30, 10, 2, 9, 6, 7, -10, 40, 180, 9];
    const verdict = judge(temperatureCriteria(injected, KIT), state(READY, cool, cool, READY));
    expect(verdict.chance).toBe(1);
    expect(verdict.warm.chance).toBe(0.5);
    expect(verdict.warm.weakest.criterion.id).toBe("bearings-warm");
    expect(verdict.weakest.criterion.aim).toBeUndefined();
  });

  test("the owner says what is warm through, but never below the maker's limit", () => {
    const limitOf = (celsius: number) =>
      temperatureCriteria(injected, KIT, { warmThrough: celsius + 273.15 }).find(
        (c) => c.id === "barrels-warm",
      )?.limit;
    expect(limitOf(12)).toBeCloseTo(285.15, 9);
    expect(limitOf(-30)).toBe(injected.limits.no_preheat_c + 273.15);
  });

  test("warm oil over a cold engine fails on evenness too", () => {
    const { value, margin, chance } = verdictOf("evenness", [50, -5, -5, -5, -5.5, -5.5, 0, 60, 180, 9]);
    expect(value.mid).toBeCloseTo(55.5, 9);
    expect(margin.mid).toBeCloseTo(-5.5, 9);
    expect(chance).toBe(0);
  });

  test("an engine just shut down is not half-warm, however much hotter its heads are", () => {
    expect(verdictOf("evenness", [85, 75, 75, 95, 140, 150, 40, 80, 20, 9]).value.mid).toBe(0);
    expect(verdictOf("evenness", [75, 12, 14, 20, 5, 5, 0, 80, 180, 9]).value.mid).toBeCloseTo(55, 9);
  });

  test("heads are judged by the colder pair", () => {
    expect(verdictOf("heads", [30, 10, 8, 9, -7, 12, 0, 40, 180, 9]).value.mid).toBeCloseTo(266.15, 9);
  });

  test("the chance counts members in which everything holds at once", () => {
    const coldOil = [-8, 10, 8, 9, 6, 7, 0, 40, 180, 9];
    const coldCase = [30, -8, 8, 9, 6, 7, 0, 40, 180, 9];
    const verdict = judge(temperatureCriteria(injected, KIT), state(READY, coldOil, coldCase, READY));
    expect(verdict.criteria.find((c) => c.criterion.id === "oil")?.chance).toBe(0.75);
    expect(verdict.chance).toBe(0.5);
  });

  test("a hot pad forbids, but does not make the engine less ready", () => {
    const verdict = judge(
      temperatureCriteria(injected, KIT),
      state(READY),
      state([30, 10, 8, 9, 6, 7, 0, 40, 300, 9]),
    );
    expect(verdict.chance).toBe(1);
    expect(verdict.tooHot.map((c) => c.criterion.id)).toEqual(["surface:sump-pad-220:pad"]);
  });

  test("ceilings are read at unplugging, floors at the start", () => {
    const cooled = [30, 10, 8, 9, 6, 7, 0, 40, 20, 9];
    const hot = [-20, -20, -20, -20, -20, -20, -20, 40, 300, 9];
    const verdict = judge(temperatureCriteria(injected, KIT), state(cooled), state(hot));
    expect(verdict.chance).toBe(1);
    expect(verdict.tooHot).toHaveLength(1);
  });

  test("refuses to judge by nothing", () => {
    expect(() => judge([], state(READY))).toThrow("missing criteria");
  });
});

describe("limits", () => {
  test.each(INSTALLATIONS.map((i) => [i.id, i] as const))(
    "%s: maker's limits carry a source and are in the list",
    (_, installation) => {
      const criteria = temperatureCriteria(installation, KIT);
      for (const id of ["oil", "bearings", "crankcase", "barrels", "heads"]) {
        const criterion = criteria.find((c) => c.id === id);
        expect(criterion?.limit).toBe(installation.limits.no_preheat_c + 273.15);
        expect(String(criterion?.source).length).toBeGreaterThan(20);
      }
      expect(criteria.some((c) => c.id === "hub")).toBe(installation.propeller.constant_speed);
    },
  );

  test("stricter limits of the owner count, laxer ones do not", () => {
    const limitOf = (stricter: Parameters<typeof temperatureCriteria>[2], id: string) =>
      temperatureCriteria(injected, KIT, stricter).find((c) => c.id === id)?.limit;
    expect(limitOf({ engineAtLeast: 278.15 }, "bearings")).toBe(278.15);
    expect(limitOf({ engineAtLeast: 250 }, "bearings")).toBe(267.15);
    expect(limitOf({ engineAtLeast: 278.15, oilAtLeast: 288.15 }, "oil")).toBe(288.15);
    expect(limitOf({ oilAtLeast: 250 }, "oil")).toBe(267.15);
    expect(limitOf({ evennessAtMost: 30 }, "evenness")).toBe(30);
    expect(limitOf({ evennessAtMost: 80 }, "evenness")).toBe(50);
  });

  test("margins are positive on the safe side of either direction", () => {
    const atLeast = { direction: "at-least", limit: 270 } as Criterion;
    const atMost = { direction: "at-most", limit: 270 } as Criterion;
    expect(marginOf(atLeast, 272)).toBe(2);
    expect(marginOf(atMost, 272)).toBe(-2);
  });
});
