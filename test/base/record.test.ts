import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { scenarioOf } from "../../src/base/index.js";
import { readScenarioDocument } from "../../src/documents/index.js";
import {
  eventsToCsv,
  eventsToJson,
  type LogbookEvent,
  readEvents,
  readEventsCsv,
} from "../../src/logbook/index.js";
import { planOf } from "../../src/questions/index.js";
import { english } from "../../src/words/index.js";
import { plainWords } from "../plain-words.js";
import { HOUR, OPENED, opening, stateOf } from "./example-base.js";

/** What became of one morning that was planned for. */
interface Morning {
  readonly how?: "easy" | "hard" | "failed";
  /** [K] by which the oil was off what was said, half an hour before the departure. */
  readonly off?: number;
  /** [K] the same as a probe said it when the plan was through. */
  readonly probeOff?: number;
  /** [h] by which it was plugged in later than planned. */
  readonly late?: number;
}

/** Mornings before the opening, the last of them the day before: planned at 20, plugged in at 4, departure at 8. */
function mornings(all: readonly Morning[]): LogbookEvent[] {
  return all.flatMap(({ how, off, probeOff, late = 0 }, n): LogbookEvent[] => {
    const day = OPENED - (all.length - n) * 24 * HOUR;
    const at = (hours: number) => new Date(day + hours * HOUR).toISOString();
    const common = (hours: number) => ({ id: randomUUID(), at: at(hours), aircraft: "lynx" });
    const want = common(0);
    const bands = { p05_c: [-21.6, 13.4], p50_c: [-15, 20], p95_c: [-8.4, 26.6] };
    return [
      { ...want, kind: "departure-wanted", departure: at(14) },
      {
        ...common(2),
        kind: "plan-issued",
        of: want.id,
        status: "ready",
        plug_in: at(10),
        unplug: at(13.5),
        departure: at(14),
        heaters: ["sump-pad-220"],
        chance: 0.92,
        weakest: "bearings",
        message: "ready with the chance wanted",
        energy_kwh: 0.8,
        bands: { at: [at(10), at(14)], parts: { oil: bands } },
      },
      { ...common(10 + late), kind: "plugged-in", heaters: ["sump-pad-220"] },
      ...(off === undefined
        ? []
        : [{ ...common(13.5), kind: "reading" as const, part: "oil" as const, temp_c: 15.625 + off }]),
      ...(probeOff === undefined
        ? []
        : [
            {
              ...{ ...common(13.5), kind: "probes-read" as const, of: want.id },
              readings: [
                { part: "oil" as const, temp_c: 15.625 + probeOff },
                { part: "battery" as const, temp_c: 5 },
              ],
            },
          ]),
      { ...common(13.5), kind: "unplugged", heaters: ["sump-pad-220"] },
      ...(how === undefined ? [] : [{ ...common(14.1), kind: "started" as const, how }]),
    ];
  });
}

const baseWith = (all: readonly Morning[]) => stateOf([...mornings(all), ...opening.events]);

function planFor(all: readonly Morning[]) {
  const outcome = planOf(baseWith(all), "lynx", { now: OPENED, members: 100 });
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return outcome.result.plan;
}

test("each plan that was acted on is checked by its start and by what was read, and no other", () => {
  const { record, aircraft } = baseWith([
    { how: "easy", off: -2 },
    { how: "hard" },
    { how: "easy", late: 2 },
    { off: 8.5 },
  ]);
  expect(aircraft.get("lynx")!.checked).toHaveLength(3);
  expect(record.plans).toBe(3);
  expect(record.starts).toMatchObject({ count: 2, held: 1, said: 0.92 });
  expect(record.readings).toMatchObject({ count: 2, within: 1 });
  expect(record.readings.bias).toBeCloseTo((-2 + 8.5) / 2, 6);
});

test("what probes read when a plan that was followed was through checks it, and says nothing of the aircraft's state", () => {
  const all: readonly Morning[] = [{ probeOff: -2 }, { probeOff: 12 }, { probeOff: 3, late: 2 }];
  const events = [...mornings(all), ...opening.events];
  const read = stateOf(events);
  expect(read.record.readings).toMatchObject({ count: 2, within: 1 });
  expect(read.record.readings.bias).toBeCloseTo((-2 + 12) / 2, 6);
  const { checked, ...lynx } = read.aircraft.get("lynx")!;
  expect(checked.map(({ probesRead }) => probesRead)).toEqual([true, true]);
  const { checked: unread, ...bare } = stateOf(
    events.filter(({ kind }) => kind !== "probes-read"),
  ).aircraft.get("lynx")!;
  expect(unread.map(({ probesRead, readings }) => [probesRead, readings])).toEqual([
    [false, []],
    [false, []],
  ]);
  expect(lynx).toEqual(bare);
  expect(lynx.readings).toEqual([]);
});

test("few starts change nothing; a base that always comes out colder than said plugs in earlier, and says so", () => {
  const cold: Morning = { how: "hard", off: -7 };
  const [none, few, many] = [planFor([]), planFor([cold, cold, cold]), planFor(Array(9).fill(cold))];
  expect(few.plug_in).toEqual(none.plug_in);
  expect(few.chance).toBe(none.chance);
  expect(Date.parse(many.plug_in!.time)).toBeLessThan(Date.parse(none.plug_in!.time));
  expect(plainWords(many.assumptions)).toMatch(
    /own record of 9 plans: planned as if outside were \d\.\d K colder/,
  );
  expect(plainWords(none.assumptions)).not.toMatch(/own record/);
});

test("a base whose plans come out as said is left alone", () => {
  const good = [1, -2, 3, -1, 0, 2, -3, 1, -1].map((off): Morning => ({ how: "easy", off }));
  expect(baseWith(good).record.correction?.airShift ?? 0).toBeGreaterThanOrEqual(-0.5);
});

test("the document of a corrected plan reads as the same scenario", () => {
  const state = baseWith(Array(9).fill({ how: "failed", off: -6 }));
  const found = scenarioOf(state, "lynx", { now: OPENED, from: "now", members: 100 });
  if (!found.ok) throw new Error(english(found.reason));
  const read = readScenarioDocument(found.document());
  expect(found.aircraft.ensemble.correction).toEqual(state.record.correction);
  expect(read.ok && read.ensemble).toEqual(found.aircraft.ensemble);
});

test("what is written down of a plan comes back from JSON and CSV", () => {
  const events = mornings([{ how: "easy", off: 1, probeOff: 2 }]);
  expect(readEvents(eventsToJson(events)).events).toEqual(events);
  expect(readEventsCsv(eventsToCsv(events)).events).toEqual(events);
});
