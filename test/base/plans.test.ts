import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { isNews, nextDeparture, planIssued } from "../../src/base/index.js";
import { type BaseState, type EventOf, eventSchema } from "../../src/logbook/index.js";
import { estimateNow, planOf, plansFor } from "../../src/questions/index.js";
import { plainWords } from "../plain-words.js";
import { at, HOUR, OPENED, opening, stateOf } from "./example-base.js";

const state = stateOf(opening.events);
const MEMBERS = 40;

function plan(of: BaseState, aircraft: string, now: number) {
  const estimate = estimateNow(of, aircraft, { now, readings: [] });
  if (estimate.status !== "completed") throw new Error(JSON.stringify(estimate));
  const outcome = planOf(of, aircraft, { now, estimate: estimate.result, members: MEMBERS });
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

function issued(of: BaseState, aircraft: string, now: number): EventOf<"plan-issued"> {
  const one = of.aircraft.get(aircraft);
  if (one === undefined) throw new Error(aircraft);
  const { plan: document, departure } = plan(of, aircraft, now);
  return planIssued(one, document, { now, id: randomUUID(), of: departure.id });
}

test("a plan from the live estimate begins now and becomes an event of the logbook", () => {
  const now = OPENED + 2 * HOUR;
  const event = issued(state, "lynx", now);
  expect(eventSchema.parse(event)).toEqual(event);
  expect(Date.parse(event.plug_in ?? "")).toBeGreaterThanOrEqual(now);
  const lynx = state.aircraft.get("lynx");
  const departure = lynx === undefined ? 0 : (nextDeparture(lynx, now)?.departure ?? 0);
  expect(Date.parse(event.unplug)).toBe(departure - 15 * 60_000);
  expect(event.chance).toBeGreaterThanOrEqual(0.9);
});

test("all aircraft that are wanted are planned for, and say where their weather is from", () => {
  const plans = plansFor(state, { now: OPENED, members: MEMBERS });
  expect([...plans.keys()]).toEqual(["lynx", "heron", "marten", "wren"]);
  for (const outcome of plans.values()) {
    expect(outcome.status === "completed" && plainWords(outcome.result.plan.assumptions)).toMatch(
      /invented weather/,
    );
  }
});

test("small changes are no news; a moved plug-in, another chance, another departure are", () => {
  const event = issued(state, "lynx", OPENED + HOUR);
  const later = (minutes: number) =>
    new Date(Date.parse(event.plug_in ?? "") + minutes * 60_000).toISOString();
  const other = (change: Partial<EventOf<"plan-issued">>) => isNews(event, { ...event, ...change });
  expect(isNews(undefined, event)).toBe(true);
  expect(other({ plug_in: later(5), chance: event.chance - 0.04 })).toBe(false);
  expect(other({ plug_in: later(10) })).toBe(true);
  expect(other({ plug_in: later(-10) })).toBe(true);
  expect(other({ plug_in: null })).toBe(true);
  expect(other({ chance: event.chance - 0.06 })).toBe(true);
  expect(other({ of: randomUUID() })).toBe(true);
  expect(other({ status: "not-reachable" })).toBe(true);
  // On the edge of the wanted chance, while it heats.
  const heating = { status: "not-reachable" as const, at: later(20) };
  expect(other({ ...heating, chance: event.chance - 0.02 })).toBe(false);
  expect(other({ ...heating, chance: event.chance - 0.06 })).toBe(true);
});

test("a heater that is on is not planned off and on again", () => {
  const first = issued(state, "lynx", OPENED);
  const plugIn = Date.parse(first.plug_in ?? "");
  const heating = stateOf([
    ...opening.events,
    first,
    { ...at((plugIn - OPENED) / HOUR), kind: "switch-confirmed", aircraft: "lynx", switch: "lead", is: "on" },
  ]);
  const again = issued(heating, "lynx", plugIn + 40 * 60_000);
  expect(again.plug_in).toBe(first.plug_in);
  expect(again.status).toBe("ready");
});
