import { expect, test } from "vitest";
import { createLiveFilter, learnedMultipliers } from "../../src/learning/index.js";
import { madeFleet, madeLog, madeNight } from "../../src/learning/made-aircraft.js";
import { every, HOUR, heatedNight, probesOn } from "./example-night.js";

test("what the live filter learned of made aircraft holds nine times in ten, and is worth taking into plans", () => {
  const aircraft = 10;
  const scenario = heatedNight("sump-pad-220");
  const fleet = madeFleet(scenario, aircraft, 61);
  const night = madeNight(fleet, scenario, every(600, 7 * HOUR), 62);
  const sensors = probesOn("oil", "heads");
  let held = 0;
  let count = 0;
  let left = 0;
  for (let a = 0; a < aircraft; a++) {
    const log = madeLog(fleet, night, a, sensors);
    const filter = createLiveFilter({ scenario, sensors });
    let state = filter.start();
    for (const [k, time] of log.time.entries()) {
      if (time <= state.time) continue;
      const readings = new Map(log.probes.map(({ name, temps }) => [name, temps[k]]));
      state = filter.step(state, { time, readings }).state;
    }
    const { names, mean, factor } = learnedMultipliers(filter.layout, state);
    names.forEach((name, i) => {
      const sd = Math.hypot(...factor[i]);
      if (Math.abs(Math.log(fleet.multipliers.get(name)![a]) - mean[i]) <= 1.645 * sd) held++;
      count++;
    });
    left += Math.hypot(...factor[names.indexOf("heater_contact")]) / 0.4 / aircraft;
  }
  // Multipliers of one aircraft err together: 10 aircraft of 14 each tell the share to about ±4 points.
  expect(held / count).toBeGreaterThan(0.82);
  expect(left).toBeLessThan(0.9);
});
