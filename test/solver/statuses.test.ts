import { describe, expect, test } from "vitest";
import { type EnsembleSystem, plainSystem, type SolveRequest, solve } from "../../src/solver/index.js";

const decay = plainSystem({ size: 1, derivative: (_, [y]) => [-y], jacobian: () => [[-1]] });
const base: SolveRequest = {
  system: decay,
  initial: Float64Array.of(1),
  start: 0,
  end: 10,
  tolerance: { absolute: 1e-8, relative: 1e-8 },
};

describe("a numerical failure is a status with a remedy", () => {
  test("completed: nothing to remedy", () => {
    expect(solve(base)).toMatchObject({ status: "completed", remedy: "", time: 10 });
  });
  test("cancelled by the caller, at the end of that step, with the samples so far", () => {
    let calls = 0;
    const result = solve({ ...base, sampleTimes: [0, 9.99], onStep: () => ++calls < 3 });
    expect(result.status).toBe("cancelled");
    expect(result.statistics.steps).toBe(3);
    expect(result.time).toBeGreaterThan(0);
    expect(result.state[0]).toBeCloseTo(Math.exp(-result.time), 7);
    expect(result.samples[0]).toBe(1);
    expect(result.samples[1]).toBeNaN();
    expect(result.remedy).toMatch(/Stopped by the caller/);
  });
  test("too many steps", () => {
    const result = solve({ ...base, maximumSteps: 5 });
    expect(result.status).toBe("too-many-steps");
    expect(result.statistics.steps + result.statistics.rejected).toBe(5);
    expect(result.remedy).toMatch(/maximumSteps/);
  });
  test("step too small where the solution blows up", () => {
    const system = plainSystem({ size: 1, derivative: (_, [y]) => [y * y], jacobian: (_, [y]) => [[2 * y]] });
    const result = solve({ ...base, system });
    expect(result.status).toBe("step-too-small");
    expect(result.time).toBeCloseTo(1, 6);
    expect(result.remedy).toMatch(/grow without bound/);
  });
  test("not finite: the derivative leaves its domain", () => {
    const system = plainSystem({
      size: 1,
      derivative: (_, [y]) => [y > 0.5 ? -1 : Number.NaN],
      jacobian: () => [[0]],
    });
    const result = solve({ ...base, system });
    expect(result.status).toBe("not-finite");
    expect(result.time).toBeCloseTo(0.5, 6);
    expect(result.state[0]).toBeCloseTo(0.5, 6);
    expect(result.remedy).toMatch(/not finite/);
  });
  test("out of range: no step ends where a solution can be", () => {
    const system = { ...decay, range: [0.2, 5] as const };
    const result = solve({ ...base, system });
    expect(result.status).toBe("out-of-range");
    expect(result.time).toBeCloseTo(-Math.log(0.2), 4);
    expect(result.state[0]).toBeGreaterThanOrEqual(0.2);
    expect(result.remedy).toMatch(/outside the range of 0.2 … 5/);
  });
  test("a step that a loose tolerance would let pass is taken again where it leaves the range", () => {
    // A thermostat within half a kelvin of 300: truly the temperature never leaves 250 … 302.
    const power = (y: number) => 1000 / (1 + Math.exp((y - 300) / 0.5));
    const system = plainSystem({
      size: 1,
      derivative: (_, [y]) => [power(y) - (y - 250)],
      jacobian: (_, [y]) => [[-2 * power(y) * (1 - power(y) / 1000) - 1]],
    });
    const play = (range?: readonly [number, number]) => {
      let highest = 0;
      const end = new Float64Array(1);
      const { status, state, statistics } = solve({
        ...base,
        system: range === undefined ? system : { ...system, range },
        initial: Float64Array.of(250),
        tolerance: { absolute: 1000, relative: 1e-9 },
        firstStep: 1,
        onStep: (step) => {
          step.interpolate(step.end, end);
          highest = Math.max(highest, end[0]);
          return true;
        },
      });
      expect(status).toBe("completed");
      return { highest, last: state[0], rejected: statistics.rejected };
    };
    expect(play().highest).toBeGreaterThan(600);
    const kept = play([240, 320]);
    expect(kept.highest).toBeLessThanOrEqual(320);
    expect(kept.last).toBeCloseTo(301.457, 2);
    expect(kept.rejected).toBeGreaterThan(0);
  });
  test.each(["slope", "jacobian", "slopeInTime"] as const)("not finite: %s at the start", (name) => {
    const linearise: EnsembleSystem["linearise"] = (t, y, into) => {
      decay.linearise(t, y, into);
      into[name].fill(Number.NaN);
    };
    const result = solve({ ...base, system: { ...decay, linearise } });
    expect(result).toMatchObject({ status: "not-finite", time: 0 });
  });
  test("not finite: f at a stage", () => {
    const derivative: EnsembleSystem["derivative"] = (_t, _y, dydt) => {
      dydt.fill(Number.NaN);
    };
    const result = solve({ ...base, system: { ...decay, derivative } });
    expect(result).toMatchObject({ status: "not-finite", time: 0 });
  });
  test("singular: elimination overflows however small the step", () => {
    const system = plainSystem({
      size: 2,
      derivative: () => [1, 1],
      jacobian: () => [
        [0, 1e200],
        [1e200, 0],
      ],
    });
    const result = solve({ ...base, system, initial: Float64Array.of(0, 0) });
    expect(result.status).toBe("singular");
    expect(result.statistics.rejected).toBeGreaterThan(3);
    expect(result.remedy).toMatch(/Jacobian/);
  });
  test("a pivot that is zero for one step size is got over with a smaller one", () => {
    // 1/(h γ) - 4 = 0 exactly at h = 1.
    const system = plainSystem({ size: 1, derivative: (_, [y]) => [4 * y], jacobian: () => [[4]] });
    const result = solve({
      ...base,
      system,
      end: 1,
      firstStep: 1,
      tolerance: { absolute: 1e-9, relative: 1e-9 },
    });
    expect(result.status).toBe("completed");
    expect(result.statistics.rejected).toBeGreaterThan(0);
    expect(result.state[0] / Math.exp(4)).toBeCloseTo(1, 7);
  });
});

describe("a wrong request throws", () => {
  const wrong: readonly (readonly [string, Partial<SolveRequest>, RegExp])[] = [
    ["initial of another length", { initial: Float64Array.of(1, 2) }, /invalid initial: 2 values/],
    ["initial with NaN", { initial: Float64Array.of(Number.NaN) }, /invalid initial: NaN/],
    ["start", { start: Number.NaN }, /invalid start/],
    ["end before start", { end: -1 }, /invalid end: -1/],
    ["end NaN", { end: Number.NaN }, /invalid end/],
    ["tolerance 0", { tolerance: { absolute: 0, relative: 1e-6 } }, /invalid tolerance.absolute: 0/],
    [
      "tolerance NaN",
      { tolerance: { absolute: 1e-6, relative: Number.NaN } },
      /invalid tolerance.relative: NaN/,
    ],
    ["maximumSteps", { maximumSteps: 0 }, /invalid maximumSteps: 0/],
    ["firstStep", { firstStep: -1 }, /invalid firstStep: -1/],
    ["maximumStep", { maximumStep: Number.NaN }, /invalid maximumStep: NaN/],
    ["jump at the start", { jumps: [0] }, /invalid jumps: 0/],
    ["jump at the end", { jumps: [10] }, /invalid jumps: 10/],
    ["jumps not ascending", { jumps: [3, 3] }, /invalid jumps: 3/],
    ["sample before the start", { sampleTimes: [-1] }, /invalid sampleTimes: -1/],
    ["samples descending", { sampleTimes: [3, 2] }, /invalid sampleTimes: 2/],
    ["sample NaN", { sampleTimes: [Number.NaN] }, /invalid sampleTimes: NaN/],
    [
      "pattern of another size",
      { system: { ...decay, size: 2 }, initial: Float64Array.of(1, 1) },
      /invalid system.pattern/,
    ],
  ];
  test.each(wrong)("%s", (_, part, message) => {
    expect(() => solve({ ...base, ...part })).toThrow(RangeError);
    expect(() => solve({ ...base, ...part })).toThrow(message);
  });
  test("dense output asked outside its step", () => {
    const out = new Float64Array(1);
    const ask = (t: (start: number, end: number) => number) => () =>
      solve({
        ...base,
        onStep: ({ start, end, interpolate }) => {
          interpolate(t(start, end), out);
          return true;
        },
      });
    expect(ask((_, end) => end * 1.01)).toThrow(/invalid t/);
    expect(ask(() => Number.NaN)).toThrow(/invalid t: NaN/);
    expect(ask((start) => start)).not.toThrow();
  });
});
