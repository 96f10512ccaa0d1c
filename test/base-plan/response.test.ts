import { expect, test } from "vitest";
import { changesOf } from "../../src/base-plan/course-run.js";
import { readBaseDocument } from "../../src/base-plan/index.js";
import { afterPausesOf, STOPS } from "../../src/base-plan/pauses.js";
import { groundOf } from "../../src/base-plan/response.js";
import { allCriteria } from "../../src/readiness/index.js";
import { usedKit } from "../../src/scenario/index.js";
import {
  drawEnsemble,
  ENSEMBLE_TOLERANCE,
  prepareRun,
  sampleAt,
  timelineOf,
  trajectory,
} from "../../src/simulation/index.js";
import { exampleBase } from "./example-base.js";

const HOUR = 3600;

/** Engine, oil and battery, of which the criteria speak; air and elements come and go within minutes. */
const HEAVY = ["oil", "crankcase", "crankshaft", "barrels", "heads_front", "heads_rear"];

test("what is read between courses is near what they bring: at most 3 K colder and hardly warmer in the middle of the cases, for heat through, early and in turns", () => {
  const base = readBaseDocument(exampleBase());
  if (!base.ok) throw new Error(JSON.stringify(base.issues));
  let coldest = 0;
  let warmest = 0;
  let leastRise = Number.POSITIVE_INFINITY;
  for (const { read } of base.aircraft) {
    const { scenario, want } = read;
    if (want === undefined || scenario.initial.configuration.place === "hangar") continue;
    const draws = drawEnsemble({ members: 20, seed: 3, weather: scenario.weather });
    const criteria = allCriteria(scenario.installation, usedKit(read), read.limits);
    const plan = { scenario, wish: want.wish, heaters: want.heaters, criteria, draws };
    const end = want.wish.departure - want.wish.unplugBefore;
    const ground = groundOf(plan, draws, base.limits, undefined, [end]);
    const heat = ground.answer((t) => ({ blocks: [{ from: t, to: end }], stay: undefined }), end, STOPS);
    heat.reach(({ lead }) => lead > 9 * HOUR);
    const predict = afterPausesOf(ground, () => heat, want.wish.chance);
    for (const blocks of [
      [{ from: end - 2.3 * HOUR, to: end }],
      [{ from: end - 4.4 * HOUR, to: end }],
      [{ from: end - 4 * HOUR, to: end - HOUR / 2 }],
      [{ from: end - 6 * HOUR, to: end - 2 * HOUR }],
      [{ from: end - 7 * HOUR, to: end - 3 * HOUR }],
      [
        { from: end - 5 * HOUR, to: end - 3 * HOUR },
        { from: end - HOUR / 2, to: end },
      ],
      [
        { from: end - 6 * HOUR, to: end - 3 * HOUR },
        { from: end - 1.5 * HOUR, to: end },
      ],
    ]) {
      const run = prepareRun(scenario, draws);
      const course = { blocks, stay: undefined, heaters: plan.heaters };
      const played = trajectory(run, {
        state: run.initial,
        timeline: timelineOf(scenario.initial.configuration, changesOf(plan, course, base.limits)),
        sampleTimes: [0, want.wish.departure],
        tolerance: ENSEMBLE_TOLERANCE,
      });
      const real = sampleAt(played, want.wish.departure);
      const read = predict(blocks);
      for (const part of HEAVY) {
        const i = ground.parts.indexOf(part);
        if (i < 0) continue;
        const middle = (temps: Float64Array) =>
          [...temps.subarray(i * 20, (i + 1) * 20)].sort((a, b) => a - b)[10];
        const off = middle(read) - middle(real);
        coldest = Math.min(coldest, off);
        warmest = Math.max(warmest, off);
        leastRise = Math.min(leastRise, middle(real) - middle(ground.cold));
      }
    }
  }
  // Between leads the rise is read on a chord below a curve, and differences grow with a pause faster than in proportion
  // and then shrink: both err on the cold side. A course that stops three hours before still shows by several kelvins.
  expect(leastRise).toBeGreaterThan(3);
  expect(coldest).toBeGreaterThan(-3);
  expect(warmest).toBeLessThan(0.3);
});
