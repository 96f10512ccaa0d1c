import { expect, test } from "vitest";
import { readBaseDocument } from "../../src/base-documents/index.js";
import { changesOf } from "../../src/base-plan/course-run.js";
import { coursePlayer } from "../../src/base-plan/exact.js";
import { heaterOptionOf } from "../../src/base-plan/heater-option.js";
import { gridOf } from "../../src/base-plan/limits.js";
import { holderOf } from "../../src/base-plan/request.js";
import { allCriteria } from "../../src/readiness/index.js";
import { play } from "../../src/response/index.js";
import { usedKit } from "../../src/scenario/index.js";
import { drawEnsemble, prepareRun, sampleAt, timelineOf } from "../../src/simulation/index.js";
import { exampleBase } from "./example-base.js";

const HOUR = 3600;
const MEMBERS = 20;

/** Engine, oil and battery, of which the criteria speak; air and elements come and go within minutes. */
const HEAVY = ["oil", "crankcase", "crankshaft", "barrels", "heads_front", "heads_rear"];

test("what is read between courses is near what they bring, in the middle of the cases, for heat through, early and in turns", () => {
  const base = readBaseDocument(exampleBase());
  if (!base.ok) throw new Error(JSON.stringify(base.issues));
  const off = { through: [0, 0], paused: [0, 0] };
  let leastRise = Number.POSITIVE_INFINITY;
  for (const { read, ...one } of base.aircraft) {
    const { scenario, want } = read;
    if (want === undefined || scenario.initial.configuration.place === "hangar") continue;
    const draws = drawEnsemble({ members: MEMBERS, seed: 3, weather: scenario.weather });
    const criteria = allCriteria(scenario.installation, usedKit(read), read.limits);
    const plan = { scenario, wish: want.wish, heaters: want.heaters, criteria, draws };
    const aircraft = { ...one, name: read.name, plan };
    const grid = gridOf(scenario.start, scenario.duration);
    const holder = holderOf(aircraft, base.limits);
    const { end, atDeparture, response } = heaterOptionOf(
      aircraft,
      holder,
      base.limits,
      grid,
      draws,
      undefined,
      coursePlayer(aircraft, base.limits),
    );
    const run = prepareRun(scenario, draws);
    for (const blocks of [
      [{ from: end - 1.1 * HOUR, to: end }],
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
      const course = { blocks, stay: undefined, heaters: plan.heaters };
      const played = play(run, {
        state: run.initial,
        timeline: timelineOf(scenario.initial.configuration, changesOf(plan, course, base.limits)),
        sampleTimes: [0, want.wish.departure],
      });
      const real = sampleAt(played, want.wish.departure);
      const guess = atDeparture.after(blocks);
      const kind = blocks.length === 1 && blocks[0].to === end ? off.through : off.paused;
      for (const part of HEAVY) {
        const i = response.parts.indexOf(part);
        if (i < 0) continue;
        const middle = (temps: Float64Array) =>
          [...temps.subarray(i * MEMBERS, (i + 1) * MEMBERS)].sort((a, b) => a - b)[MEMBERS / 2];
        const miss = middle(guess) - middle(real);
        kind[0] = Math.min(kind[0], miss);
        kind[1] = Math.max(kind[1], miss);
        leastRise = Math.min(leastRise, middle(real) - middle(atDeparture.cold));
      }
    }
  }
  // A course that stops three hours before still shows by several kelvins.
  expect(leastRise).toBeGreaterThan(3);
  // Heat until the end is read to a kelvin. What pauses do is played at three of them and read between: to 2 K.
  expect(off.through[0]).toBeGreaterThan(-1.1);
  expect(off.through[1]).toBeLessThan(1.1);
  expect(off.paused[0]).toBeGreaterThan(-2);
  expect(off.paused[1]).toBeLessThan(2);
});
