import { expect, test } from "vitest";
import { nextDeparture, scenariosTogether } from "../../src/base/index.js";
import { baseDocumentOf, readBaseDocument } from "../../src/base-documents/index.js";
import type { LogbookEvent } from "../../src/logbook/index.js";
import { english } from "../../src/words/index.js";
import { at, HOUR, OPENED, opening, stateOf, withoutForecast } from "./example-base.js";

const now = OPENED + HOUR;
const options = { now, members: 20, estimateOf: () => undefined };

function together(events: readonly LogbookEvent[]) {
  const found = scenariosTogether(stateOf(events), options);
  if (!found.ok) throw new Error(english(found.reason));
  return found;
}

/** Lynx's departure moved to `hours` after the opening. */
function lynxAt(hours: number): LogbookEvent[] {
  const of = stateOf(opening.events).aircraft.get("lynx")?.departures[0].id ?? "";
  const departure = new Date(OPENED + hours * HOUR).toISOString();
  return [
    ...opening.events,
    { ...at(0.5), kind: "departure-dropped", aircraft: "lynx", of },
    { ...at(0.5), kind: "departure-wanted", aircraft: "lynx", departure, pulled_out: false },
  ];
}

/** Thirty hours of the same weather. */
function shortForecast(): LogbookEvent {
  const points = [0, 10, 20, 30].map((at_h) => ({ at_h, air_c: -18, wind_mps: 2, cloud_fraction: 0.5 }));
  return { ...at(0), kind: "forecast", origin: "said on the telephone", weather: { points } };
}

test("all aircraft are looked at over the same hours, an hour past the last departure", () => {
  const { scenarios, later } = together(opening.events);
  const wanted = [...stateOf(opening.events).aircraft.values()].map(
    (one) => nextDeparture(one, now)?.departure ?? 0,
  );
  expect(later).toEqual([]);
  expect(scenarios.map(({ id }) => id)).toEqual(["lynx", "heron", "marten", "wren"]);
  for (const { scenario } of scenarios) {
    expect(scenario.hours).toBe(Math.ceil((Math.max(...wanted) - now) / HOUR) + 1);
    expect(scenario.want).toBeDefined();
  }
});

test.each([
  ["days ahead", lynxAt(80)],
  [
    "later than any forecast reaches",
    [...withoutForecast, ...lynxAt(40).slice(opening.events.length), shortForecast()],
  ],
])("a departure %s is left out and its aircraft named; the others are planned", (_, events) => {
  const { scenarios, later } = together(events);
  expect(later).toEqual(["Lynx"]);
  expect(scenarios.map(({ id, scenario }) => [id, scenario.want !== undefined])).toEqual([
    ["lynx", false],
    ["heron", true],
    ["marten", true],
    ["wren", true],
  ]);
  const reading = readBaseDocument(baseDocumentOf(stateOf(opening.events).setUp, scenarios));
  expect(reading.ok && reading.notPlanned).toEqual(["Lynx"]);
});

test("without weather it says why there is nothing to plan with", () => {
  expect(scenariosTogether(stateOf(withoutForecast), options)).toEqual({
    ok: false,
    reason: { code: "no-forecast-entered", values: {} },
  });
});
