import { describe, expect, test } from "vitest";
import { INSTALLATIONS, type Installation, installationById, PART_NAMES } from "../../src/aircraft/index.js";
import { styleFor } from "../../src/cli/style.js";
import { criteriaTable } from "../../src/cli/text/criteria-text.js";
import { criteriaDocument } from "../../src/documents/criterion-document.js";
import { finding } from "../../src/findings/index.js";
import { readyTimes } from "../../src/planning/stay.js";
import { type CriterionMaker, lowest } from "../../src/readiness/criterion.js";
import {
  allCriteria,
  type Criterion,
  type EnsembleState,
  isGating,
  judge,
  marginMeasure,
  temperatureCriteria,
} from "../../src/readiness/index.js";
import { crankingTry } from "../../src/starting/cranking.js";
import { fuelStart } from "../../src/starting/fuel-start.js";
import { bearingIndex, crankingModel, crankingSpread, pistonIndex } from "../../src/starting/index.js";
import { kelvinFromCelsius, RADIANS_PER_SECOND_OF_RPM } from "../../src/units/index.js";
import { english, sayIn } from "../../src/words/index.js";

/** What a start needs beyond warm parts. */
function startCriteria(installation: Installation, options: { charge?: number } = {}): Criterion[] {
  const before = temperatureCriteria(installation, KIT).length;
  return allCriteria(installation, KIT, {}, options).slice(before);
}

const all = INSTALLATIONS.map((i): [string, Installation] => [i.id, i]);
const reference = installationById("four-carburettor-160");
const KIT = { heaters: [], covers: [] };
const MEMBERS = 200;
const k = kelvinFromCelsius;

/** All parts at one temperature [°C], some at another. */
function uniform(celsius: number, others: Record<string, number> = {}, members = MEMBERS): EnsembleState {
  const temps = new Float64Array(PART_NAMES.length * members);
  PART_NAMES.forEach((part, i) => {
    temps.fill(k(others[part] ?? celsius), i * members, (i + 1) * members);
  });
  return { temps, parts: PART_NAMES, members };
}

function valuesOf(criteria: readonly Criterion[], id: string, state: EnsembleState): Float64Array {
  const criterion = criteria.find((c) => c.id === id);
  if (criterion === undefined) throw new Error(`no criterion ${id}`);
  const out = new Float64Array(state.members);
  criterion.values(state, out);
  return out;
}

describe("criteria of a start", () => {
  test.each(all)(
    "%s: ids are unique, each has a reason, a source and finite values from deep cold to shut-down",
    (_, installation) => {
      const criteria = allCriteria(installation, KIT);
      expect(new Set(criteria.map((c) => c.id)).size).toBe(criteria.length);
      for (const { reason, source, limit } of criteria) {
        expect(english(reason).length).toBeGreaterThan(20);
        expect(String(source).length).toBeGreaterThan(20);
        expect(Number.isFinite(limit)).toBe(true);
      }
      for (const celsius of [-70, -40, -20, 0, 20, 80, 180]) {
        for (const { id } of criteria) {
          const values = valuesOf(criteria, id, uniform(celsius));
          expect(values.every(Number.isFinite), `${id} at ${celsius} °C`).toBe(true);
        }
      }
    },
  );

  test.each(all)("%s: mild days pass, deep cold fails, a cold battery alone is named", (_, installation) => {
    const criteria = startCriteria(installation);
    expect(judge(criteria, uniform(10)).chance).toBeGreaterThan(0.98);
    expect(judge(criteria, uniform(0)).chance).toBeGreaterThan(0.85);
    expect(judge(criteria, uniform(-30)).chance).toBe(0);
    const cold = judge(criteria, uniform(15, { battery: -42 }));
    expect(cold.chance).toBe(0);
    expect(["cranking-speed", "battery"]).toContain(cold.weakest.criterion.id);
  });

  test("grade 100 oil at -15 °C cannot be cranked, at -20 °C not pumped either; 15W-50 passes at 0 °C", () => {
    const straight = startCriteria({ ...reference, oil: { quantity_l: 5.5, oil_id: "sae-50" } });
    const failing = (celsius: number, criteria = straight) =>
      judge(criteria, uniform(celsius))
        .criteria.filter((v) => isGating(v.criterion) && v.chance < 0.5)
        .map((v) => v.criterion.id);
    expect(failing(-15)).toEqual(["oil-crank", "cranking-speed"]);
    expect(failing(-20)).toEqual(["oil-pump", "oil-crank", "cranking-speed"]);
    expect(failing(0, startCriteria(reference))).toEqual([]);
  });

  test("oil in the sump decides about pumping, barrels and shaft about the films", () => {
    const straight = startCriteria({ ...reference, oil: { quantity_l: 5.5, oil_id: "sae-50" } });
    expect(valuesOf(straight, "oil-pump", uniform(20, { oil: -19 }))[0]).toBeCloseTo(k(-19), 9);
    expect(valuesOf(straight, "oil-crank", uniform(20, { crankshaft: -12 }))[0]).toBeCloseTo(k(-12), 9);
  });
});

describe("values are those of the models", () => {
  const criteria = startCriteria(reference);
  const state = uniform(-8, { barrels: -12, crankshaft: -5, oil: 3, battery: -15, crankcase: -9 });

  test("cranking speed and tries, member by member with its own spread", () => {
    const model = crankingModel(reference);
    const speeds = valuesOf(criteria, "cranking-speed", state);
    const tries = valuesOf(criteria, "tries", state);
    for (const m of [0, 17, MEMBERS - 1]) {
      const spread = crankingSpread(m);
      const speed = model.speed(k(-12), k(-5), k(3), k(-15), spread);
      expect(speeds[m]).toBe(speed);
      expect(tries[m]).toBe(model.tries(model.current(speed, k(-15), spread), k(-15)));
    }
    expect(new Set(speeds).size).toBe(MEMBERS);
  });

  test("a single member is the middle estimate", () => {
    const one = uniform(-8, {}, 1);
    const temps = { barrels: k(-8), crankshaft: k(-8), oil: k(-8), battery: k(-8) };
    expect(valuesOf(criteria, "cranking-speed", one)[0]).toBe(crankingTry(reference, temps).speed);
  });

  test("fuel at the coldest head", () => {
    const heads = uniform(0, { heads_front: -18, heads_rear: -10 });
    const { vapourFraction, offeredRatio } = fuelStart(reference.fuel, k(-18));
    expect(valuesOf(criteria, "fuel-vapour", heads)[0]).toBeCloseTo(vapourFraction, 6);
    expect(valuesOf(criteria, "fuel-offered", heads)[0]).toBeCloseTo(offeredRatio, 4);
  });

  test("clearance indices, whose limit is their value at the maker's preheat limit", () => {
    expect(valuesOf(criteria, "bearing-clearance", state)[0]).toBeCloseTo(
      bearingIndex(reference, k(-9), k(-5))!,
      3,
    );
    expect(valuesOf(criteria, "piston-clearance", state)[0]).toBeCloseTo(pistonIndex(reference, k(-12))!, 3);
    const maker = uniform(reference.limits.no_preheat_c);
    for (const id of ["bearing-clearance", "piston-clearance"]) {
      const criterion = criteria.find((c) => c.id === id)!;
      expect(valuesOf(criteria, id, maker)[0]).toBeCloseTo(criterion.limit, 3);
    }
  });

  test("a discharged battery is judged by the charge it has", () => {
    const empty = startCriteria(reference, { charge: 0.2 });
    const verdict = judge(empty, uniform(10, { battery: -18 }));
    const battery = verdict.criteria.find((v) => v.criterion.id === "battery")!;
    expect(battery.chance).toBe(0);
    expect(english(battery.criterion.reason)).toMatch(/battery 20 % charged/);
    expect(
      judge(criteria, uniform(10, { battery: -18 })).criteria.find((v) => v.criterion.id === "battery")!
        .chance,
    ).toBe(1);
  });
});

describe("advice", () => {
  test("never decides: not in the chance, not weakest, not in how long it stays ready", () => {
    const criteria = startCriteria(reference);
    const advice = criteria.filter((c) => c.advisory === true).map((c) => c.id);
    expect(advice).toEqual([
      "tries",
      "battery-charge",
      "fuel-offered",
      "plugs",
      "bearing-clearance",
      "piston-clearance",
    ]);
    const state = uniform(-3);
    const verdict = judge(criteria, state);
    const failing = verdict.criteria.filter((v) => v.chance === 0).map((v) => v.criterion.id);
    expect(failing).toEqual(["battery-charge", "plugs"]);
    expect(verdict.chance).toBeGreaterThan(0.95);
    expect(isGating(verdict.weakest.criterion)).toBe(true);

    const warm = temperatureCriteria(reference, KIT);
    const impossible: Criterion = { ...warm[0]!, id: "advice", limit: 1000, advisory: true };
    const course = {
      status: "completed" as const,
      remedy: "",
      time: Float64Array.of(0, 3600),
      parts: PART_NAMES,
      members: 1,
      temps: Float64Array.from([...uniform(0, {}, 1).temps, ...uniform(0, {}, 1).temps]),
      energy: new Float64Array(2),
    };
    expect(readyTimes(course, [...warm, impossible], 0)[0]).toBe(3600);
    const deciding: Criterion = { ...warm[0]!, id: "deciding", limit: 1000 };
    expect(readyTimes(course, [...warm, deciding], 0)[0]).toBe(0);
  });

  test("criteria that are all advice decide nothing", () => {
    const advice = startCriteria(reference).filter((c) => c.advisory === true);
    expect(() => judge(advice, uniform(0))).toThrow(/^missing criteria: none judged at the start/);
  });
});

test("margins are measured in the unit people use", () => {
  const criterion = (quantity: Criterion["quantity"]) => ({
    ...temperatureCriteria(reference, KIT)[0]!,
    quantity,
  });
  const text = (quantity: Criterion["quantity"], margin: number) => {
    const measured = marginMeasure(criterion(quantity), margin);
    return sayIn("en", { temp: "c", wind: "mps" }, english).measure(measured).replace("\u00a0", " ");
  };
  expect(text("temperature", -12.34)).toBe("-12.3 K");
  expect(text("rotational-speed", 25 * RADIANS_PER_SECOND_OF_RPM)).toBe("25 rpm");
  expect(text("fraction", 0.031)).toBe("3.1 %");
  expect(text("ratio", 1.26)).toBe("1.3 times");
  expect(text("index", -8.4)).toBe("-8 of 100");
  expect(text("count", 4)).toBe("4");
});

test("a criterion that is added is judged and told like the others", () => {
  const gap: CriterionMaker = ({ installation }) => [
    {
      ...lowest(
        {
          id: "gap",
          title: finding("own-words", { text: "starter's gearbox" }),
          reason: finding("own-words", { text: "its grease stiffens" }),
        },
        ["accessories"],
        k(installation.limits.no_preheat_c - 10),
        "made for a test",
      ),
    },
  ];
  const made = gap({ installation: reference, kit: KIT, stricter: {} });
  const verdict = judge([...allCriteria(reference, KIT), ...made], uniform(-30));
  const row = criteriaDocument(verdict).find(({ id }) => id === "gap");
  expect(row).toMatchObject({ unit: "c", direction: "at-least", chance: 0, value: { p50: -30 } });
  const table = criteriaTable(row === undefined ? [] : [row], 0.9, styleFor({ env: {}, isTty: false }));
  expect(table[1]).toMatch(/^!! starter's gearbox {17}.*-30.*>= -\d+/);
});
