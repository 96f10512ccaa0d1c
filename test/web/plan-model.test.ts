import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { PlanState } from "../../src/web/data/plan-state.js";
import { knownPlan, readablePlans, withFirst } from "../../src/web/data/plan-state.js";
import { standingOf } from "../../src/web/design/status.js";
import {
  axisAt,
  drawnSpan,
  HOUR,
  laneMarks,
  loadOf,
  placeOn,
} from "../../src/web/screens/night/night-model.js";
import { AIRCRAFT, aPlan, NOW, stamp } from "./plan-fixture.js";

const AXIS = axisAt(NOW, "UTC");
/** [ms] four times in order around the axis, before and beyond it too. */
const times = fc
  .tuple(...Array.from({ length: 4 }, () => fc.integer({ min: -6 * 60, max: 42 * 60 })))
  .map((minutes) => minutes.sort((a, b) => a - b).map((m) => NOW + m * 60_000));
const windows = fc.option(
  times.map(([opens, surelyOpen, surelyStillOpen, closes]) => ({
    opens: { half: stamp(opens), sure: stamp(surelyOpen) },
    closes: { sure: stamp(surelyStillOpen), half: stamp(closes) },
  })),
  { nil: null },
);
const chances = fc.double({ min: 0, max: 1, noNaN: true });
const plans = fc
  .record({
    status: fc.constantFrom("ready", "not-required", "look-first", "not-reachable" as const),
    window: windows,
    covered_window: windows,
    chance: chances,
    wanted_chance: fc.constantFrom(0.8, 0.9, 0.95),
    departure: fc.integer({ min: 30, max: 36 * 60 }).map((m) => stamp(NOW + m * 60_000)),
  })
  .map((drawn) => aPlan(drawn));

describe("what is drawn as ready", () => {
  test("is the window as planned and nothing else, whatever the document says", () => {
    fc.assert(
      fc.property(plans, fc.boolean(), (plan, isMoved) => {
        const departure = Date.parse(plan.departure.time) + (isMoved ? 300_000 : 0);
        const { window } = laneMarks(AIRCRAFT, state(plan), AXIS, NOW, departure);
        if (window === undefined) return;
        // Of this departure, with the wanted chance, and with nothing to be looked at first.
        expect(isMoved).toBe(false);
        expect(["ready", "not-required"]).toContain(plan.status);
        expect(plan.chance).toBeGreaterThanOrEqual(plan.wanted_chance);
        if (plan.window === null) throw new Error("drawn without a window");
        expect(window.surelyOpen).toBe(Date.parse(plan.window.opens.sure.time));
        expect(window.surelyStillOpen).toBe(Date.parse(plan.window.closes.sure.time));
        // The full colour lies within the sure window on the axis, the pale ends within that of half of all cases.
        const { from, to, sureFrom, sureTo } = drawnSpan(AXIS, window);
        const place = (share: number) => from + ((to - from) * share) / 100;
        const at = (text: string) => placeOn(AXIS, Date.parse(text));
        expect(place(sureFrom)).toBeCloseTo(at(plan.window.opens.sure.time), 6);
        expect(place(sureTo)).toBeCloseTo(at(plan.window.closes.sure.time), 6);
        expect(from).toBeGreaterThanOrEqual(at(plan.window.opens.half.time) - 1e-9);
        expect(to).toBeLessThanOrEqual(at(plan.window.closes.half.time) + 1e-9);
      }),
      { numRuns: 2000 },
    );
  });

  test("is there where the plan has a window of the departure shown", () => {
    const plan = aPlan({});
    expect(laneMarks(AIRCRAFT, state(plan), AXIS, NOW).window).toBeDefined();
    const running = { ...AIRCRAFT, running: true };
    expect(laneMarks(running, state(plan), AXIS, NOW).window).toBeUndefined();
  });

  test("never is the time that holds with covers left on only; that stands apart", () => {
    const covered_window = {
      opens: { half: stamp(NOW + 13 * HOUR), sure: stamp(NOW + 14 * HOUR) },
      closes: { sure: stamp(NOW + 20 * HOUR), half: stamp(NOW + 22 * HOUR) },
    };
    const only = laneMarks(AIRCRAFT, state(aPlan({ window: null, covered_window })), AXIS, NOW);
    expect(only.window).toBeUndefined();
    expect(only.covered?.surelyStillOpen).toBe(NOW + 20 * HOUR);
    // Where covers make no difference there is nothing to tell apart.
    const plan = aPlan({});
    const same = laneMarks(AIRCRAFT, state({ ...plan, covered_window: plan.window }), AXIS, NOW);
    expect(same.covered).toBeUndefined();
  });

  test("is nothing of the plan before while a newer answer is not whole", () => {
    const plan = aPlan({});
    const first = { ...aPlan({ departure: stamp(NOW + 17 * HOUR) }) };
    const { window: _, covered_window: __, heaters: ___, ...answer } = first;
    const both = withFirst(state(plan), answer, NOW);
    expect(knownPlan(both)?.departure).toEqual(first.departure);
    expect(knownPlan(both)?.window).toBeUndefined();
    const marks = laneMarks(AIRCRAFT, both, AXIS, NOW, NOW + 17 * HOUR);
    expect(marks.window).toBeUndefined();
    // The heat of the new answer is drawn, with the heaters of the wish.
    expect(marks.heats).toHaveLength(1);
  });
});

describe("a mark beside an aircraft", () => {
  test("is a tick only with the wanted chance and nothing to look at first", () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const standing = standingOf(state(plan));
        const mayTick = plan.chance >= plan.wanted_chance && ["ready", "not-required"].includes(plan.status);
        expect(standing === "good").toBe(mayTick);
        if (plan.status === "look-first") expect(standing).toBe("look");
      }),
      { numRuns: 2000 },
    );
  });

  test("is none where there is no plan, whatever was known before", () => {
    expect(standingOf({ ...state(aPlan({})), reasons: ["no weather"] })).toBe("unknown");
    expect(standingOf(undefined)).toBe("unknown");
  });
});

describe("heat on the lane", () => {
  const heating = {
    heaters: ["pad"],
    ...{ since: stamp(NOW - 30 * HOUR), on_h: 30, longest_on_h: 24, wet_h: 3 },
  };
  const on = { ...AIRCRAFT, heatersOn: ["pad"], heatingSince: NOW - 30 * HOUR };

  test("that has been on too long ends now, and the planned heat stands beside it", () => {
    const plan = aPlan({ heating: { ...heating, stays_on: false } });
    expect(laneMarks(on, state(plan), AXIS, NOW).heats).toEqual([
      { from: NOW - 30 * HOUR, to: NOW, isOn: true },
      { from: NOW + 11 * HOUR, to: NOW + 13.75 * HOUR, isOn: false },
    ]);
  });

  test("that stays on goes on until unplugging, and is drawn once", () => {
    const plan = aPlan({ plug_in: null, heating: { ...heating, stays_on: true } });
    expect(laneMarks(on, state(plan), AXIS, NOW).heats).toEqual([
      { from: NOW - 30 * HOUR, to: NOW + 13.75 * HOUR, isOn: true },
    ]);
  });

  test("draws on the circuit once for each heater", () => {
    const circuit = {
      id: "c",
      name: "ramp",
      limitA: 16,
      continuousA: 12.8,
      voltageV: 230,
      outlets: 4,
    } as Parameters<typeof loadOf>[0];
    const plan = aPlan({ plug_in: stamp(NOW), heating: { ...heating, stays_on: true } });
    const steps = loadOf(circuit, [{ ...on, circuit: "c" }], { wren: state(plan) }, AXIS, NOW);
    const most = Math.max(...steps.map(({ amps }) => amps));
    expect(most).toBeCloseTo(230 / 230, 6);
    expect(steps.every(({ who }) => who.length <= 1)).toBe(true);
  });
});

test("plans that an older app kept are not shown", () => {
  const plan = aPlan({});
  const { lines: _, ...older } = plan;
  const kept = {
    wren: state(plan),
    lynx: state({ ...plan, soakline: 1 as never }),
    heron: state(older as typeof plan),
    marten: { isBusy: false, at: NOW, reasons: ["no weather"] },
  };
  expect(Object.keys(readablePlans(kept))).toEqual(["wren", "marten"]);
});

function state(plan: ReturnType<typeof aPlan>): PlanState {
  return { plan, isBusy: false, at: NOW };
}
