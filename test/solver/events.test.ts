import { describe, expect, test } from "vitest";
import { plainSystem, solve } from "../../src/solver/index.js";
import type { CrossingEvent } from "../../src/solver/system.js";
import { oneStore, run } from "./problems.js";

const freezing: CrossingEvent = {
  name: "thawed",
  direction: "rising",
  value: (_, y, out) => {
    for (let m = 0; m < out.length; m++) out[m] = y[m];
  },
};

describe("crossing events", () => {
  test("one store reaches 0 °C at 10000 ln 4 s", () => {
    const { crossings } = run(oneStore(28800), 1e-8, 1e-9, { events: [freezing] });
    expect(crossings.get("thawed")?.[0]).toBeCloseTo(10000 * Math.log(4), 4);
  });
  test("at a loose tolerance the crossing is as good as the solution", () => {
    const { crossings } = run(oneStore(28800), 1e-3, 1e-6, { events: [freezing] });
    expect(crossings.get("thawed")?.[0]).toBeCloseTo(10000 * Math.log(4), 0);
  });

  // y = sin t through y'' = -y: zeros at kπ.
  const wave = {
    system: plainSystem({
      size: 2,
      derivative: (_, [y, v]) => [v, -y],
      jacobian: () => [
        [0, 1],
        [-1, 0],
      ],
    }),
    start: 0,
    end: 20,
    tolerance: { absolute: 1e-10, relative: 1e-10 },
  };
  const through = (name: string, direction: "rising" | "falling", level = 0): CrossingEvent => ({
    name,
    direction,
    value: (_, y, out) => {
      out[0] = y[0] - level;
    },
  });

  test("direction is respected, the first crossing only, and a start at zero is none", () => {
    const { crossings } = solve({
      ...wave,
      initial: Float64Array.of(0, 1),
      events: [through("up", "rising"), through("down", "falling")],
    });
    expect(crossings.get("down")?.[0]).toBeCloseTo(Math.PI, 8);
    expect(crossings.get("up")?.[0]).toBeCloseTo(2 * Math.PI, 8);
  });
  test("a start already past is no crossing; coming back and crossing again is one", () => {
    const { crossings } = solve({
      ...wave,
      initial: Float64Array.of(1, 0),
      events: [through("above half", "rising", 0.5)],
    });
    expect(crossings.get("above half")?.[0]).toBeCloseTo(2 * Math.PI - Math.PI / 3, 8);
  });
  test("what never happens is NaN", () => {
    const { crossings } = solve({
      ...wave,
      initial: Float64Array.of(0, 1),
      events: [through("beyond", "rising", 1.5)],
    });
    expect(crossings.get("beyond")?.[0]).toBeNaN();
  });
  test("a short visit inside one long step is seen", () => {
    // Above 0.45 from 0.467 to 2.675, one step covers it all.
    const { crossings, statistics } = solve({
      ...wave,
      initial: Float64Array.of(0, 1),
      end: Math.PI,
      tolerance: { absolute: 1e3, relative: 1e3 },
      firstStep: Math.PI,
      events: [through("visit", "rising", 0.45), through("leave", "falling", 0.45)],
    });
    expect(statistics.steps).toBe(1);
    expect(crossings.get("visit")?.[0]).toBeLessThan(crossings.get("leave")?.[0] ?? 0);
  });
  test("g may depend on time", () => {
    const late: CrossingEvent = {
      name: "late",
      direction: "rising",
      value: (t, _, out) => {
        out[0] = t - 12.345678;
      },
    };
    const { crossings } = solve({ ...wave, initial: Float64Array.of(0, 1), events: [late] });
    expect(crossings.get("late")?.[0]).toBeCloseTo(12.345678, 8);
  });
  test("a crossing made by a jump of g counts at the jump", () => {
    let level = 2;
    const jumping: CrossingEvent = {
      name: "jumping",
      direction: "rising",
      value: (_, y, out) => {
        out[0] = y[0] - level;
      },
    };
    const { crossings } = solve({
      ...wave,
      initial: Float64Array.of(0, 1),
      jumps: [7],
      onStretch: (from) => {
        level = from < 7 ? 2 : 0.1;
      },
      events: [jumping],
    });
    expect(crossings.get("jumping")?.[0]).toBe(7);
  });
});
