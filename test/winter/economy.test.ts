import { expect, test } from "vitest";
import { runPiece } from "../../src/winter/index.js";
import { readWinter } from "./small-winter.js";

const HOUR = 3600;

test("thinned weather, loose steps and long water steps cost little against every hour at tight tolerance", {
  timeout: 240_000,
}, () => {
  const read = readWinter();
  const usual = runPiece(read, { kit: 0, year: 0 })!;
  const exact = runPiece(read, { kit: 0, year: 0 }, { exact: { tolerance: 0.005 } })!;
  const departures = read.departures.length * 4;
  usual.habits.forEach((one, h) => {
    const other = exact.habits[h]!;
    const ready = (list: readonly number[]) => list.reduce((sum, n) => sum + n, 0);
    // One of some fifty departures and aircraft may fall on the other side of a limit.
    expect(Math.abs(ready(one.ready) - ready(other.ready))).toBeLessThanOrEqual(0.03 * departures);
    one.energy.forEach((joules, d) => {
      expect(Math.abs(joules / other.energy[d]! - 1)).toBeLessThan(0.001);
    });
    one.hottestSurface.forEach((temp, d) => {
      expect(Math.abs(temp - other.hottestSurface[d]!)).toBeLessThan(4);
    });
    one.hottestFilm.forEach((temp, d) => {
      expect(Math.abs(temp - other.hottestFilm[d]!)).toBeLessThan(2.5);
    });
    expect(Math.abs(one.wetTime - other.wetTime)).toBeLessThan(Math.max(0.05 * other.wetTime, 3 * HOUR));
    expect(one.heaterTime).toBe(other.heaterTime);
  });
});
