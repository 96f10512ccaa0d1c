import { expect, test } from "vitest";
import { readBaseDocument } from "../../src/base-documents/index.js";
import { contenderOf } from "../../src/base-plan/contender.js";
import { gridOf } from "../../src/base-plan/limits.js";
import { solveMilp } from "../../src/node/index.js";
import { allCriteria } from "../../src/readiness/index.js";
import { usedKit } from "../../src/scenario/index.js";
import { drawEnsemble } from "../../src/simulation/index.js";
import { exampleBase } from "./example-base.js";

/** The first aircraft of the example that stands outside, as the plan sees it. */
function outsideContender() {
  const base = readBaseDocument(exampleBase());
  if (!base.ok) throw new Error(JSON.stringify(base.issues));
  const one = base.aircraft.find(({ read }) => read.scenario.initial.configuration.place === "ramp");
  const want = one?.read.want;
  if (one === undefined || want === undefined) throw new Error("nobody outside is wanted");
  const { read, id, circuits, switched, connected, carts, told } = one;
  const { scenario } = read;
  const draws = drawEnsemble({ members: 60, seed: 3, weather: scenario.weather });
  const criteria = allCriteria(scenario.installation, usedKit(read), read.limits);
  const plan = { scenario, wish: { ...want.wish, chance: 0.85 }, heaters: want.heaters, criteria, draws };
  const aircraft = { ...{ id, circuits, switched, connected, carts, told }, name: read.name, plan };
  const { limits } = base;
  const request = { aircraft: [aircraft], parked: [], limits, solveMilp, isNight: () => false };
  return contenderOf(aircraft, request, gridOf(scenario.start, scenario.duration));
}

test("what is read as nearly sure is played before a departure is given up, and then counts as it is", () => {
  const scope = { contested: true, bothLines: true, moves: false };
  const contender = outsideContender();
  const { chance: wanted } = contender.aircraft.plan.wish;
  const courses = () => contender.list(scope).map(({ option }) => option.candidate);
  expect(courses().some((course) => !course.missed)).toBe(true);
  expect(contender.list(scope)).toBe(contender.list(scope));

  for (const shape of ["through", "early", "twice"] as const) contender.raiseMargin("least", shape, 0.1);
  const doubtful = courses().filter((course) => course.missed && course.chance >= wanted - 0.05);
  expect(doubtful.length).toBeGreaterThan(0);
  expect(doubtful.some((course) => contender.isPlayed(course))).toBe(false);

  const found = contender.lookCloser(scope);
  const played = courses().filter((course) => contender.isPlayed(course));
  expect(played.length).toBeGreaterThan(0);
  expect(played.length).toBeLessThanOrEqual(3);
  for (const course of played) {
    expect(course.chance).toBe(contender.played(course).chance);
    expect(course.missed).toBe(course.chance < wanted);
  }
  expect(found).toBe(played.some((course) => !course.missed));
  expect(found).toBe(true);
});

test("courses that are played alike keep their own outlet and circuit, which count for others", () => {
  const contender = outsideContender();
  const [{ option }] = contender.list({ contested: false, bothLines: false, moves: false });
  const stays = { ...option.candidate, circuit: 0, givesUpOutlet: false };
  const leaves = { ...stays, givesUpOutlet: true };
  const elsewhere = { ...stays, circuit: 1 };
  const chances = [stays, leaves, elsewhere].map((course) => {
    const played = contender.played(course);
    expect(played.course).toBe(course);
    return played.chance;
  });
  expect(new Set(chances).size).toBe(1);
});
