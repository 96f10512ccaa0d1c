import { expect, test } from "vitest";
import { type KnownReading, scenarioOf } from "../../src/base/index.js";
import { readScenarioDocument } from "../../src/documents/index.js";
import type { BaseState, LogbookEvent } from "../../src/logbook/index.js";
import { estimateNow, planOf } from "../../src/questions/index.js";
import { PRIOR } from "../../src/simulation/index.js";
import { plainWords } from "../plain-words.js";
import { at, HOUR, OPENED, opening, stateOf } from "./example-base.js";

const now = OPENED + 4 * HOUR;

/** What probes gave every two minutes while the engine cooled. */
function readings(tempC: (hours: number) => number): KnownReading[] {
  return Array.from({ length: 119 }, (_, k) => OPENED + (k + 1) * 120_000).flatMap((time) =>
    ["oil", "heads"].map((probe) => ({
      aircraft: "lynx",
      probe,
      time,
      tempC: tempC((time - OPENED) / HOUR),
    })),
  );
}

function estimated(state: BaseState, rows: readonly KnownReading[]) {
  const outcome = estimateNow(state, "lynx", { now, readings: rows });
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

const baseWith = (extra: readonly LogbookEvent[] = []) => stateOf([...opening.events, ...extra]);
const cooling = readings((h) => -17 - 0.6 * h);

test("what probes taught since the anchor enters the plan; without a reading nothing does", () => {
  const state = baseWith();
  const known = estimated(state, cooling);
  const learned = known.learned!;
  expect(learned.evidence.map(({ origin }) => origin)).toEqual(["probes and readings up to now"]);
  const sd = ({ factor }: { factor: readonly (readonly number[])[] }, i: number) => Math.hypot(...factor[i]);
  const left = PRIOR.names.map((_, i) => sd(learned.multipliers, i) / sd(PRIOR, i));
  // Four hours of cooling close to the air teach little.
  expect(Math.min(...left)).toBeLessThan(0.99);
  const blind = estimated(state, []);
  expect(blind.learned).toBeUndefined();
  const planned = planOf(state, "lynx", { now, estimate: known, members: 40 });
  if (planned.status !== "completed") throw new Error(JSON.stringify(planned));
  expect(plainWords(planned.result.plan.assumptions)).toMatch(
    /learned from \d+ readings \(probes and readings/,
  );
  const found = scenarioOf(state, "lynx", { now, from: "now", estimate: known, members: 40 });
  const read = found.ok ? readScenarioDocument(found.document()) : found;
  expect(read.ok && read.learned?.multipliers).toEqual(learned.multipliers);
});

test("losses learned live count as unknown once covers changed on the way", () => {
  const uncovered = baseWith([
    { ...at(2), kind: "cover-off", aircraft: "lynx", covers: ["insulated-cover"] },
  ]);
  const { learned } = estimated(uncovered, cooling);
  const i = learned!.multipliers.names.indexOf("ventilation");
  expect(learned!.multipliers.mean[i]).toBe(PRIOR.mean[i]);
  expect(Math.hypot(...learned!.multipliers.factor[i])).toBeCloseTo(Math.hypot(...PRIOR.factor[i]), 9);
});

test("a reading that contradicts the model is told with both numbers, and does not move the estimate", () => {
  const wrong: LogbookEvent = { ...at(3), kind: "reading", aircraft: "lynx", part: "crankcase", temp_c: 30 };
  const plain = estimated(baseWith(), cooling).now;
  const told = estimated(baseWith([wrong]), cooling).now;
  expect(plainWords(told.assumptions)).toMatch(
    /crankcase read 30.°C at \d+:\d\d where the model says .1\d.°C\. Is it the probe, its place, or the model\?/,
  );
  expect(plainWords(plain.assumptions)).not.toMatch(/where the model says/);
  expect(Math.abs(told.parts.crankcase.p50_c - plain.parts.crankcase.p50_c)).toBeLessThan(1);
});

test("an aircraft of which nothing was learned takes what its base's others of the kind have in common", () => {
  const setUp = opening.events.find((event) => event.kind === "set-up")!;
  if (setUp.kind !== "set-up") throw new Error();
  const [lynx] = setUp.base.aircraft;
  const { learned } = estimated(baseWith(), cooling);
  const document = scenarioOf(baseWith(), "lynx", {
    now,
    from: "now",
    estimate: { parts: estimated(baseWith(), []).parts, learned },
  });
  if (!document.ok) throw new Error(JSON.stringify(document.reason));
  const taught = document.document().learned;
  if (typeof taught !== "object") throw new Error("nothing learned");
  // As a log of a heated night would have told it.
  const { factor_log } = taught.multipliers;
  const sure = factor_log.map((row) => row.map((value) => 0.3 * value));
  const own = { ...taught, multipliers: { ...taught.multipliers, factor_log: sure } };
  const twin = { ...lynx, id: "twin", name: "Twin", learned: own, switches: [], probes: [] };
  const { circuit: _, ...uncircuited } = twin;
  const base = { ...setUp.base, aircraft: [...setUp.base.aircraft, uncircuited] };
  const state = stateOf([...opening.events, { ...at(0.1), kind: "set-up", base }]);
  const found = scenarioOf(state, "lynx", { now: OPENED + HOUR, from: "now", members: 40 });
  if (!found.ok) throw new Error(JSON.stringify(found.reason));
  expect(found.aircraft.learned?.evidence.map(({ of }) => of)).toEqual(["Twin"]);
  const planned = planOf(state, "lynx", { now: OPENED + HOUR, members: 40 });
  if (planned.status !== "completed") throw new Error(JSON.stringify(planned));
  expect(plainWords(planned.result.plan.assumptions)).toMatch(/have in common is as learned on Twin/);
});
