import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  COVERS,
  coverById,
  HEATERS,
  type Heater,
  heaterById,
  INSTALLATIONS,
  type Installation,
  installationById,
  type Kit,
} from "../../src/aircraft/index.js";
import {
  type Habit,
  type KitChoice,
  type KitComparisonDocument,
  type KitRuleDocument,
  kitComparisonSchema,
  type ReadKitComparison,
  type ReadWinter,
  readKitDocument,
  type Switching,
  type WinterStudyDocument,
  winterStudySchema,
} from "../../src/documents/index.js";
import { heaterScheduleOf } from "../../src/winter/heater-schedule.js";
import { kitComparison, kitInTheCold, piecesOf, winterStudy } from "../../src/winter/index.js";
import type { LeadTable } from "../../src/winter/lead-table.js";
import type { HabitResult } from "../../src/winter/piece.js";
import { attendedTime, habitRefused } from "../../src/winter/switching.js";
import { runs } from "../tiers.js";
import { readWinter } from "./small-winter.js";

// What is recommended keeps to the limits that the catalogue has for its heaters, whatever was worked out: a checker reads
// results as anybody would, and the same checker finds results whose heater had its limits lifted.

const SEED = Number(process.env.SEED ?? 20_261_130);
const TIME = 1e-2;

/** The catalogue's own record, whatever a result was made with. */
const trueHeaters = (kit: { readonly heaters: readonly { readonly id: string }[] }) =>
  kit.heaters.map(({ id }) => heaterById(id));
const least = (heaters: readonly Heater[]) => Math.max(0, ...heaters.map((h) => h.least_on_h));
const longest = (heaters: readonly Heater[]) => Math.min(...heaters.map((h) => h.longest_on_h));
const pause = (heaters: readonly Heater[]) =>
  Math.max(0, ...heaters.map((h) => h.procedure?.pause_min ?? 0)) / 60;

interface Setting {
  readonly installation: Installation;
  readonly place: "ramp" | "hangar";
}

/** What keeps heaters from being recommended at all. */
function never(heaters: readonly Heater[], { installation, place }: Setting): string[] {
  return heaters.flatMap((h) => [
    ...(h.runs === "outdoors" && place === "hangar" ? [`${h.id} indoors`] : []),
    ...((h.displacement_least_l ?? 0) > installation.displacement_l ? [`${h.id} too big`] : []),
    ...(h.rejected === undefined ? [] : [`${h.id} rejected`]),
  ]);
}

/** Broken rules of a kit comparison. */
function kitFaults(result: KitComparisonDocument, setting: Setting): string[] {
  return result.kits.flatMap((kit, k) => {
    const heaters = trueHeaters(kit);
    const forbidden = never(heaters, setting);
    const faults = result.ranking.includes(k) ? forbidden : [];
    const indoors = forbidden.filter((text) => /indoors|too big/.test(text));
    if (indoors.length > 0 && (kit.cases.length > 0 || kit.tonight !== null))
      faults.push("barred, and worked out");
    for (const { status, aim, lead_h, chance, warm_chance, attended_h, cost } of kit.cases) {
      if (status !== "not-reached" && chance < result.wanted_chance)
        faults.push("ready below the wanted chance");
      if (status === "ready" && aim === "warm-through" && warm_chance < result.wanted_chance)
        faults.push("warm through below the wanted chance");
      if (status === "not-required" && lead_h !== null) faults.push("not required, and plugged in");
      if (lead_h === null) continue;
      const on = lead_h - kit.unplug_before_min / 60;
      if (on < least(heaters) - TIME) faults.push(`${on} h on, ${least(heaters)} h at least`);
      if (on > longest(heaters) + TIME) faults.push(`${on} h on, ${longest(heaters)} h at most`);
      if (kit.unplug_before_min / 60 < pause(heaters) - TIME) faults.push("no pause");
      const attended = heaters.some((h) => h.attended);
      if (attended && attended_h < on + pause(heaters) - TIME) faults.push("nobody's time counted");
      if (attended_h > 0 && !(cost.attended > 0)) faults.push("nobody's time paid");
    }
    return faults;
  });
}

/** Broken rules of a winter. */
function winterFaults(study: WinterStudyDocument, setting: Setting): string[] {
  const ranked = new Set(study.ranking);
  return study.rows.flatMap((row, i) => {
    const heaters = trueHeaters(study.kits[row.kit]!);
    const habit = study.habits[row.habit]!.do;
    const faults: string[] = [];
    if (ranked.has(i)) {
      faults.push(...never(heaters, setting));
      if (row.refused !== "") faults.push("refused, and ranked");
      if (habit === "always_on") faults.push("always on ranked");
      if (row.longest_on_h > longest(heaters) + 0.06) faults.push("over the longest time");
    }
    if (row.refused !== "" || row.heater_h.p50 === 0) return faults;
    if (row.shortest_on_h < least(heaters) - TIME) faults.push("under the shortest time");
    if (habit !== "always_on" && row.longest_on_h > longest(heaters) + 0.06)
      faults.push("a lead over the longest time");
    if (heaters.some((h) => h.attended)) {
      if (row.attended_h.p50 < row.heater_h.p50 - 0.06) faults.push("nobody's time counted");
      if (!(row.attended_money.p50 > 0)) faults.push("nobody's time paid");
      if (row.winter_cost !== null && row.winter_cost.p50 < row.attended_money.p50 - 0.02)
        faults.push("time not in the cost");
    }
    return faults;
  });
}

const switching = fc.constantFrom<Switching>("by_hand", "mains_timer", "local_network", "phone_network");
const heatersFor = (cylinders: number) =>
  HEATERS.filter((h) => h.cylinders === undefined || h.cylinders === cylinders).map(({ id }) => id);

/** An aircraft, and kits that fit it. */
const kitsOf = (most: number) =>
  fc.constantFrom(...INSTALLATIONS.map(({ id }) => id)).chain((aircraft) =>
    fc.record({
      aircraft: fc.constant(aircraft),
      place: fc.constantFrom("ramp" as const, "hangar" as const),
      kits: fc.array(
        fc.record({
          heaters: fc.uniqueArray(fc.constantFrom(...heatersFor(installationById(aircraft).cylinders)), {
            maxLength: 2,
          }),
          covers: fc.subarray(
            COVERS.slice(0, 2).map(({ id }) => id),
            { maxLength: 1 },
          ),
          switching,
          price: fc.option(fc.integer({ min: 0, max: 3000 }), { nil: undefined }),
        }),
        { minLength: 1, maxLength: most },
      ),
    }),
  );

type Standing = { readonly aircraft: string; readonly place: "ramp" | "hangar" };

/** As a document has it; a hangar cold enough for heat to be needed. */
const standing = ({ aircraft, place }: Standing) => ({
  ...{ aircraft, place },
  ...(place === "hangar" ? { hangar: { air_c: -12 } } : {}),
});

const settingOf = ({ aircraft, place }: Standing): Setting => ({
  installation: installationById(aircraft),
  place,
});

type Choice = Pick<KitChoice, "switching" | "price"> & {
  heaters: readonly string[];
  covers: readonly string[];
};

/** No second duct: the network has room for one. */
const oneDuct = ({ heaters }: Choice) =>
  heaters.filter((id) => heaterById(id).duct !== undefined).length <= 1;

const named = (kits: readonly Choice[]) =>
  kits.map(({ price, ...kit }, i) => ({
    ...kit,
    name: `kit ${i}`,
    ...(price === undefined ? {} : { price }),
  }));

function readKits(document: object): ReadKitComparison {
  const reading = readKitDocument({ soakline: 2, kind: "kit", name: "any", ...document });
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading;
}

const compared = (read: ReadKitComparison) =>
  kitComparison(
    read,
    read.kits.map((choice) => ({ cases: kitInTheCold(read, choice), tonight: null })),
  );

/** A kit whose heaters may all at once. */
function lifted(kit: Kit): Kit {
  const heaters = kit.heaters.map(({ displacement_least_l: _, rejected: __, procedure: ___, ...heater }) => ({
    ...heater,
    least_on_h: 0.25,
    longest_on_h: 1000,
    attended: false,
    runs: "anywhere" as const,
  }));
  return { ...kit, heaters };
}

describe("kits side by side", () => {
  const cases = fc.array(
    fc.record({ air_c: fc.integer({ min: -45, max: 5 }), wind_mps: fc.constantFrom(0, 3, 8) }),
    { minLength: 1, maxLength: 2 },
  );

  test("random aircraft, kits and cold cases keep to every limit", { timeout: 300_000 }, () => {
    fc.assert(
      fc.property(
        kitsOf(2),
        cases,
        fc.constantFrom(0.7, 0.9),
        fc.integer({ min: 0, max: 30 }),
        (choice, cold, chance, unplug) => {
          fc.pre(choice.kits.every(oneDuct));
          const read = readKits({
            ...standing(choice),
            ...{ kits: named(choice.kits), cases: cold, chance },
            ...{ unplug_before_min: unplug, ensemble: { members: 20, seed: 1 } },
          });
          const result = kitComparisonSchema.parse(compared(read));
          expect(kitFaults(result, settingOf(choice))).toEqual([]);
        },
      ),
      { seed: SEED, numRuns: runs(100, 600), verbose: 1 },
    );
  });

  test.each([
    ["ducted-fuel-12000", "ramp", "four-carburettor-160", -12, /0\.25 h on, 0\.5 h at least|nobody's time/],
    ["ducted-fuel-12000", "hangar", "four-carburettor-160", -12, /indoors/],
    ["ducted-fuel-12000", "ramp", "two-light-60", -12, /too big/],
    ["in-cowl-400", "ramp", "four-carburettor-160", -10, /rejected/],
  ] as const)(
    "the checker finds %s on the %s of %s with its limits lifted",
    (id, place, aircraft, air_c, fault) => {
      const read = readKits({
        ...standing({ aircraft, place }),
        ...{ cases: [{ air_c, wind_mps: 0 }], ensemble: { members: 20, seed: 1 } },
        kits: [{ name: "cart", heaters: [id], covers: ["insulated-cover"], switching: "by_hand" }],
      });
      const without = { ...read, kits: read.kits.map((choice) => ({ ...choice, kit: lifted(choice.kit) })) };
      const setting = { installation: read.installation, place };
      expect(kitFaults(compared(read), setting)).toEqual([]);
      expect(kitFaults(compared(without), setting).join()).toMatch(fault);
    },
  );
});

describe("winters", () => {
  const base = readWinter({
    habits: [
      { do: "always_on" },
      { do: "clock", lead_h: 0.5 },
      { do: "clock", lead_h: 3 },
      { do: "clock", from: "05:00", until: "09:00" },
      { do: "planned" },
    ],
    ensemble: { members: 2, seed: 1 },
  });
  const habits = fc.subarray([...base.habits], { minLength: 1 });
  const results = fc.record({
    ready: fc.double({ min: 0, max: 1, noNaN: true }),
    energy: fc.double({ min: 0, max: 3e9, noNaN: true }),
    wet: fc.double({ min: 0, max: 1e7, noNaN: true }),
  });
  /** Any leads that a table might hold, far beyond all limits too. */
  const tables = fc
    .tuple(fc.double({ min: -3600, max: 40 * 3600, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }))
    .map(([lead, chance]): LeadTable => ({ at: () => ({ lead, chance }), cases: [] }));

  /** A study whose heaters were on as the habits have it; what a season would find is drawn. */
  function studyOf(
    read: ReadWinter,
    table: LeadTable,
    found: { ready: number; energy: number; wet: number },
  ) {
    const { length } = read.departures;
    const forecasts = read.departures.map(() => ({ tempAir: 258, windSpeed: 2 }));
    return winterStudy(
      read,
      piecesOf(read).map((piece) => {
        const choice = read.kits[piece.kit]!;
        return {
          ...piece,
          habits: read.habits.map((habit: Habit): HabitResult => {
            const refused = habitRefused(choice, habit, read);
            const { on, attended } =
              refused === ""
                ? happened(read, choice, habit, forecasts, table)
                : { on: [] as readonly number[], attended: 0 };
            const list = refused === "" ? [0, 1, 2].map(() => 1) : [];
            return {
              ...{
                refused,
                attendedTime: attended,
                failing: {},
                months: {},
                tooHot: 0,
                givenUp: 0,
                breatherFrost: 0,
              },
              heaterTime: on.reduce((sum, one) => sum + one, 0),
              longestOn: Math.max(0, ...on),
              shortestOn: on.length === 0 ? 0 : Math.min(...on),
              switchOns: on.length,
              ready: list.map(() => Math.round(found.ready * length)),
              warm: list.map(() => 0),
              energy: list.map(() => found.energy),
              ...{
                fuel: list.map(() => 0),
                hottestSurface: list.map(() => 300),
                hottestFilm: list.map(() => 300),
              },
              ...{ wetTime: found.wet, frostTime: 0 },
            };
          }),
        };
      }),
    );
  }

  function happened(
    read: ReadWinter,
    choice: KitChoice,
    habit: Habit,
    forecasts: readonly { tempAir: number; windSpeed: number }[],
    table: LeadTable,
  ) {
    const on = heaterScheduleOf(read, choice, habit, forecasts, table).on.map(({ from, to }) => to - from);
    return { on, attended: on.reduce((sum, one) => sum + attendedTime(choice, one), 0) };
  }

  const choiceOf = ({ heaters, covers, ...rest }: Choice, i: number): KitChoice => ({
    ...rest,
    name: `kit ${i}`,
    kit: { heaters: heaters.map(heaterById), covers: covers.map(coverById) },
    yearlyCost: 0,
    heaterLife: undefined,
  });

  test("random aircraft, kits, habits and leads: nothing beyond a limit is ranked", {
    timeout: 120_000,
  }, () => {
    fc.assert(
      fc.property(kitsOf(3), habits, tables, results, (choice, wanted, table, found) => {
        fc.pre(choice.kits.every(oneDuct));
        const setting = settingOf(choice);
        const against = { kit: 0, habit: 0 };
        const read = { ...base, ...setting, kits: choice.kits.map(choiceOf), habits: wanted, against };
        const study = winterStudySchema.parse(studyOf(read, table, found));
        expect(winterFaults(study, setting)).toEqual([]);
      }),
      { seed: SEED, numRuns: runs(300, 2000), verbose: 1 },
    );
  });

  test("the checker finds a study whose burner had its limits lifted", () => {
    const read = readWinter({
      kits: [{ name: "cart", heaters: ["ducted-fuel-12000"], covers: [], switching: "by_hand" }],
      habits: [{ do: "always_on" }, { do: "planned" }],
      ensemble: { members: 2, seed: 1 },
    });
    const without = { ...read, kits: read.kits.map((choice) => ({ ...choice, kit: lifted(choice.kit) })) };
    const short: LeadTable = { at: () => ({ lead: 1900, chance: 1 }), cases: [] };
    const found = { ready: 1, energy: 1e9, wet: 1e6 };
    expect(winterFaults(studyOf(read, short, found), base)).toEqual([]);
    const faults = winterFaults(studyOf(without, short, found), base).join();
    expect(faults).toMatch(/under the shortest time/);
    expect(faults).toMatch(/nobody's time counted/);
  });

  test("always on stands unadvised with the maker's longest time beside it, and a dear hour keeps the burner down", () => {
    const read = readWinter({
      kits: [
        { name: "pad", heaters: ["sump-pad-220"], covers: ["insulated-cover"], switching: "local_network" },
        { name: "cart", heaters: ["ducted-fuel-12000"], covers: [], switching: "by_hand" },
      ],
      ensemble: { members: 2, seed: 1 },
    });
    const table: LeadTable = { at: () => ({ lead: 3 * 3600, chance: 1 }), cases: [] };
    const study = studyOf(read, table, { ready: 1, energy: 1e8, wet: 1e6 });
    const rules = (i: number) => study.rows[i]!.not_advised.map(({ rule }: KitRuleDocument) => rule);
    expect(rules(0)).toEqual(["longest-on", "always-on"]);
    expect(study.ranking).not.toContain(0);
    // The cart costs its hours: equal in all else it comes last.
    expect(study.kits[study.rows[study.ranking.at(-1)!]!.kit]!.name).toBe("cart");
    expect(study.rows[study.ranking.at(-1)!]!.attended_money.p50).toBeGreaterThan(100);
  });
});
