import { describe, expect, test } from "vitest";
import { type EnsembleSystem, plainSystem, solve } from "../../src/solver/index.js";

const TAU = 1000;
const END = 6000;
/** Heater on from 1800 s to 4500 s: forcing u = 20 K. */
const ON = 1800;
const OFF = 4500;

/** T' = (u - T)/τ with u switched at known times; which stretch is meant comes from onStretch alone. */
function switched(): {
  readonly system: EnsembleSystem;
  readonly onStretch: (from: number, to: number) => void;
  readonly seen: readonly (readonly [number, number])[];
} {
  let u = 0;
  const seen: [number, number][] = [];
  const system = plainSystem({
    size: 1,
    derivative: (_, [temp]) => [(u - temp) / TAU],
    jacobian: () => [[-1 / TAU]],
  });
  return {
    system,
    seen,
    onStretch: (from, to) => {
      seen.push([from, to]);
      u = from >= ON && from < OFF ? 20 : 0;
    },
  };
}

function exact(t: number): number {
  const rise = (from: number) => (t > from ? 20 * (1 - Math.exp(-(t - from) / TAU)) : 0);
  return rise(ON) - rise(OFF);
}

const base = {
  initial: Float64Array.of(0),
  start: 0,
  end: END,
  tolerance: { absolute: 1e-6, relative: 1e-6 },
};

describe("known jumps", () => {
  const times = [0, 900, ON, 2400, OFF, 5000, END];
  test("steps land exactly on them and samples there are the state there", () => {
    const { system, onStretch, seen } = switched();
    const ends: number[] = [];
    const result = solve({
      ...base,
      system,
      jumps: [ON, OFF],
      onStretch,
      sampleTimes: times,
      onStep: ({ end }) => ends.push(end) > 0,
    });
    expect(result.status).toBe("completed");
    expect(seen).toEqual([
      [0, ON],
      [ON, OFF],
      [OFF, END],
    ]);
    expect(ends).toEqual(expect.arrayContaining([ON, OFF, END]));
    times.forEach((t, s) => {
      expect(result.samples[s]).toBeCloseTo(exact(t), 5);
    });
  });
  test("f is never asked for a time outside the stretch announced last", () => {
    let [from, to] = [Number.NaN, Number.NaN];
    const { system, onStretch } = switched();
    const watched: (t: number) => void = (t) => {
      if (!(t >= from && t <= to)) throw new Error(`f at ${t} in stretch ${from} … ${to}`);
    };
    const result = solve({
      ...base,
      system: {
        ...system,
        derivative: (t, y, dydt) => {
          watched(t);
          system.derivative(t, y, dydt);
        },
        linearise: (t, y, into) => {
          watched(t);
          system.linearise(t, y, into);
        },
      },
      jumps: [ON, 1801, OFF],
      onStretch: (a, b) => {
        [from, to] = [a, b];
        onStretch(a, b);
      },
    });
    expect(result.status).toBe("completed");
  });
  test("told of the jumps, the solver needs no rejections and fewer steps than when it must find them", () => {
    const told = switched();
    const known = solve({ ...base, ...told, jumps: [ON, OFF] });
    const system = plainSystem({
      size: 1,
      derivative: (t, [temp]) => [((t >= ON && t < OFF ? 20 : 0) - temp) / TAU],
      jacobian: () => [[-1 / TAU]],
    });
    const unknown = solve({ ...base, system, maximumStep: 500 });
    expect(unknown.status).toBe("completed");
    expect(unknown.statistics.rejected).toBeGreaterThan(5);
    const tries = ({ statistics }: typeof known) => statistics.steps + statistics.rejected;
    expect(tries(known)).toBeLessThan(0.7 * tries(unknown));
    expect(known.state[0]).toBeCloseTo(exact(END), 5);
  });
  test("after a jump of f the first step is found anew, so that the transient is not stepped over", () => {
    let u = 0;
    // A light body (τ about 10 s) at a heavy one, at rest until u jumps; by then steps would be half an hour long.
    const system = plainSystem({
      size: 2,
      derivative: (_, [light, heavy]) => [(u - light) / 10 + (heavy - light) / 100, (light - heavy) / 1e5],
      jacobian: () => [
        [-0.11, 0.01],
        [1e-5, -1e-5],
      ],
    });
    const run = (absolute: number) =>
      solve({
        ...base,
        system,
        initial: Float64Array.of(0, 0),
        end: 7200,
        tolerance: { absolute, relative: 1e-9 },
        jumps: [1800, 3600],
        onStretch: (from) => {
          u = from >= 3600 ? 20 : 0;
        },
        sampleTimes: [3605, 3610, 3620, 3660],
      });
    const { samples, statistics } = run(0.1);
    expect(statistics.rejected).toBe(0);
    run(1e-8).samples.forEach((value, k) => {
      expect(Math.abs(samples[k] - value)).toBeLessThan(0.01);
    });
  });
  test("cutting a smooth problem into many stretches keeps the step size and costs few steps more", () => {
    const system = plainSystem({ size: 1, derivative: (_, [y]) => [-y / TAU], jacobian: () => [[-1 / TAU]] });
    const request = { ...base, system, initial: Float64Array.of(10) };
    const whole = solve(request);
    const jumps = Array.from({ length: 9 }, (_, j) => (END * (j + 1)) / 10);
    const cut = solve({ ...request, jumps });
    expect(cut.statistics.rejected).toBe(0);
    expect(cut.statistics.steps).toBeLessThanOrEqual(whole.statistics.steps + jumps.length);
    expect(cut.state[0]).toBeCloseTo(10 * Math.exp(-END / TAU), 6);
  });
  test("told that only the slope jumps, the same steps are taken and f is asked once less at each", () => {
    // dy/dt = g(t) - y with g in straight lines that meet.
    const knots = [0, 600, 1500, 2400, END];
    const levels = [0, 10, 4, 8, 8];
    let piece = 0;
    const slope = () => (levels[piece + 1] - levels[piece]) / (knots[piece + 1] - knots[piece]);
    const system = plainSystem({
      size: 1,
      derivative: (t, [y]) => [(levels[piece] + slope() * (t - knots[piece]) - y) / TAU],
      jacobian: () => [[-1 / TAU]],
      timeDerivative: () => [slope() / TAU],
    });
    const request = {
      ...{ ...base, system, initial: Float64Array.of(0), jumps: knots.slice(1, -1) },
      onStretch: (from: number) => {
        piece = knots.indexOf(from);
      },
    };
    const asked = solve(request);
    const told = solve({ ...request, isKink: () => true });
    expect(told.state).toEqual(asked.state);
    expect(told.statistics.steps).toBe(asked.statistics.steps);
    expect(told.statistics.derivatives).toBe(asked.statistics.derivatives - 3);
  });
  test("jumps a rounding error apart are crossed", () => {
    const { system, onStretch } = switched();
    const result = solve({ ...base, system, onStretch, jumps: [ON, ON * (1 + Number.EPSILON), OFF] });
    expect(result.status).toBe("completed");
    expect(result.state[0]).toBeCloseTo(exact(END), 5);
  });
});

test("an empty span returns the initial state and samples", () => {
  const { system } = switched();
  const result = solve({ ...base, system, initial: Float64Array.of(7), end: 0, sampleTimes: [0, 0] });
  expect(result).toMatchObject({ status: "completed", remedy: "", time: 0 });
  expect(Array.from(result.samples)).toEqual([7, 7]);
  expect(Array.from(result.state)).toEqual([7]);
});

test("the initial state handed in is not changed", () => {
  const { system, onStretch } = switched();
  const initial = Float64Array.of(3);
  solve({ ...base, system, onStretch, initial, jumps: [ON, OFF] });
  expect(initial[0]).toBe(3);
});
