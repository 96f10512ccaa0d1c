import { expect, test } from "vitest";
import type { PlanDocument } from "../../src/documents/index.js";
import { deriveBase, LOGBOOK_VERSION, type LogbookEvent, readEvents } from "../../src/logbook/index.js";
import { calendarText } from "../../src/server/calendar.js";
import { readablePlans } from "../../src/web/data/plan-state.js";
import { screenOf } from "../../src/web/screens/night/sentence.js";
import { saidIn } from "../../src/web/words/said.js";
import { nb } from "../../src/words/nb/index.js";
import { AIRCRAFT, aPlan, NOW } from "../web/plan-fixture.js";

const units = { temp: "f", wind: "kt", language: "nb" } as const;
const norsk = saidIn({ language: "nb", zone: "UTC", now: NOW, units, catalogue: nb });

/** A plan as the program stored it while results carried sentences. */
const plan = aPlan({ status: "not-reachable" });
const OLD = {
  ...plan,
  message: "too late to heat: the oil is at -20 °C",
  criteria: plan.criteria.map((criterion) => ({ ...criterion, title: "crankshaft and bearings" })),
  assumptions: ["The hangar is at 5 °C."],
  remedies: [{ text: "put on now: insulated cowl cover", attended: false, chance: 0.9, plug_in: null }],
} as unknown as PlanDocument;

test("a plan that was stored with sentences is still read, and told in the reader's units", () => {
  const kept = readablePlans({ wren: { plan: OLD, isBusy: false, at: NOW } });
  const { facts } = screenOf(AIRCRAFT, kept.wren!.plan!, norsk);
  const told = facts.flatMap(({ texts }) => texts.map((text) => norsk.told(text).replaceAll("\u00a0", " ")));
  expect(told).toContain("too late to heat: the oil is at -4 °F");
  expect(told.join("\n")).toMatch(/crankshaft and bearings: 34 °F, 1 av 20 kaldere enn/);
  expect(told.join("\n")).toMatch(/put on now: insulated cowl cover: 9 av 10/);
  expect(norsk.told(OLD.assumptions[0]!)).toContain("41");
});

test("an event of a plan that says its message as a sentence is still read", () => {
  const message = "ready with the chance wanted";
  const event = {
    ...{
      kind: "plan-issued",
      id: "6f0c2b1e-4a55-4e0e-9d0a-0c8f2a7b9e31",
      at: "2026-01-14T20:00:00.000Z",
      aircraft: "wren",
      of: "6f0c2b1e-4a55-4e0e-9d0a-0c8f2a7b9e32",
    },
    ...{ status: "ready", plug_in: null, unplug: "2026-01-15T09:45:00.000Z" },
    ...{ departure: "2026-01-15T10:00:00.000Z", heaters: [], chance: 0.9, weakest: "heads", energy_kwh: 0 },
    message,
  };
  const text = JSON.stringify({ soakline_logbook: LOGBOOK_VERSION, events: [event] });
  const { events, issues } = readEvents(text);
  expect(issues).toEqual([]);
  expect((events[0] as LogbookEvent & { message: string }).message).toBe(message);
  expect(calendarText(deriveBase(events), () => undefined, NOW)).toContain("BEGIN:VCALENDAR");
});
