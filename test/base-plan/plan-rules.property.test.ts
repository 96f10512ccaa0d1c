import fc from "fast-check";
import { expect, test } from "vitest";
import { heaterById } from "../../src/aircraft/index.js";
import { type BaseDocument, type BasePlanDocument, basePlanFromDocument } from "../../src/index.js";
import { solveMilp } from "../../src/node/index.js";
import { english } from "../../src/words/index.js";
import { runs } from "../tiers.js";
import { planned } from "./example-base.js";
import { idleOutlets } from "./idle-outlets.js";
import { brokenRules } from "./plan-rules.js";
import { randomPlanned } from "./random-plans.js";
import { twoTrainers } from "./two-trainers.js";

const CASES = { seed: 20261130, numRuns: runs(150, 1000, process.env.BASE_PLAN_RUNS) };

test("no plan of a random small base breaks a rule, and no outlet is idle beside who could use it", async () => {
  const seen = { heated: 0, missed: 0, warm: 0, watched: 0, carted: 0, inside: 0 };
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 1, max: 2 ** 30 }), async (seed) => {
      const asked = randomPlanned(seed);
      const outcome = await basePlanFromDocument(asked, { solveMilp });
      if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
      const { aircraft } = outcome.result;
      expect(brokenRules(asked, outcome.result)).toEqual([]);
      expect(idleOutlets(asked, outcome.result)).toEqual([]);
      if (aircraft.some((r) => r.heat.length > 0)) seen.heated++;
      if (aircraft.some((r) => r.status === "missed")) seen.missed++;
      if (aircraft.some((r) => r.aim === "warm-through")) seen.warm++;
      if (aircraft.some((r) => r.somebody_stays)) seen.watched++;
      if (aircraft.some((r) => r.cart !== null)) seen.carted++;
      if (aircraft.some((r) => r.hangar !== null && r.heat.length > 0)) seen.inside++;
    }),
    CASES,
  );
  // The cases are worth something: each rule has cases in which it could be broken.
  for (const [what, count] of Object.entries(seen)) expect(count, what).toBeGreaterThan(CASES.numRuns / 100);
}, 900_000);

/** A plan made with some limits of a heater of the catalogue lifted; it is judged by the true ones. */
async function plannedWithLifted(asked: BaseDocument, id: string, lifted: object): Promise<BasePlanDocument> {
  const record = heaterById(id);
  const truth = { ...record };
  Object.assign(record, lifted);
  try {
    return await planned(asked);
  } finally {
    Object.assign(record, truth);
  }
}

const COLD = {
  air: [-14, -16],
  departures: [8],
  chance: 0.7,
  members: 20,
  engine: "four-carburettor-160",
} as const;

test.each([
  [
    "hot air beyond its longest time",
    "ducted-electric-1500",
    { longest_on_h: 24 },
    { air: [-26, -26] },
    /longest 4 h/,
  ],
  [
    "hot air of a few minutes",
    "ducted-fuel-12000",
    { least_on_h: 0.02 },
    { air: [-9, -9] },
    /blows for .* only/,
  ],
  ["a burner inside", "ducted-fuel-12000", { runs: "anywhere" }, { inside: true }, /runs in the hangar/],
  [
    "no pause before the start",
    "ducted-fuel-12000",
    { procedure: undefined },
    { unplugBefore: 0 },
    /0 min before the start/,
  ],
] as const)(
  "the rules see %s, where the planner was told otherwise",
  async (_, id, lifted, change, broken) => {
    const base = twoTrainers({ ...COLD, ...change, heater: id });
    const asked = "inside" in change ? insideOf(base) : base;
    const honest = await planned(asked);
    expect(brokenRules(asked, honest)).toEqual([]);
    const cheated = await plannedWithLifted(asked, id, lifted);
    expect(brokenRules(asked, cheated).join("; ")).toMatch(broken);
  },
);

/** The same in a hangar that is as cold as it is outside, and started as soon as it is unplugged. */
function insideOf(asked: BaseDocument): BaseDocument {
  return {
    ...asked,
    hangar: { air_c: -16, bays: 2, move_min: 0 },
    aircraft: asked.aircraft.map((one) =>
      typeof one.scenario === "string" ? one : { ...one, scenario: { ...one.scenario, place: "hangar" } },
    ),
  };
}

test("the rules see a load above 80 %, a watched heater alone, a tick below the chance and a cross without a reason", async () => {
  const asked = { ...twoTrainers({ ...COLD, departures: [8, 8] }), circuits: [circuit(2)] };
  const broken = async (cheat: BaseDocument) => brokenRules(asked, await planned(cheat)).join("; ");
  expect(await broken(asked)).toBe("");
  expect(await broken({ ...asked, circuits: [{ ...circuit(2), continuous_share: 1 }] })).toMatch(
    /carries .* A of/,
  );

  const alone = {
    ...twoTrainers({ ...COLD, heater: "ducted-electric-1500" }),
    people: [{ from: "2026-01-14T20:00+01:00", to: "2026-01-14T21:00+01:00", count: 1 }],
  };
  const anyHour = { ...alone };
  Reflect.deleteProperty(anyHour, "people");
  expect(brokenRules(alone, await planned(alone))).toEqual([]);
  expect(brokenRules(alone, await planned(anyHour)).join("; ")).toMatch(/to be watched at/);

  const plan = await planned(asked);
  const changed = (change: Partial<BasePlanDocument["aircraft"][number]>): BasePlanDocument => ({
    ...plan,
    aircraft: plan.aircraft.map((row) => ({ ...row, ...change })),
  });
  expect(brokenRules(asked, changed({ chance: 0.3 })).join("; ")).toMatch(/ticked with 0.3/);
  expect(brokenRules(asked, changed({ status: "missed" })).join("; ")).toMatch(/cross without its reason/);
});

function circuit(outlets: number) {
  return { id: "ramp", name: "Ramp", limit_a: 3.6, voltage_v: 230, outlets };
}

test("two trainers, one outlet: the second has it before and after the first, and its true reason", async () => {
  const asked = twoTrainers({ air: [-23.5, -28.5], departures: [12, 13.8] });
  const plan = await planned(asked);
  const [teal, wigeon] = plan.aircraft;
  expect(teal.status).toBe("ready");
  expect(wigeon.status).toBe("missed");
  // Before, the outlet was idle from the first's unplugging on, and the second had 0 or 5 %.
  expect(wigeon.chance).toBeGreaterThan(0.7);
  expect(wigeon.heat.length).toBe(2);
  expect(wigeon.explanation.map(english).join(" ")).toMatch(/because Teal has the outlet of Ramp/);
  expect(idleOutlets(asked, plan)).toEqual([]);
  const idle = {
    ...plan,
    aircraft: [teal, { ...wigeon, chance: 0.05, heat: wigeon.heat.slice(1) }],
  };
  expect(idleOutlets(asked, idle).join("; ")).toMatch(/ramp is idle: t1 has 0.05 and could have/);
});

test("where the outlet alone would not do, its own heat is named, and what is best with it", async () => {
  const plan = await planned(twoTrainers({ engine: "four-carburettor-160", heater: "sump-pad-220" }));
  for (const { name, explanation } of plan.aircraft) {
    expect(english(explanation[0]!)).toMatch(
      new RegExp(
        `^${name} is not ready for .*its own heat is not enough, even with the base to itself: at best [1-3] in 10`,
      ),
    );
  }
});
