import { expect, test } from "vitest";
import { hoursAhead, scenarioOf, scenariosTogether } from "../../src/base/index.js";
import { baseDocumentOf } from "../../src/base-documents/index.js";
import { solveMilp } from "../../src/node/index.js";
import { basePlanFromDocument, planFromDocument, planOf } from "../../src/questions/index.js";
import type { Outcome } from "../../src/questions/question.js";
import { Replanning } from "../../src/web/worker/replan.js";
import { OPENED, opening, stateOf } from "../base/example-base.js";

// An aircraft of the demo, asked everywhere that tells its owner when to plug in. The command line, the keeper and the app,
// however far each looks ahead, have the same cases. The base's plan gives each aircraft cases of its own and agrees as far
// as so many cases tell.

const MEMBERS = 200;
/** [min] a plug-in moves when other 200 cases are drawn, while its chance stays within their error. */
const CASES_TELL_MIN = 45;
const LYNX = "lynx";
const state = stateOf(opening.events);
const options = { now: OPENED, members: MEMBERS };

const planned = completed(planOf(state, LYNX, options)).plan;

test("the night is worth asking about: a plug-in hours before the departure", () => {
  expect(planned.status).toBe("ready");
  expect(planned.plug_in!.at_h).toBeGreaterThan(1);
  expect(planned.departure.at_h - planned.plug_in!.at_h).toBeGreaterThan(1);
});

test("the command line plans the document of the same night to the letter as the keeper does", () => {
  const found = scenarioOf(state, LYNX, { ...options, from: "now" });
  if (!found.ok) throw new Error(found.reason.code);
  const told = completed(planFromDocument(found.document()));
  expect(told.plug_in).toEqual(planned.plug_in);
  expect(told.chance).toBe(planned.chance);
});

test("the app decides the same, and its decision is its whole plan", () => {
  const base = {
    state,
    departure: () => state.aircraft.get(LYNX)?.departures[0]?.departure,
    hoursAhead: (now: number) => hoursAhead(state, now),
    scenario: (_: unknown, given: { now: number; hours: number; members: number }) => {
      const found = scenarioOf(state, LYNX, { ...given, from: "now" });
      if (!found.ok) throw new Error(found.reason.code);
      return found.aircraft;
    },
  };
  const minutes: number[] = [];
  for (const _ of new Replanning().replan(base, { ...options, aircraft: [{ id: LYNX }] }, (part) => {
    if (part.grade === "refused") throw new Error(part.reasons.join());
    minutes.push(minutesFrom(part.plan.plug_in!.time));
  }));
  const [first, decided, whole] = minutes;
  expect(decided).toBe(whole);
  expect(whole).toBe(0);
  // A first answer of few members is drawn until the decision is there.
  expect(Math.abs(first)).toBeLessThanOrEqual(60);
});

test("the base's plan has it as far as so many cases tell, and to its own step of ten minutes", async () => {
  const found = scenariosTogether(state, { ...options, estimateOf: () => undefined });
  if (!found.ok) throw new Error(found.reason.code);
  const alone = found.scenarios.filter(({ id }) => id === LYNX);
  const setUp = { ...state.setUp, aircraft: state.setUp.aircraft.filter(({ id }) => id === LYNX) };
  const plan = completed(await basePlanFromDocument(baseDocumentOf(setUp, alone), { solveMilp }));
  const [{ plug_in, chance, aim }] = plan.aircraft;
  expect(aim).toBe(planned.aim);
  expect(Math.abs(minutesFrom(plug_in!.time))).toBeLessThanOrEqual(CASES_TELL_MIN);
  // Three standard errors of the difference between two counts over 200 cases.
  expect(Math.abs(chance - planned.chance)).toBeLessThanOrEqual(3 * Math.SQRT2 * planned.chance_error);
});

/** [min] later than it is planned. */
function minutesFrom(time: string): number {
  return (Date.parse(time) - Date.parse(planned.plug_in!.time)) / 60_000;
}

function completed<T>(outcome: Outcome<T>): T {
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return outcome.result;
}
