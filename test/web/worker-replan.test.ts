import { describe, expect, test } from "vitest";
import { demoOpening, hoursAhead, scenarioOf } from "../../src/base/index.js";
import { deriveBase } from "../../src/logbook/index.js";
import { planFor } from "../../src/questions/plan.js";
import type { ReplanAsk, ReplanPart } from "../../src/web/worker/protocol.js";
import { Refused } from "../../src/web/worker/refused.js";
import { type OpenBase, Replanning } from "../../src/web/worker/replan.js";

const NOW = Date.UTC(2026, 0, 14, 17);
const HOUR = 3_600_000;
const MEMBERS = 60;

const derived = deriveBase(demoOpening(NOW).events);
if (derived === undefined) throw new Error("the demo has no set-up");
const state = derived;
const [first, second] = [...state.aircraft.values()].filter(({ departures }) => departures.length > 0);

const base: OpenBase = {
  state,
  departure: ({ id, departure }) => departure ?? state.aircraft.get(id)?.departures[0]?.departure,
  hoursAhead: (now) => hoursAhead(state, now),
  scenario({ id }, options) {
    const scenario = scenarioOf(state, id, { ...options, from: "now" });
    if (!scenario.ok) throw new Refused([scenario.reason]);
    return scenario.aircraft;
  },
};

function ask(change: Partial<ReplanAsk> = {}): ReplanAsk {
  const aircraft = [first, second].map(({ setUp: { id } }) => ({ id }));
  return { now: NOW, members: MEMBERS, aircraft, ...change };
}

function parts(replanning: Replanning, asked: ReplanAsk): ReplanPart[] {
  const told: ReplanPart[] = [];
  for (const _ of replanning.replan(base, asked, (part) => told.push(part)));
  return told;
}

describe("replanning a base", () => {
  const replanning = new Replanning();
  const opening = parts(replanning, ask());

  test("first answers of all come before any decision, then decisions, then whole plans", () => {
    expect(opening.map(({ aircraft, grade }) => `${aircraft} ${grade}`)).toEqual(
      ["first", "decided", "whole"].flatMap((grade) =>
        [first, second].map(({ setUp: { id } }) => `${id} ${grade}`),
      ),
    );
    // Nothing was played yet when it was first asked.
    expect(opening[0]).toMatchObject({ grade: "first", basis: "few-members" });
  });

  test("the whole plan says of the plug-in what was decided", () => {
    for (const { setUp } of [first, second]) {
      const [decided, whole] = ["decided", "whole"].map((grade) =>
        opening.find((part) => part.aircraft === setUp.id && part.grade === grade),
      );
      if (decided?.grade !== "decided" || whole?.grade !== "whole") throw new Error("a part is missing");
      const { energy_kwh: _, ...known } = decided.plan;
      expect(whole.plan).toMatchObject(known);
      expect(whole.plan.course.time_h.length).toBeGreaterThan(20);
    }
  });

  test("it is the plan of the document, planned in one go", () => {
    const { id } = first.setUp;
    const whole = opening.find((part) => part.aircraft === id && part.grade === "whole");
    if (whole?.grade !== "whole") throw new Error("a part is missing");
    // The same hours, so that the same weather is drawn.
    const hours = Math.min(42, Math.floor(hoursAhead(state, NOW)));
    const outcome = planFor(base.scenario({ id }, { now: NOW, hours, members: MEMBERS }));
    if (outcome.status !== "completed") throw new Error(outcome.status);
    expect(whole.plan.plug_in).toEqual(outcome.result.plug_in);
    // One of 60 members may stand on the limit, within the tolerance of two integrations.
    expect(Math.abs(whole.plan.chance - outcome.result.chance)).toBeLessThanOrEqual(1.01 / MEMBERS);
  });

  test("once all is played, a moved departure is looked up", () => {
    const { id, departure } = { id: first.setUp.id, departure: first.departures[0].departure + HOUR };
    const [moved] = parts(replanning, ask({ aircraft: [{ id, departure }], until: "first" }));
    if (moved.grade !== "first") throw new Error(moved.grade);
    expect(moved.basis).toBe("looked-up");
    expect(Date.parse(moved.plan.departure.time.replace(/\[.*/, ""))).toBe(departure);
  });

  test("another wind is carried over, and more wind wants heat earlier for the least", () => {
    const plugIn = [0.5, 2].map((windFactor) => {
      const [part] = parts(replanning, ask({ windFactor, until: "first" }));
      if (part.grade !== "first") throw new Error(part.grade);
      expect(part.basis).toBe("carried-over");
      return part.plan.lines.least.plug_in?.at_h ?? Number.NaN;
    });
    expect(plugIn[1]).toBeLessThan(plugIn[0]);
  });

  test("an aircraft that cannot be planned says why, the others are answered", () => {
    const far = { id: first.setUp.id, departure: NOW + 100 * HOUR };
    const told = parts(replanning, ask({ aircraft: [far, { id: second.setUp.id }], until: "first" }));
    expect(told[0]).toMatchObject({ aircraft: first.setUp.id, grade: "refused" });
    expect(told[1]).toMatchObject({ aircraft: second.setUp.id, grade: "first" });
  });
});
