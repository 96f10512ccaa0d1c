import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { PlanDocument } from "../../src/documents/index.js";
import { finding } from "../../src/findings/index.js";
import { type KnownPlan, planScreen } from "../../src/first-screen/index.js";
import { namedVerdict, screenOf } from "../../src/web/screens/night/sentence.js";
import { saidIn } from "../../src/web/words/said.js";
import { nb } from "../../src/words/nb/index.js";
import { AIRCRAFT, aPlan, NOW, stamp } from "../web/plan-fixture.js";

const HOUR = 3_600_000;
const units = { temp: "c", wind: "kt", language: "en-GB" } as const;
const say = saidIn({ language: "en", zone: "UTC", now: NOW, units });
const norsk = saidIn({
  language: "nb",
  zone: "UTC",
  now: NOW,
  units: { ...units, language: "nb" },
  catalogue: nb,
});
const facts = (plan: KnownPlan, aircraft = AIRCRAFT, told = say.told) =>
  screenOf(aircraft, plan, say).facts.map(({ label, texts }) =>
    plain([finding("label", { of: label }), ...texts].map(told).join(" | ")),
  );
const verdict = (plan: PlanDocument, told = say.told) => planScreen(plan).verdict.map(told).join(" ");
const onFor = (on_h: number, stays_on: boolean) => ({
  ...{ heaters: ["pad"], since: stamp(NOW - on_h * HOUR), on_h, longest_on_h: 24, stays_on, wet_h: 3 },
});

describe("the first screen of a plan", () => {
  test("has the eight lines in the order in which they are needed", () => {
    const plan = aPlan({});
    expect(plain(verdict(plan))).toBe("Plug in at 07:00, unplug at 09:45, start at 10:00. Chance 9 in 10.");
    expect(namedVerdict("Wren", planScreen(plan), say)).toMatch(/^Wren: plug in at 07:00/);
    expect(namedVerdict("Wren", planScreen(plan, { now: NOW + 11 * HOUR }), say)).toMatch(
      /^Wren: plug in now/,
    );
    expect(facts(plan)).toEqual([
      "Plug in | 07:00 at the latest, for the least that the maker asks",
      "Unplug | 09:45, 15 min before the start",
      "Then | covers off at 09:50, start within 25 min",
      "Chance | 9 in 10 that it may be started, 4 in 10 warm through",
      "Weakest point | crankshaft and bearings: 1 °C, 1 in 20 colder than −8 °C; needed −6 °C",
      "Stay with it | nobody has to; look at it once while it heats",
      "Your choice | the least: plug in at 07:00, 9 in 10, 1.2 kWh (planned) | warm through: plug in at 05:00, 9 in 10, 2.4 kWh",
      "15 min more | 9 in 10 that it may be started, 5 in 10 warm through",
    ]);
  });

  test("says that somebody must stay, and which line is planned", () => {
    const [pad] = aPlan({}).heaters;
    const plan = aPlan({ aim: "warm-through", heaters: [{ ...pad, name: "hot air", attended: true }] });
    expect(facts(plan)).toContain("Stay with it | somebody must, all the time: hot air");
    expect(facts(plan)[0]).toContain("for an engine warm through");
    expect(facts(plan).join("\n")).toMatch(/warm through: .*\(planned\)/);
  });

  test("heat that is on: how long of how long, until when; and off now when it was too long", () => {
    const warm = aPlan({ plug_in: null, heating: onFor(12, true) });
    expect(verdict(warm)).toBe("Heat is on. Unplug at 09:45, start at 10:00. Chance 9 in 10.");
    expect(facts(warm)[0]).toBe(
      "Heat is on | for 12 h of at most 24 h in one go, inside wet or frosted 3 h; stays on until 09:45",
    );
    const long = aPlan({ heating: onFor(120, false) });
    expect(verdict(long)).toMatch(/^Unplug now: it has been on too long\. Plug in again at 07:00/);
    expect(facts(long)[0]).toContain("for 120 h of at most 24 h in one go");
    expect(facts(long)[0]).toContain("off now, on again at 07:00");
    expect(facts(long)[1]).toContain("07:00 at the latest");
    // A plug that the logbook knows since this minute; and one that nobody knows of.
    const plan = aPlan({ plug_in: null, heating: { ...onFor(2, true), since: null, on_h: null } });
    expect(facts(plan, { ...AIRCRAFT, heatingSince: NOW - HOUR / 20 })[0]).toContain("for 3 min of at most");
    expect(facts(plan)[0]).toContain("since when is not known");
  });

  test("preheat not required says so, and what warm through would take", () => {
    const { lines } = aPlan({});
    const plan = aPlan({
      ...{ status: "not-required", plug_in: null, heat_needed: false, quarter_more: null },
      lines: { ...lines, least: { ...lines.least, plug_in: null, energy_kwh: 0 } },
    });
    expect(verdict(plan)).toBe("Preheat not required. Start at 10:00. Chance 9 in 10.");
    expect(facts(plan)[0]).toBe("Plug in | not required");
    expect(facts(plan)).toContain(
      "Your choice | the least: without heat, 9 in 10 | warm through: plug in at 05:00, 9 in 10, 2.4 kWh",
    );
    expect(facts(plan).join("\n")).not.toMatch(/^Unplug/m);
  });

  test("what must be looked at first is the headline, in the user's language", () => {
    const battery = { code: "no-battery", text: finding("no-battery", {}), source: "s" } as const;
    const plan = aPlan({ status: "look-first", look_first: [battery] });
    expect(verdict(plan)).toMatch(/^Look first\. No battery is in the aircraft\./);
    expect(verdict(plan, norsk.told)).toMatch(/^Se etter først\. Det er ikke noe batteri i flyet\./);
    expect(facts(plan).join("\n")).toContain("once that is put right: 9 in 10");
  });

  test("a plan out of reach says why, what is weakest, what may not be used and what would help", () => {
    const plan = aPlan({
      ...{
        status: "not-reachable",
        message: finding("own-words", { text: "too late to heat long enough" }),
        chance: 0.2,
        window: null,
      },
      barred: [
        { id: "burner", name: "burner", reason: "indoors" },
        { id: "cart", name: "cart", reason: "engine-too-small" },
      ],
      remedies: [
        { text: finding("own-words", { text: "a cover now" }), attended: false, chance: 0.92, plug_in: null },
        {
          text: finding("own-words", { text: "hot air" }),
          attended: true,
          chance: 0.95,
          plug_in: stamp(NOW + 12 * HOUR),
        },
      ],
    });
    expect(verdict(plan)).toBe("Not ready at 10:00: 2 in 10 at best, 9 in 10 wanted.");
    expect(facts(plan).map((line) => line.split(" | ")[0])).toEqual([
      ...["Best", "Why", "Weakest point", "Not used", "Would help", "Stay with it"],
    ]);
    expect(facts(plan).join("\n")).toContain("a burner never runs in a hangar");
    expect(facts(plan).join("\n")).toContain("too much heat for so small an engine");
    expect(facts(plan)[4]).toBe(
      "Would help | a cover now: 9 in 10 | hot air: 19 in 20, plug in at 08:00; somebody must stay",
    );
    expect(facts({ ...plan, remedies: [] })[4]).toBe("Would help | nothing that was tried");
  });

  test("before the whole plan is there, what only that says is being worked out, not borrowed", () => {
    const { start_within_min: _, quarter_more: __, happenings: ___, heaters: ____, ...first } = aPlan({});
    const told = facts(first);
    expect(told).toContain("Then | being worked out …");
    expect(told).toContain("15 min more | being worked out …");
    expect(told.find((line) => line.startsWith("Stay with it"))).toMatch(/nobody has to/);
  });

  test("no line is empty, in either language, whatever a plan says", () => {
    const line = fc.record({
      reached: fc.boolean(),
      plug_in: fc.constantFrom(null, stamp(NOW + HOUR)),
      chance: fc.double({ min: 0, max: 1, noNaN: true }),
      energy_kwh: fc.double({ min: 0, max: 30, noNaN: true }),
    });
    const plans = fc.record({
      status: fc.constantFrom("ready", "not-required", "look-first", "not-reachable" as const),
      message: fc.constant(finding("own-words", { text: "why" })),
      look_first: fc.constant<PlanDocument["look_first"]>([
        { code: "oil-unlisted", text: finding("own-words", { text: "Oil: look." }), source: "s" },
      ]),
      heating: fc.constantFrom(null, onFor(2, true), onFor(30, false)),
      plug_in: fc.constantFrom(null, stamp(NOW + HOUR)),
      start_within_min: fc.option(fc.integer({ min: 0, max: 600 }), { nil: null }),
      lines: fc.record({ least: line, warm_through: line }),
      chance: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(plans, fc.constantFrom(say, norsk), (drawn, { told, odds }) => {
        const plan = aPlan(drawn);
        const sentence = verdict(plan, told);
        const said = facts(plan, AIRCRAFT, told);
        for (const text of [sentence, ...said.flatMap((line) => line.split(" | "))])
          expect(text).not.toMatch(/^\s*$|undefined|NaN|null|\[object/);
        expect(new Set(said.map((line) => line.split(" | ")[0])).size).toBe(said.length);
        // A plan out of reach never stands as one that is planned.
        if (plan.status === "not-reachable") expect(sentence).toContain(odds(plan.wanted_chance));
      }),
      { numRuns: 2000 },
    );
  });
});

/** With spaces that may break, so that a test can be typed. */
function plain(text: string): string {
  return text.replaceAll("\u00a0", " ");
}
