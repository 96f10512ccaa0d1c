import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { solve } from "../../src/solver/index.js";
import { createThermalSystem, type ThermalSystem } from "../../src/thermal/index.js";
import { CONDUCTANCE, EXAMPLE, INPUTS_FROM, INPUTS_TO, POWER } from "./example-network.js";
import { storedHeat } from "./stored-heat.js";

const HOUR = 3600;

function exampleSystem(): ThermalSystem {
  const system = createThermalSystem(EXAMPLE, 1, new Float64Array(EXAMPLE.parts.length).fill(1));
  system.configure({ conductance: Float64Array.from(CONDUCTANCE), power: Float64Array.from(POWER) });
  system.setInputs(0, HOUR, Float64Array.from(INPUTS_FROM), Float64Array.from(INPUTS_TO));
  return system;
}

function linearised(system: ThermalSystem, t: number, y: Float64Array) {
  const length = system.size * system.members;
  const into = {
    slope: new Float64Array(length),
    jacobian: new Float64Array(system.pattern.column.length * system.members),
    slopeInTime: new Float64Array(length),
  };
  system.linearise(t, y, into);
  return into;
}

const temps = fc.array(fc.double({ min: 225, max: 400, noNaN: true }), { minLength: 5, maxLength: 5 });

describe("thermal system", () => {
  test("Jacobian equals central differences of the derivative", () => {
    const system = exampleSystem();
    const { rowStart, column } = system.pattern;
    fc.assert(
      fc.property(temps, fc.double({ min: 0, max: HOUR, noNaN: true }), (t5, t) => {
        const y = Float64Array.from(t5);
        const { jacobian: values, slope: along } = linearised(system, t, y);
        const plain = new Float64Array(5);
        system.derivative(t, y, plain);
        plain.forEach((rate, i) => {
          expect(along[i]).toBeCloseTo(rate, 12);
        });
        const up = new Float64Array(5);
        const down = new Float64Array(5);
        for (let i = 0; i < 5; i++) {
          for (let k = rowStart[i]; k < rowStart[i + 1]; k++) {
            const h = 1e-3;
            const shifted = y.slice();
            shifted[column[k]] += h;
            system.derivative(t, shifted, up);
            shifted[column[k]] -= 2 * h;
            system.derivative(t, shifted, down);
            const difference = (up[i] - down[i]) / (2 * h);
            // Melting and the smoothing at equal temperatures curve within millikelvins: differences carry ~1e-6.
            expect(Math.abs(values[k] - difference)).toBeLessThan(1e-6 + 2e-4 * Math.abs(difference));
          }
        }
      }),
      { numRuns: 200, seed: 11 },
    );
  });

  test("derivative does not depend on temperatures outside the Jacobian's pattern", () => {
    const system = exampleSystem();
    const { rowStart, column } = system.pattern;
    const y = Float64Array.of(330, 280, 270, 260, 250);
    const base = new Float64Array(5);
    const moved = new Float64Array(5);
    system.derivative(10, y, base);
    for (let j = 0; j < 5; j++) {
      const shifted = y.slice();
      shifted[j] += 5;
      system.derivative(10, shifted, moved);
      for (let i = 0; i < 5; i++) {
        const stored = column.subarray(rowStart[i], rowStart[i + 1]).includes(j);
        if (!stored) expect(moved[i]).toBe(base[i]);
        else expect(moved[i]).not.toBe(base[i]);
      }
    }
  });

  test("time derivative equals central differences in time", () => {
    const system = exampleSystem();
    fc.assert(
      fc.property(temps, fc.double({ min: 1, max: HOUR - 1, noNaN: true }), (t5, t) => {
        const y = Float64Array.from(t5);
        const { slopeInTime: got } = linearised(system, t, y);
        const up = new Float64Array(5);
        const down = new Float64Array(5);
        system.derivative(t + 0.5, y, up);
        system.derivative(t - 0.5, y, down);
        for (let i = 0; i < 5; i++)
          expect(Math.abs(got[i] - (up[i] - down[i]))).toBeLessThan(1e-9 + 1e-5 * Math.abs(got[i]));
      }),
      { numRuns: 100, seed: 12 },
    );
  });

  test("heat put in equals heat stored and heat lost", () => {
    const system = exampleSystem();
    const start = Float64Array.of(262, 262, 262, 262, 262);
    const times = Float64Array.from({ length: 3601 }, (_, i) => i);
    const result = solve({
      system,
      initial: start,
      start: 0,
      end: HOUR,
      tolerance: { absolute: 1e-5, relative: 1e-9 },
      sampleTimes: times,
    });
    expect(result.status).toBe("completed");
    const flows = new Float64Array(EXAMPLE.links.length);
    const powers = new Float64Array(EXAMPLE.sources.length);
    let net = 0;
    for (let s = 0; s < times.length; s++) {
      const state = result.samples.subarray(s * 5, s * 5 + 5);
      system.heatFlows(times[s], state, flows);
      system.sourcePowers(state, powers);
      let rate = powers[0] + powers[1];
      EXAMPLE.links.forEach((link, l) => {
        if (EXAMPLE.inputs.includes(link.to)) rate -= flows[l];
        if (EXAMPLE.inputs.includes(link.from)) rate += flows[l];
      });
      // Simpson's rule over the one-second samples.
      const weight = s === 0 || s === times.length - 1 ? 1 / 3 : s % 2 === 1 ? 4 / 3 : 2 / 3;
      net += weight * rate;
    }
    const stored = EXAMPLE.parts.reduce(
      (sum, part, i) => sum + storedHeat(part, result.state[i]) - storedHeat(part, start[i]),
      0,
    );
    expect(Math.abs(stored)).toBeGreaterThan(1e5);
    expect(Math.abs(net - stored)).toBeLessThan(1e-4 * Math.abs(stored));
  });

  test("each member behaves as it would alone", () => {
    const members = 3;
    const numbersOf = (factor: number) => ({
      conductance: CONDUCTANCE.map((v) => v * factor),
      power: POWER.map((v) => v * factor),
    });
    const factors = [1, 1.1, 1.2];
    const interleaved = (of: (m: number) => readonly number[]) => {
      const rows = factors.map((_, m) => of(m));
      return Float64Array.from(rows[0].flatMap((_, k) => rows.map((row) => row[k])));
    };
    const temps = (m: number) => [330 - m, 280 + 2 * m, 270, 260 - 3 * m, 250 + m];
    const together = createThermalSystem(
      EXAMPLE,
      members,
      interleaved((m) => EXAMPLE.parts.map(() => factors[m])),
    );
    together.configure({
      conductance: interleaved((m) => numbersOf(factors[m]).conductance),
      power: interleaved((m) => numbersOf(factors[m]).power),
    });
    together.setInputs(
      0,
      HOUR,
      interleaved(() => INPUTS_FROM),
      interleaved(() => INPUTS_TO),
    );
    const reads = [
      ["derivative", 5],
      ["heatFlows", EXAMPLE.links.length],
    ] as const;
    const allSlopes = linearised(together, 100, interleaved(temps));
    for (let m = 0; m < members; m++) {
      const alone = createThermalSystem(EXAMPLE, 1, new Float64Array(5).fill(factors[m]));
      const { conductance, power } = numbersOf(factors[m]);
      alone.configure({ conductance: Float64Array.from(conductance), power: Float64Array.from(power) });
      alone.setInputs(0, HOUR, Float64Array.from(INPUTS_FROM), Float64Array.from(INPUTS_TO));
      for (const [what, length] of reads) {
        const all = new Float64Array(length * members);
        const one = new Float64Array(length);
        together[what](100, interleaved(temps), all);
        alone[what](100, Float64Array.from(temps(m)), one);
        for (let k = 0; k < length; k++) expect(all[k * members + m], what).toBeCloseTo(one[k], 12);
      }
      const [allPowers, powers] = [members, 1].map((n) => new Float64Array(EXAMPLE.sources.length * n));
      together.sourcePowers(interleaved(temps), allPowers);
      alone.sourcePowers(Float64Array.from(temps(m)), powers);
      for (let k = 0; k < powers.length; k++) expect(allPowers[k * members + m]).toBe(powers[k]);
      const slopes = linearised(alone, 100, Float64Array.from(temps(m)));
      for (const what of ["slope", "jacobian", "slopeInTime"] as const) {
        slopes[what].forEach((one, k) => {
          expect(allSlopes[what][k * members + m], what).toBeCloseTo(one, 12);
        });
      }
    }
  });

  test("systems that take turns do not disturb each other, nor does a run within another's run", () => {
    const one = exampleSystem();
    const other = createThermalSystem(EXAMPLE, 2, new Float64Array(10).fill(1.5));
    const twice = (values: ArrayLike<number>) =>
      Float64Array.from(Array.from(values).flatMap((value) => [value, 1.01 * value]));
    other.configure({ conductance: twice(CONDUCTANCE), power: twice(POWER) });
    other.setInputs(0, HOUR, twice(INPUTS_FROM), twice(INPUTS_TO));
    const start = [290, 280, 270, 260, 250];
    const request = (system: ThermalSystem, initial: Float64Array) => ({
      ...{ system, initial, start: 0, end: HOUR },
      tolerance: { absolute: 1e-3, relative: 1e-9 },
    });
    const requests = [request(one, Float64Array.from(start)), request(other, twice(start))] as const;
    const alone = requests.map((each) => Array.from(solve(each).state));
    let steps = 0;
    const within = solve({
      ...requests[0],
      onStep: () => {
        if (++steps % 5 === 1) expect(Array.from(solve(requests[1]).state)).toEqual(alone[1]);
        return true;
      },
    });
    expect(steps).toBeGreaterThan(10);
    expect(Array.from(within.state)).toEqual(alone[0]);
  });

  test("what is set while another system is at work holds afterwards", () => {
    const [one, other, fresh] = [exampleSystem(), exampleSystem(), exampleSystem()];
    const y = Float64Array.of(330, 280, 270, 260, 250);
    const [got, expected] = [new Float64Array(5), new Float64Array(5)];
    one.derivative(0, y, got);
    other.derivative(0, y, got);
    for (const system of [one, fresh]) {
      const halved = (values: readonly number[]) => Float64Array.from(values, (value) => value / 2);
      system.configure({ conductance: halved(CONDUCTANCE), power: halved(POWER) });
      system.setInputs(0, HOUR, Float64Array.from(INPUTS_TO), Float64Array.from(INPUTS_FROM));
    }
    one.derivative(600, y, got);
    fresh.derivative(600, y, expected);
    expect(Array.from(got)).toEqual(Array.from(expected));
    other.derivative(600, y, expected);
    expect(Array.from(got)).not.toEqual(Array.from(expected));
  });

  test("a limiter halves the power at its set point and cuts it far above", () => {
    const system = exampleSystem();
    const powers = new Float64Array(2);
    system.sourcePowers(Float64Array.of(300, 320, 270, 260, 250), powers);
    expect(powers[0]).toBeCloseTo(110, 9);
    system.sourcePowers(Float64Array.of(300, 360, 270, 260, 250), powers);
    expect(powers[0]).toBeLessThan(0.02);
    expect(powers[1]).toBe(30);
  });
});
