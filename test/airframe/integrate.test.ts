import { expect, test } from "vitest";
import { evenTimes, integrate } from "../../src/airframe/integrate.js";
import { thawModel } from "../../src/airframe/thaw-model.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { thawRequest } from "./examples.js";

test("a body in air that warms in a bent line follows the exact solution", () => {
  const tau = 3000;
  const air = (t: number) => (t < 3600 ? t / 3600 : 1);
  const { samples, status } = integrate({
    initial: Float64Array.of(0, 0),
    scales: Float64Array.of(1, 100),
    sums: [1],
    start: 0,
    sampleTimes: evenTimes(0, 7200, 3600),
    bends: [0, 3600, 7200],
    derivative(t, y, dydt) {
      dydt[0] = (air(t) - y[0]) / tau;
      dydt[1] = y[0];
    },
  });
  expect(status).toBe("completed");
  const atBend = (3600 - tau * (1 - Math.exp(-3600 / tau))) / 3600;
  const atEnd = 1 + (atBend - 1) * Math.exp(-3600 / tau);
  expect(samples[2]).toBeCloseTo(atBend, 3);
  expect(samples[4]).toBeCloseTo(atEnd, 3);
  // The sum of y follows from the balance tau (y - y0) = integral of (air - y).
  expect(samples[5]).toBeCloseTo(1800 + 3600 - tau * atEnd, 0);
});

test("a thaw comes out the same with ten times finer error control", () => {
  const model = thawModel({
    ...thawRequest(),
    tempInside: kelvinFromCelsius(-15),
    relativeHumidity: undefined,
    conditions: { tempFilm: 278, pressure: 101_325 },
    transferFactor: 1,
    evaporationDraw: 0,
    airChangeFactor: 1,
  });
  const run = (fineness: number) =>
    integrate({
      initial: model.initial,
      scales: model.scales.map((scale) => scale / fineness),
      sums: model.sums,
      start: 0,
      sampleTimes: evenTimes(0, 10 * 3600, 1800),
      derivative: model.derivative,
    }).samples;
  const coarse = run(1);
  const fine = run(10);
  const rows = model.initial.length;
  // Coarse steps keep each row within about a hundredth of what matters for it (1 K, 10 g/m2).
  const worst = coarse.reduce(
    (most, value, k) =>
      model.sums.includes(k % rows)
        ? most
        : Math.max(most, Math.abs(value - fine[k]) / model.scales[k % rows]),
    0,
  );
  expect(worst).toBeLessThan(0.03);
});

test("a system that cannot be carried on comes back with a status and a way out", () => {
  const { status, remedy } = integrate({
    initial: Float64Array.of(1),
    scales: Float64Array.of(1),
    sums: [],
    start: 0,
    sampleTimes: evenTimes(0, 10, 1),
    derivative: (_, y, dydt) => {
      dydt[0] = y[0] ** 2;
    },
  });
  expect(status).not.toBe("completed");
  expect(remedy.length).toBeGreaterThan(20);
});

test("sample times are even and end exactly", () => {
  expect([...evenTimes(10, 100, 30)]).toEqual([10, 35, 60, 85, 110]);
  expect([...evenTimes(0, 5, 30)]).toEqual([0, 5]);
});
