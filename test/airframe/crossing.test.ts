import { expect, test } from "vitest";
import { durationAtLeast, timeFirstReached, timeLastAbove } from "../../src/airframe/crossing.js";
import { bandOf, drawsOf, timeBandOf } from "../../src/airframe/ensemble.js";

const TIMES = Float64Array.of(0, 10, 20, 30);
const NEVER = Number.POSITIVE_INFINITY;

test("times of crossing run linearly between samples", () => {
  expect(timeFirstReached(TIMES, [0, 4, 8, 0], 2)).toBe(5);
  expect(timeFirstReached(TIMES, [3, 4, 8, 0], 2)).toBe(0);
  expect(timeFirstReached(TIMES, [0, 1, 1, 0], 2)).toBe(NEVER);
  expect(timeLastAbove(TIMES, [8, 4, 0, 0], 2)).toBe(15);
  expect(timeLastAbove(TIMES, [0, 0, 0, 0], 2)).toBe(0);
  expect(timeLastAbove(TIMES, [0, 0, 0, 3], 2)).toBe(NEVER);
});

test("a skin that gets wet again counts as dry only after the last time", () => {
  expect(timeLastAbove(TIMES, [0, 4, 0, 0], 2)).toBe(15);
});

test("time above a limit counts parts of an interval", () => {
  expect(durationAtLeast(TIMES, [0, 4, 4, 0], 2)).toBe(20);
  expect(durationAtLeast(TIMES, [0, 1, 1, 0], 2)).toBe(0);
  expect(durationAtLeast(TIMES, [2, 2, 2, 2], 2)).toBe(30);
});

test("a band of times says nothing where its share of members never gets there", () => {
  expect(timeBandOf(Float64Array.of(3, 1, 2, NEVER))).toEqual({
    low: 2,
    middle: 3,
    high: undefined,
    share: 0.75,
  });
  expect(timeBandOf(Float64Array.of(NEVER))).toEqual({
    low: undefined,
    middle: undefined,
    high: undefined,
    share: 0,
  });
  expect(bandOf(Float64Array.from({ length: 101 }, (_, i) => 100 - i))).toEqual({
    low: 5,
    middle: 50,
    high: 95,
  });
});

test("draws are the middle without an ensemble, and named, repeatable normals with one", () => {
  expect(drawsOf(["a", "b"], undefined, "x")).toEqual({
    members: 1,
    a: Float64Array.of(0),
    b: Float64Array.of(0),
  });
  const draws = drawsOf(["a", "b"], { members: 200, seed: 5 }, "x");
  expect(draws).toEqual(drawsOf(["a", "b"], { members: 200, seed: 5 }, "x"));
  expect(draws.a).not.toEqual(drawsOf(["a", "b"], { members: 200, seed: 5 }, "y").a);
  const mean = draws.b.reduce((sum, z) => sum + z, 0) / 200;
  expect(Math.abs(mean)).toBeLessThan(0.02);
  for (const members of [0, 1.5, Number.NaN, 5000]) {
    expect(() => drawsOf(["a"], { members, seed: 1 }, "x")).toThrow(/invalid ensemble\.members/);
  }
});
