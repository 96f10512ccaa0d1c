import { describe, expect, test } from "vitest";
import { createRandom } from "../../src/numerics/index.js";
import { type EnsembleSystem, type SparsityPattern, solve } from "../../src/solver/index.js";

// A chain of five heat stores with an outside, one radiating link, parameters of their own per member.
const SIZE = 5;
const pattern: SparsityPattern = {
  rowStart: Int32Array.of(0, 2, 5, 8, 11, 13),
  column: Int32Array.of(0, 1, 0, 1, 2, 1, 2, 3, 2, 3, 4, 3, 4),
};
const SIGMA = 5.670374419e-8;

interface Parameters {
  /** [W/K] */
  readonly link: number;
  /** [J/K] */
  readonly capacity: number;
  /** [W] */
  readonly power: number;
}

function chain(parameters: readonly Parameters[]): EnsembleSystem {
  const members = parameters.length;
  const air = (t: number) => 250 + 5 * Math.sin(t / 5000);
  const airSlope = (t: number) => Math.cos(t / 5000) / 1000;
  const derivative: EnsembleSystem["derivative"] = (t, y, dydt) => {
    parameters.forEach(({ link, capacity, power }, m) => {
      const temp = (i: number) => y[i * members + m];
      for (let i = 0; i < SIZE; i++) {
        let heat = i === 0 ? power : 0;
        if (i > 0) heat += link * (temp(i - 1) - temp(i));
        if (i < SIZE - 1) heat += link * (temp(i + 1) - temp(i));
        else heat += link * (air(t) - temp(i)) + SIGMA * 0.2 * (air(t) ** 4 - temp(i) ** 4);
        dydt[i * members + m] = heat / (capacity * (i + 1));
      }
    });
  };
  return {
    size: SIZE,
    members,
    pattern,
    derivative,
    linearise(t, y, { slope: dydt, jacobian: values, slopeInTime: dfdt }) {
      derivative(t, y, dydt);
      parameters.forEach(({ link, capacity }, m) => {
        for (let i = 0; i < SIZE; i++) {
          const c = capacity * (i + 1);
          for (let k = pattern.rowStart[i]; k < pattern.rowStart[i + 1]; k++) {
            const neighbours = i === 0 ? 1 : 2;
            let slope = pattern.column[k] === i ? -neighbours * link : link;
            if (pattern.column[k] === i && i === SIZE - 1) slope -= 4 * SIGMA * 0.2 * y[i * members + m] ** 3;
            values[k * members + m] = slope / c;
          }
        }
      });
      dfdt.fill(0);
      parameters.forEach(({ link, capacity }, m) => {
        const byAir = link + 4 * SIGMA * 0.2 * air(t) ** 3;
        dfdt[(SIZE - 1) * members + m] = (byAir * airSlope(t)) / (capacity * SIZE);
      });
    },
  };
}

describe("37 members advanced together", () => {
  const random = createRandom(11);
  const parameters = Array.from({ length: 37 }, () => ({
    link: 2 * Math.exp(random.normal()),
    capacity: 4000 * Math.exp(0.5 * random.normal()),
    power: 60 + 40 * random.uniform(),
  }));
  const sampleTimes = [500, 3000, 9000];
  const request = (some: readonly Parameters[]) => ({
    system: chain(some),
    initial: new Float64Array(SIZE * some.length).fill(250),
    start: 0,
    end: 9000,
    tolerance: { absolute: 1e-5, relative: 1e-8 },
    jumps: [4000],
    sampleTimes,
  });
  const together = solve(request(parameters));

  test("give what each gives alone, within the tolerance", () => {
    expect(together.status).toBe("completed");
    parameters.forEach((own, m) => {
      const alone = solve(request([own]));
      sampleTimes.forEach((_, s) => {
        for (let i = 0; i < SIZE; i++) {
          const value = together.samples[(s * SIZE + i) * 37 + m];
          expect(Math.abs(value - alone.samples[s * SIZE + i])).toBeLessThan(1e-3);
        }
      });
    });
  });
  test("the members do differ", () => {
    const ends = Array.from(together.state.subarray(0, 37));
    expect(Math.max(...ends) - Math.min(...ends)).toBeGreaterThan(10);
  });
  test("a member's result does not depend on where it stands", () => {
    const reversed = solve(request([...parameters].reverse()));
    for (let m = 0; m < 37; m++) expect(reversed.state[36 - m]).toBe(together.state[m]);
  });
});
