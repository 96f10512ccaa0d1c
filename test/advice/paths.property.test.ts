import { randomUUID } from "node:crypto";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { demoOpening, planIssued, scenarioOf } from "../../src/base/index.js";
import { demoBase, type ScenarioDocument } from "../../src/documents/index.js";
import { type BaseState, deriveBase, type LogbookEvent } from "../../src/logbook/index.js";
import { whatIfScenario } from "../../src/planning/what-if.js";
import { planFromDocument, plansFor } from "../../src/questions/index.js";
import type { ReplanAsk, ReplanPart } from "../../src/web/worker/protocol.js";
import { type OpenBase, Replanning } from "../../src/web/worker/replan.js";
import { english } from "../../src/words/index.js";
import { runs } from "../tiers.js";
import type { Advice } from "./heat-spans.js";
import { answerWithinLimits } from "./heater-rules.js";
import { isoAt, MEMBERS, madeScenarios, SEED } from "./made-scenarios.js";
import { lookFirstBeforeGreen, ticksAreEarned } from "./ready-rules.js";
import { readOf } from "./replay.js";
import { brokenRules } from "./rules.js";

// The other ways to a plan: the page's worker, the keeper of a base, the demo's night. The same rules hold on each.

const RUNS = runs(24, 120, process.env.ADVICE_PATH_RUNS);
const OPTIONS = { seed: SEED, endOnFailure: true } as const;

/** A base of one aircraft that is as a document says. */
function baseOf(document: ScenarioDocument): OpenBase {
  return {
    state: {} as BaseState,
    departure: ({ departure }) => departure ?? Date.parse(document.want?.departure ?? ""),
    hoursAhead: () => 48,
    scenario: () => readOf(document),
  };
}

function parts(replanning: Replanning, base: OpenBase, ask: ReplanAsk): ReplanPart[] {
  const told: ReplanPart[] = [];
  for (const _ of replanning.replan(base, ask, (part) => told.push(part)));
  return told;
}

/** What a part breaks; `read` is the scenario with what is tried. */
function brokenBy(part: ReplanPart, read: Advice["read"]): string[] {
  if (part.grade === "refused") return [];
  if (part.grade === "whole") return brokenRules({ read, plan: part.plan });
  const plan = part.plan;
  return [
    ...ticksAreEarned({ plan }),
    ...lookFirstBeforeGreen({ plan, read }),
    ...answerWithinLimits({ read }, plan),
  ].map((text) => `${part.grade}: ${text}`);
}

const tries = fc.record({
  windFactor: fc.constantFrom(0.3, 0.8, 1.7),
  moved: fc.double({ min: 0.2, max: 1, noNaN: true }),
  chance: fc.constantFrom(0.7, 0.9),
});

describe(`the page's worker (seed ${SEED})`, () => {
  test("first answers, decisions, plans and what-ifs break no rule", { timeout: 600_000 }, () => {
    fc.assert(
      fc.property(
        madeScenarios,
        tries,
        fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
        (document, tried, on) => {
          const read = readOf(document);
          const replanning = new Replanning();
          const base = baseOf(document);
          const now = Date.parse(isoAt(0));
          const ask = { now, members: MEMBERS, aircraft: [{ id: "made" }] };
          const opening = parts(replanning, base, ask);
          const found = opening.flatMap((part) => brokenBy(part, read));
          const covers = read.scenario.kit.covers.map(({ id }) => id).filter((_, i) => on[i]);
          const departure = now + 60_000 * Math.round(60 * Math.max(0.05, tried.moved * document.hours));
          const { windFactor, chance } = tried;
          const what = { coversOn: covers, windFactor };
          const changed = { ...read, scenario: whatIfScenario(read.scenario, what) };
          const moved = parts(replanning, base, {
            ...{ now, members: MEMBERS, windFactor },
            aircraft: [{ id: "made", departure, chance, covers }],
          });
          found.push(...moved.flatMap((part) => brokenBy(part, changed)).map((text) => `what if: ${text}`));
          expect(found).toEqual([]);
        },
      ),
      { numRuns: RUNS, ...OPTIONS },
    );
  });
});

const HOUR = 3_600_000;
const OPENED = Date.parse("2026-01-14T18:20:00Z");
const opening = demoOpening(OPENED);

type Happened = Extract<LogbookEvent, { readonly aircraft: string }>;
type Done = "plugged-in" | "unplugged" | "cover-on" | "cover-off" | "moved" | "shut-down";

/** What people did at the demo base before now. */
const doings = fc.array(
  fc.record({
    after: fc.double({ min: 0, max: 12, noNaN: true }),
    of: fc.nat({ max: 20 }),
    kind: fc.constantFrom<Done>(
      "plugged-in",
      "plugged-in",
      "unplugged",
      "cover-on",
      "cover-off",
      "moved",
      "shut-down",
    ),
    to: fc.constantFrom("ramp" as const, "hangar" as const),
    which: fc.nat({ max: 5 }),
  }),
  { maxLength: 6 },
);

function eventOf({
  after,
  of,
  kind,
  to,
  which,
}: {
  after: number;
  of: number;
  kind: Done;
  to: "ramp" | "hangar";
  which: number;
}): Happened[] {
  const { setUp } = opening;
  const { id, kit } = setUp.aircraft[of % setUp.aircraft.length];
  const idOf = (entry: string | { readonly id: string }) => (typeof entry === "string" ? entry : entry.id);
  const common = { id: randomUUID(), at: new Date(OPENED + after * HOUR).toISOString(), aircraft: id };
  const one = <T extends string | { readonly id: string }>(list: readonly T[]) =>
    list.length === 0 ? [] : [idOf(list[which % list.length])];
  switch (kind) {
    case "plugged-in":
    case "unplugged":
      return kit.heaters.length === 0 ? [] : [{ ...common, kind, heaters: one(kit.heaters) }];
    case "cover-on":
    case "cover-off":
      return kit.covers.length === 0 ? [] : [{ ...common, kind, covers: one(kit.covers) }];
    case "moved":
      return [{ ...common, kind, to }];
    case "shut-down":
      return [{ ...common, kind }];
  }
}

describe(`the keeper of a base (seed ${SEED})`, () => {
  test("plans from a logbook, and what is issued of them, break no rule", { timeout: 600_000 }, () => {
    fc.assert(
      fc.property(doings, fc.double({ min: 0, max: 13, noNaN: true }), (done, after) => {
        const now = OPENED + Math.round(after * 60) * 60_000;
        const events: LogbookEvent[] = [
          ...opening.events,
          ...done.flatMap(eventOf).filter(({ at }) => Date.parse(at) <= now),
        ].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
        const state = deriveBase(events);
        if (state === undefined) throw new Error("no set-up");
        const found: string[] = [];
        for (const [id, outcome] of plansFor(state, { now, members: MEMBERS })) {
          const aircraft = state.aircraft.get(id);
          if (outcome.status === "refused" || aircraft === undefined) continue;
          if (outcome.status !== "completed") {
            found.push(english(outcome.message));
            continue;
          }
          const { plan, departure } = outcome.result;
          const scenario = scenarioOf(state, id, { now, members: MEMBERS, from: "now" });
          if (!scenario.ok) throw new Error(english(scenario.reason));
          const advice = { read: readOf(scenario.document()), plan };
          found.push(...brokenRules(advice).map((text) => `${id}: ${text}`));
          const issued = planIssued(aircraft, plan, { now, id: randomUUID(), of: departure.id });
          found.push(...brokenIssue(issued, advice).map((text) => `${id}: ${text}`));
        }
        expect(found).toEqual([]);
      }),
      { numRuns: Math.ceil(RUNS / 3), ...OPTIONS },
    );
  });
});

function brokenIssue(issued: ReturnType<typeof planIssued>, { plan }: Advice): string[] {
  const found: string[] = [];
  if (issued.status === "ready" && issued.chance < plan.wanted_chance - 1e-12)
    found.push(`issued as ready with ${issued.chance}, not ${plan.wanted_chance}`);
  if (issued.status === "ready" && plan.look_first.length > 0) found.push("issued as ready, look first");
  if (issued.chance !== plan.chance) found.push("issued with another chance");
  if (issued.plug_in !== null && plan.plug_in === null && plan.heating?.stays_on !== true)
    found.push("issued with a plug-in that nobody planned");
  return found;
}

describe(`the demo's night (seed ${SEED})`, () => {
  test("tonight's plans break no rule, whatever the weather invented", { timeout: 600_000 }, () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), (seed) => {
        for (const scenario of demoBase(seed).scenarios) {
          if (scenario.want === undefined) continue;
          const document = { ...scenario, ensemble: { members: MEMBERS, seed } };
          const outcome = planFromDocument(document);
          if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
          expect(brokenRules({ read: readOf(document), plan: outcome.result }), scenario.name).toEqual([]);
        }
      }),
      { numRuns: Math.ceil(RUNS / 6), ...OPTIONS },
    );
  });
});
