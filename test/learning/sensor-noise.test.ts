import { describe, expect, test } from "vitest";
import { createWhitening } from "../../src/learning/sensor-noise.js";
import { createRandom, lowerCholesky } from "../../src/numerics/index.js";

const TAU = 10_000;

/** Covariance of noise plus σ u, u an Ornstein-Uhlenbeck process of unit variance, at uneven times with a gap. */
function denseCase(count: number) {
  const random = createRandom(3);
  const time: number[] = [];
  let t = 0;
  for (let k = 0; k < count; k++) {
    t += k === count / 2 ? 40_000 : 60 + 600 * random.uniform();
    time.push(t);
  }
  const noise = time.map(() => 0.3 + random.uniform());
  const size = time.map(() => 0.5 + 2 * random.uniform());
  const covariance = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      covariance[i * count + j] =
        size[i] * size[j] * Math.exp(-Math.abs(time[i] - time[j]) / TAU) + (i === j ? noise[i] ** 2 : 0);
    }
  }
  return { time, noise, size, root: lowerCholesky(covariance, count) };
}

describe("whitening", () => {
  const count = 40;
  const { time, noise, size, root } = denseCase(count);
  const rows = [...time.keys()];
  const whitening = createWhitening(time, rows, noise, size, TAU);
  const random = createRandom(8);
  const differences = Float64Array.from({ length: count }, () => 3 * random.normal());
  const out = new Float64Array(count);
  whitening.apply(differences, out);

  test("is the Cholesky whitening of the full covariance, row by row", () => {
    const dense = new Float64Array(count);
    for (let i = 0; i < count; i++) {
      let sum = differences[i];
      for (let j = 0; j < i; j++) sum -= root[i * count + j] * dense[j];
      dense[i] = sum / root[i * count + i];
    }
    out.forEach((value, k) => {
      expect(value).toBeCloseTo(dense[k], 10);
    });
  });

  test("knows the determinant", () => {
    const half = rows.reduce((sum, i) => sum + Math.log(root[i * count + i]), 0);
    expect(whitening.halfLogDeterminant).toBeCloseTo(half, 10);
  });

  test("writes with offset and stride, and reads by row of the log", () => {
    const some = rows.filter((k) => k % 3 === 1);
    const part = createWhitening(
      time,
      some,
      some.map((k) => noise[k]),
      some.map((k) => size[k]),
      TAU,
    );
    const alone = new Float64Array(some.length);
    part.apply(differences, alone);
    const spread = new Float64Array(2 + 5 * some.length);
    part.apply(differences, spread, 2, 5);
    expect(Array.from(some, (_, k) => spread[2 + 5 * k])).toEqual([...alone]);
    expect(part.sd[0]).toBeCloseTo(Math.hypot(noise[some[0]], size[some[0]]), 12);
  });

  test("a lasting difference says little more after a hundred readings than after one", () => {
    const minutes = Float64Array.from({ length: 101 }, (_, k) => 60 * k);
    const all = [...minutes.keys()];
    const ones = minutes.map(() => 1);
    const said = (used: number[]) => {
      const white = createWhitening(
        minutes,
        used,
        used.map(() => 0.5),
        used.map(() => 1.5),
        TAU,
      );
      const values = new Float64Array(used.length);
      white.apply(ones, values);
      return values.reduce((sum, v) => sum + v * v, 0);
    };
    expect(said(all)).toBeLessThan(2 * said([0]));
    expect(said(all)).toBeGreaterThan(said([0]));
  });
});
