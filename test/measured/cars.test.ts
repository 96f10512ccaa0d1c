import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { heaterById, installationById } from "../../src/aircraft/index.js";
import {
  BEFORE,
  type Equipment,
  type ReadingScore,
  readMeasuredRun,
  scored,
} from "../../src/calibration/index.js";
import { CAR_ENGINE, coolantHeater } from "../validation/car-engine.js";

// Cars parked below zero and one block heater, for the shape of their courses: no aircraft, no part in the calibration.

const CAR_HEATER = { ...coolantHeater(375), id: "car-block-heater-375" };
const equipment: Equipment = {
  installation: (id) => (id === CAR_ENGINE.id ? CAR_ENGINE : installationById(id)),
  heater: (id) => (id === CAR_HEATER.id ? CAR_HEATER : heaterById(id)),
};
const FOLDER = new URL("../../data/measured-runs/", import.meta.url);
const cars = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".json"))
  .map((name) => readMeasuredRun(name, readFileSync(new URL(name, FOLDER), "utf8")))
  .filter(({ only_shape, set_a_constant }) => only_shape !== undefined && set_a_constant === undefined);

/** The car engine's own numbers are judged by its mass and size, so it is played as judged, not as calibrated. */
const judged = () => {
  const n = BEFORE.mean.length;
  const covariance = new Float64Array(n * n);
  for (let p = 0; p < n; p++) covariance[p * n + p] = BEFORE.sd[p] ** 2;
  return { mean: new Float64Array(n), covariance };
};

/** [h] time constant of an exponential from switching off to the reading. */
function timeConstant({ run, reading }: ReadingScore, read: number): number {
  const air = (run.air_c[0][1] + run.air_c[run.air_c.length - 1][1]) / 2;
  return reading.at_h / Math.log(((run.start.coolant_c ?? Number.NaN) - air) / (read - air));
}

it("slows down from twenty minutes to sixteen hours after switching off as parked cars do", () => {
  const scores = cars.flatMap((run) => scored(run, judged(), equipment));
  expect(scores).toHaveLength(9);
  const ratios = scores.map((score) => timeConstant(score, score.mid) / timeConstant(score, score.reading.c));
  // The bay's openings are a guess, so one factor is free: half of the measured times. What is judged is the course.
  const factor = Math.exp(ratios.reduce((sum, ratio) => sum + Math.log(ratio), 0) / ratios.length);
  expect(factor).toBeGreaterThan(0.4);
  for (const [i, ratio] of ratios.entries())
    expect(Math.abs(Math.log(ratio / factor)), cars[i].run).toBeLessThan(Math.log(1.35));
});
