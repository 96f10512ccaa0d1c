import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { HEATERS } from "../../src/aircraft/index.js";
import type { ScenarioDocument } from "../../src/documents/index.js";
import { planFromDocument } from "../../src/questions/index.js";
import { runs } from "../tiers.js";
import { cautionsOfCatalogue } from "./caution-rules.js";
import { madeScenarios, SEED } from "./made-scenarios.js";
import { readOf } from "./replay.js";
import { brokenRules } from "./rules.js";

// ADVICE_SEED tries other cases than the usual ones, ADVICE_RUNS other numbers of them.

const RUNS = runs(200, 1000, process.env.ADVICE_RUNS);
/** The cases in parts, so that one that fails is found soon. */
const PARTS = 4;

function broken(document: ScenarioDocument, tally: Map<string, number>): string[] {
  const outcome = planFromDocument(document);
  if (outcome.status !== "completed") return [JSON.stringify(outcome)];
  const { status } = outcome.result;
  tally.set(status, (tally.get(status) ?? 0) + 1);
  return brokenRules({ read: readOf(document), plan: outcome.result });
}

describe(`plans of random aircraft, kits, nights and wishes (seed ${SEED})`, () => {
  const tally = new Map<string, number>();
  for (let part = 0; part < PARTS; part++) {
    test(`break no rule, part ${part + 1} of ${PARTS}`, { timeout: 600_000 }, () => {
      fc.assert(
        fc.property(madeScenarios, (document) => {
          expect(broken(document, tally)).toEqual([]);
        }),
        { numRuns: Math.ceil(RUNS / PARTS), seed: SEED + part, endOnFailure: true },
      );
    });
  }

  test("they are of all kinds: none of the answers is so rare that its rules are hardly tried", () => {
    const all = [...tally.values()].reduce((sum, n) => sum + n, 0);
    for (const status of ["ready", "not-required", "look-first", "not-reachable"])
      expect(tally.get(status) ?? 0, status).toBeGreaterThan(0.05 * all);
  });
});

test("every heater of the catalogue carries the cautions of its kind", () => {
  expect(HEATERS.flatMap(cautionsOfCatalogue)).toEqual([]);
});
