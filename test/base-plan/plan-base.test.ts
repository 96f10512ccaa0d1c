import { expect, test } from "vitest";
import { finding } from "../../src/findings/index.js";
import {
  type BaseDocument,
  basePlanFromDocument,
  basePlanSchema,
  planFromDocument,
} from "../../src/index.js";
import { solveMilp } from "../../src/node/index.js";
import { english } from "../../src/words/index.js";
import { exampleBase, planned, rowOf, withAircraft } from "./example-base.js";

const EXAMPLE = exampleBase({ carts: [] });

/** [s] between two moments of a plan. */
function apart(a: { at_h: number } | null, b: { at_h: number } | null): number {
  if (a === null || b === null) return a === b ? 0 : Number.POSITIVE_INFINITY;
  return Math.abs(a.at_h - b.at_h) * 3600;
}

const shifted = (document: BaseDocument, kelvins: number): BaseDocument => ({
  ...document,
  weather: {
    ...document.weather,
    points: (document.weather.points ?? []).map((p) => ({
      ...p,
      air_c: p.air_c + kelvins,
      ...(p.dew_point_c === undefined ? {} : { dew_point_c: p.dew_point_c + kelvins }),
    })),
  },
});

test("four aircraft share two outlets and a bay: all ready, no limit exceeded, the answer fits its schema", async () => {
  const plan = await planned(EXAMPLE);
  expect(basePlanSchema.safeParse(plan).error).toBeUndefined();
  expect(plan.status).toBe("all-ready");
  for (const row of plan.aircraft) expect(row.chance).toBeGreaterThanOrEqual(row.wanted_chance);
  // Together is never surer than the least sure, and with one weather surer than if they had nothing in common.
  expect(plan.joint_chance).toBeLessThanOrEqual(Math.min(...plan.aircraft.map((row) => row.chance)));
  for (const circuit of plan.circuits) {
    expect(circuit.most_a).toBeLessThanOrEqual(circuit.limit_a);
    expect(Math.max(...circuit.outlets_used)).toBeLessThanOrEqual(circuit.outlets);
    expect(Math.max(...circuit.outlets_used)).toBe(2);
  }
  // Heat that is planned shows in the circuit's load at the same time.
  const lynx = rowOf(plan, "lynx");
  const [ramp] = plan.circuits;
  const during = ramp.time_h.findLastIndex((t) => t <= (lynx.heat[0]?.from.at_h ?? Number.NaN) + 0.1);
  expect(ramp.load_a[during]).toBeGreaterThanOrEqual(lynx.current_a);
  expect(lynx.current_a).toBeCloseTo(460 / 230, 1);
  // Nobody is there from 22 to 6: nothing is done by hand then.
  for (const task of plan.tasks.filter((t) => t.by === "base")) {
    expect(task.at_h <= 4 || task.at_h >= 12).toBe(true);
  }
  const sorted = [...plan.tasks].sort((a, b) => a.at_h - b.at_h);
  expect(plan.tasks).toEqual(sorted);
  for (const row of plan.aircraft) expect(row.explanation.length).toBeGreaterThan(0);
}, 120_000);

test("with one outlet something is missed; the lift that is named makes it possible when the base really has it", async () => {
  const tight = { ...EXAMPLE, circuits: [{ ...EXAMPLE.circuits[0], outlets: 1 }] };
  const plan = await planned(tight);
  expect(plan.status).toBe("missed");
  const missed = plan.aircraft.filter((row) => row.status === "missed").map((row) => row.id);
  const outlet = plan.lifts.find((lift) => english(lift.text).startsWith("outlet number 2"));
  expect(outlet).toBeDefined();
  const rescued = outlet?.rescues.map((r) => r.id) ?? [];
  for (const id of rescued) expect(missed).toContain(id);
  for (const id of missed)
    expect(rowOf(plan, id).explanation.map(english).join(" ")).toMatch(/is not ready for .* because/);
  const lifted = await planned(EXAMPLE);
  for (const id of rescued) expect(rowOf(lifted, id).status).toBe("ready");
  // Nothing but the limits stands in the way: alone, everyone would be ready.
  expect(plan.alone_totals.missed).toBe(0);
}, 180_000);

test("a small change of the forecast or of one departure changes little of what was told", async () => {
  // With its own departure nobody has to take turns: what is told hangs on nothing that is short by minutes.
  const early = withAircraft(EXAMPLE, "lynx", ({ want }) => ({ want: { ...want, departure: "09:30" } }));
  const roomy = withAircraft(early, "wren", ({ want }) => ({ want: { ...want, departure: "14:30" } }));
  const before = await planned(roomy);
  const told = before.aircraft.map((row) => row.told);
  const same = await planned({ ...roomy, told });
  expect(same.aircraft.map((row) => row.told)).toEqual(told);

  for (const kelvins of [-0.4, -0.2, 0.2, 0.4]) {
    const plan = await planned(shifted({ ...roomy, told }, kelvins));
    expect(plan.status).toBe("all-ready");
    for (const row of plan.aircraft) {
      const was = rowOf(before, row.id);
      expect(row.circuit).toBe(was.circuit);
      // Warm through takes hours of heat: a few tenths of a kelvin are worth up to two of them.
      expect(apart(row.plug_in, was.plug_in)).toBeLessThanOrEqual(7200);
      // Warmer than told: nothing has to change, so nothing does.
      if (kelvins > 0) expect(row.told).toEqual(was.told);
    }
  }

  const later = withAircraft({ ...roomy, told }, "lynx", ({ want }) => ({
    want: { ...want, departure: "09:40" },
  }));
  const plan = await planned(later);
  for (const id of ["heron", "marten"]) expect(rowOf(plan, id).told).toEqual(rowOf(before, id).told);
  // Its own heat stops early for others to have the outlet: ten minutes more of cooling cost up to an hour of heating.
  expect(apart(rowOf(plan, "lynx").plug_in, rowOf(before, "lynx").plug_in)).toBeLessThanOrEqual(3600);
}, 400_000);

test("alone on the base, an aircraft is planned as it is planned by itself", async () => {
  const heron = EXAMPLE.aircraft.filter((one) => one.id === "heron");
  const plan = await planned({ ...EXAMPLE, aircraft: heron, ensemble: { members: 200, seed: 1 } });
  const { soakline, start, zone, hours, weather, site } = EXAMPLE;
  const own = heron[0].scenario;
  const single = planFromDocument({
    ...(typeof own === "string" ? {} : own),
    ...{ soakline, start, zone, hours, weather, site, hangar: { air_c: 6 } },
    ensemble: { members: 200, seed: 1 },
  });
  if (single.status !== "completed") throw new Error(JSON.stringify(single));
  // Both count chances over cases of their own, which differ by a few hundredths, and only 40 cases look for the base's
  // course: three quarters of an hour of heating at most.
  // Warm through is at the edge of this night, so each may take it or leave it: the same line is compared.
  const { aim, plug_in } = plan.aircraft[0];
  const { least, warm_through } = single.result.lines;
  expect(apart(plug_in, (aim === "least" ? least : warm_through).plug_in)).toBeLessThanOrEqual(2700);
  expect(plan.aircraft[0].chance).toBeGreaterThanOrEqual(0.9);
}, 120_000);

test("planning can be stopped between its pieces of work", async () => {
  let calls = 0;
  const shares: number[] = [];
  const outcome = await basePlanFromDocument(EXAMPLE, {
    solveMilp,
    onProgress: (done) => {
      shares.push(done ?? 0);
      return ++calls < 4;
    },
  });
  expect(outcome).toEqual({ status: "cancelled", message: finding("was-stopped", {}) });
  expect(calls).toBe(4);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
}, 60_000);

test("a burner never runs in the hangar", async () => {
  const burner = { id: "cart", heater: "ducted-fuel-12000" };
  const plan = await planned({
    ...EXAMPLE,
    circuits: [{ ...EXAMPLE.circuits[0], outlets: 1 }],
    carts: [burner],
    people: [{ from: "2026-01-14T18:00+01:00", to: "2026-01-15T18:00+01:00", count: 4 }],
  });
  const carted = plan.aircraft.filter((row) => row.cart !== null);
  expect(carted.length).toBeGreaterThan(0);
  for (const { hangar, heat } of carted) {
    if (hangar === null) continue;
    const inside = { from: hangar.in?.at_h ?? 0, to: hangar.out.at_h };
    for (const block of heat) {
      expect(block.to.at_h <= inside.from || block.from.at_h >= inside.to).toBe(true);
    }
  }
}, 120_000);
