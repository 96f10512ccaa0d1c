import { describe, expect, test } from "vitest";
import { explanationSchema, planSchema, simulationSchema } from "../../src/documents/index.js";
import {
  explainFromDocument,
  type Outcome,
  planFromDocument,
  simulateFromDocument,
} from "../../src/questions/index.js";
import { EXAMPLE } from "./example-document.js";

function completed<T>(outcome: Outcome<T>): T {
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

describe("a plan", () => {
  const plan = completed(planFromDocument(EXAMPLE));

  test("is a document of its schema, also after a way through JSON", () => {
    expect(planSchema.parse(JSON.parse(JSON.stringify(plan)))).toEqual(plan);
  });

  test("answers with times in order, on the document's clock", () => {
    expect(plan.status).toBe("ready");
    expect(plan.departure).toEqual({ at_h: 16, time: "2026-01-15T10:00+01:00" });
    expect(plan.unplug.time).toBe("2026-01-15T09:45+01:00");
    expect(plan.cover_off.time).toBe("2026-01-15T09:50+01:00");
    expect(plan.plug_in?.at_h).toBeLessThan(plan.unplug.at_h);
    expect(plan.chance).toBeGreaterThanOrEqual(plan.wanted_chance);
  });

  test("tells what it hangs on, and what would happen", () => {
    expect(plan.criteria.map((c) => c.id)).toContain(plan.weakest);
    expect(plan.happenings.map((h) => h.do)).toEqual(["plug_in", "unplug", "cover_off"]);
    expect(plan.late.length).toBeGreaterThan(0);
    for (const { chance } of plan.late) expect(chance).toBeLessThanOrEqual(plan.chance);
    expect(plan.cautions.length).toBeGreaterThan(0);
  });

  test("shows the course of every part: ordered bands, cylinders for barrels, heads the colder, surface the hotter", () => {
    const { time_h, parts } = plan.course;
    for (const { p05_c, p50_c, p95_c } of Object.values(parts)) {
      expect(p05_c.length).toBe(time_h.length);
      for (let s = 0; s < time_h.length; s++) {
        expect(p05_c[s]).toBeLessThanOrEqual(p50_c[s]);
        expect(p50_c[s]).toBeLessThanOrEqual(p95_c[s]);
      }
    }
    expect(Object.keys(parts)).toEqual(
      expect.arrayContaining([
        "oil",
        "sump",
        "crankcase",
        "crankshaft",
        "cylinders",
        "heads",
        "battery",
        "heater_surface",
        "cowl_air",
        "outside_air",
      ]),
    );
    expect(parts.barrels).toBeUndefined();
    const elements = Object.keys(parts).filter((name) => name.startsWith("heater:"));
    expect(elements.length).toBe(3);
    for (let s = 0; s < time_h.length; s++) {
      expect(parts.heads.p95_c[s]).toBeLessThanOrEqual(
        Math.min(parts.heads_front.p95_c[s], parts.heads_rear.p95_c[s]) + 1e-9,
      );
      const hottest = Math.max(...elements.map((name) => parts[name].p05_c[s]));
      expect(parts.heater_surface.p05_c[s]).toBeGreaterThanOrEqual(hottest - 1e-9);
    }
  });

  test("gives values in degrees Celsius and differences in kelvins", () => {
    const oil = plan.criteria.find((c) => c.id === "oil");
    const evenness = plan.criteria.find((c) => c.id === "evenness");
    expect(oil).toMatchObject({ unit: "c", limit: -6, direction: "at-least" });
    expect(evenness).toMatchObject({ unit: "k", limit: 50, direction: "at-most" });
    expect(oil?.margin.p50).toBeCloseTo((oil?.value.p50 ?? 0) - -6, 1);
    const energy = plan.course.energy_kwh.p50;
    expect(plan.energy_kwh.p50).toBeCloseTo(energy[energy.length - 1], 3);
  });
});

test("a document that wants nothing cannot be planned", () => {
  const { want: _, ...wantless } = EXAMPLE;
  expect(planFromDocument(wantless)).toEqual({
    status: "refused",
    issues: [{ path: "want", expected: "a departure to plan for", received: "nothing" }],
  });
});

test("planning and simulating stop when told to", () => {
  expect(planFromDocument(EXAMPLE, { onProgress: () => false }).status).toBe("cancelled");
  expect(simulateFromDocument(EXAMPLE, { onProgress: () => false }).status).toBe("cancelled");
});

test("the same seed gives the same plan, another seed another", () => {
  const again = () => completed(simulateFromDocument(EXAMPLE));
  expect(again()).toEqual(again());
  expect(completed(simulateFromDocument(EXAMPLE, { overrides: { seed: 2 } })).course).not.toEqual(
    again().course,
  );
});

describe("a simulation", () => {
  const heaters = ["whole-engine-4"];
  const events = [
    { at_h: 2.25, do: "plug_in", heaters },
    { at_h: 6, do: "unplug", heaters },
  ];
  const simulation = completed(simulateFromDocument({ ...EXAMPLE, events }));

  test("is a document of its schema", () => {
    expect(simulationSchema.parse(JSON.parse(JSON.stringify(simulation)))).toEqual(simulation);
  });

  test("has the moments of its events among its times and counts energy only while something is on", () => {
    const { time_h, energy_kwh } = simulation.course;
    expect(time_h).toContain(2.25);
    const at = (hour: number) => energy_kwh.p50[time_h.indexOf(hour)];
    expect(at(2)).toBe(0);
    expect(at(6)).toBeCloseTo(0.4 * 3.75, 1);
    expect(at(20)).toBe(at(6));
  });

  test("warms the oil while heated and cools it after", () => {
    const { time_h, parts } = simulation.course;
    const at = (hour: number) => parts.oil.p50_c[time_h.indexOf(hour)];
    expect(at(6)).toBeGreaterThan(at(2.25) + 10);
    expect(at(20)).toBeLessThan(at(6));
  });
});

describe("an explanation", () => {
  const explanation = completed(explainFromDocument(EXAMPLE));
  const { heating, at_departure } = explanation;

  test("is a document of its schema", () => {
    expect(explanationSchema.parse(JSON.parse(JSON.stringify(explanation)))).toEqual(explanation);
  });

  test("balances: what each part takes in and gives off is what it stores", () => {
    for (const moment of [heating, at_departure]) {
      if (moment === null) throw new Error("missing heating");
      const inflow = new Map(moment.stored.map(({ part }) => [part, 0]));
      for (const { from, to, heat_w } of moment.flows) {
        if (inflow.has(from)) inflow.set(from, (inflow.get(from) ?? 0) - heat_w);
        if (inflow.has(to)) inflow.set(to, (inflow.get(to) ?? 0) + heat_w);
      }
      const elements = moment.stored.filter(({ part }) => part.startsWith("heater:"));
      for (const { part, heat_w } of moment.stored) {
        if (!part.startsWith("heater:")) expect(inflow.get(part)).toBeCloseTo(heat_w, 0);
      }
      const fed = elements.reduce((sum, { part, heat_w }) => sum + heat_w - (inflow.get(part) ?? 0), 0);
      expect(fed).toBeCloseTo(moment.heaters_w, 0);
    }
  });

  test("heats before unplugging and not at the start", () => {
    expect(heating?.heaters_w).toBeGreaterThan(380);
    expect(heating?.heaters_w).toBeLessThan(420);
    expect(at_departure.heaters_w).toBe(0);
  });

  test("accounts for the air a duct blows in and out again", () => {
    const ducted = completed(
      explainFromDocument(EXAMPLE, { overrides: { heaters: ["ducted-electric-1500"] } }),
    );
    const flows = ducted.heating?.flows.filter(({ from }) => from === "supply_air") ?? [];
    expect(flows.map(({ to }) => to).sort()).toEqual(["cowl_air", "outside_air", "sump"]);
    expect(flows.reduce((sum, { heat_w }) => sum + heat_w, 0)).toBeCloseTo(ducted.heating?.heaters_w ?? 0, 0);
  });
});
