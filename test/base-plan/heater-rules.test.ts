import { expect, test } from "vitest";
import { heaterById } from "../../src/aircraft/index.js";
import { keepsRules, onBefore, rulesOf } from "../../src/base-plan/heater-rules.js";
import type { Scenario } from "../../src/simulation/index.js";

const HOUR = 3600;
const heater = heaterById("whole-engine-4");
const longest = heater.longest_on_h * HOUR;

function isAllowed(heatedFor: number | undefined, from: number, to: number): boolean {
  const initial = { configuration: { heatersOn: new Set([heater.id]) }, heatedFor };
  const onFor = onBefore({ initial } as unknown as Scenario);
  const course = { blocks: [{ from, to }], stay: undefined };
  return keepsRules(rulesOf([heater]), { course, departure: to + HOUR, onFor, moveTime: 0 });
}

test("heat of unknown length counts as on too long: it goes off, and on again only after a rest", () => {
  expect(isAllowed(undefined, 0, 4 * HOUR)).toBe(false);
  expect(isAllowed(undefined, 600, 4 * HOUR)).toBe(false);
  expect(isAllowed(undefined, 2 * HOUR, 4 * HOUR)).toBe(true);
});

test("heat of known length may stay on up to the heater's longest time", () => {
  expect(isAllowed(HOUR, 0, 4 * HOUR)).toBe(true);
  expect(isAllowed(longest - HOUR, 0, 4 * HOUR)).toBe(false);
});
