import fc from "fast-check";
import { expect, test } from "vitest";
import { timeLastAbove } from "../../src/airframe/crossing.js";
import { type ThawResult, thawAndDry } from "../../src/airframe/index.js";
import { GAP_LIMIT, heldBySkin, SKIN_LIMIT } from "../../src/airframe/thaw-statistics.js";
import { readThawDocument, type ThawDocument } from "../../src/documents/index.js";
import { runs } from "../tiers.js";

// Nothing is called thawed, clear or dry before the slowest thing that can hold it is: over random thaw documents.

/** What must not come before what, in every quantile and every case. */
const ORDER = [
  ["skinClear", "skinDry"],
  ["skinClear", "gapsThawed"],
  ["skinDry", "gapsDry"],
  ["gapsThawed", "gapsDry"],
] as const;

type Times = Pick<ThawResult, "skinClear" | "skinDry" | "gapsThawed" | "gapsDry" | "cases">;

/** Every place where a result breaks the rule; empty when it keeps it. */
function faultsOf(result: Times): string[] {
  const faults: string[] = [];
  const at = (time: number | undefined) => time ?? Number.POSITIVE_INFINITY;
  for (const [first, then] of ORDER) {
    for (const quantile of ["low", "middle", "high"] as const)
      if (at(result[then][quantile]) < at(result[first][quantile])) faults.push(`${then} ${quantile}`);
    if (result[then].share > result[first].share) faults.push(`${then} share`);
    result.cases[then].forEach((time, m) => {
      if (time < result.cases[first][m]!) faults.push(`${then} case ${m}`);
    });
  }
  return faults;
}

/** Samples at which something still lies on a wing that is called clear, or dry, in every case. */
function dirtyWings({ cases, series }: ThawResult): number[] {
  const clear = Math.max(...cases.skinClear);
  const dry = Math.max(...cases.skinDry);
  return [...series.time.keys()].filter((s) => {
    const ice = series.ice.high[s]!;
    const water = Math.max(series.waterUpper.high[s]!, series.waterLower.high[s]!);
    return (series.time[s]! >= clear && ice > SKIN_LIMIT) || (series.time[s]! >= dry && water > SKIN_LIMIT);
  });
}

/** [s] when the gap's own ice is gone, whatever lies around it; of the middle case. */
function ownThaw({ series }: ThawResult): number {
  return timeLastAbove(series.time, series.gapIce.middle, GAP_LIMIT);
}

/** Evenly spread: `fc.double` is dense near zero, where neither snow nor water lies. */
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((part) => min + (part / 10_000) * (max - min));

const documents: fc.Arbitrary<ThawDocument> = fc
  .record({
    air: between(-25, 3),
    depression: between(0, 8),
    hours: between(0.5, 4),
    snow: fc.option(
      fc.record({
        kind: fc.constantFrom("new", "settled", "wet", "ice"),
        depth_mm: between(0, 12),
      }),
    ),
    film: fc.constantFrom("dripping", "wiped"),
    gap: fc.record({
      depth_mm: between(0.5, 12),
      width_mm: between(0.1, 2),
      filled_fraction: between(0, 1),
    }),
    hangar: fc.record({
      set_c: between(-2, 30),
      heater_kw: between(0, 40),
      fan_mps: fc.constantFrom(0, 0, 2, 5),
      floor_swept: fc.boolean(),
      humidity_percent: between(5, 90),
      air_changes_per_h: between(0.2, 3),
      insulated: fc.boolean(),
    }),
    fuel_mm: fc.option(between(10, 200)),
  })
  .map(({ air, depression, hours, snow, film, gap, hangar, fuel_mm }) => ({
    soakline: 2 as const,
    kind: "thaw" as const,
    name: "Example",
    start: "2026-01-14T16:00+01:00",
    zone: "Europe/Oslo",
    hours,
    aircraft: { area_m2: 25, temp_c: Math.min(0, air) },
    ...(snow === null ? {} : { snow: snow as NonNullable<ThawDocument["snow"]> }),
    ...(fuel_mm === null ? {} : { fuel: { depth_mm: fuel_mm, temp_c: air, full: fuel_mm > 100 } }),
    film: film as "dripping" | "wiped",
    gap: { ...gap, length_m: 12 },
    hangar: { length_m: 14, width_m: 12, height_m: 4, ...hangar },
    outside: { air_c: air, dew_point_c: air - depression },
  }));

/** The stay alone, over so few cases that thousands of documents can be tried. */
function stayOf(document: ThawDocument, members: number): ThawResult {
  const read = readThawDocument(document);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const { result, remedy } = thawAndDry({ ...read.request, ensemble: { members, seed: 1 } });
  if (result === undefined) throw new Error(remedy);
  return result;
}

const SEED = Number(process.env.SOAKLINE_SEED ?? 14);

test("gaps are never thawed before the skin is clear, nor dry before it is dry", { timeout: 900_000 }, () => {
  let held = 0;
  let finished = 0;
  const members = fc.constantFrom(...new Array<number>(19).fill(1), 3);
  fc.assert(
    fc.property(documents, members, (document, count) => {
      const result = stayOf(document, count);
      if (ownThaw(result) < Math.min(...result.cases.skinClear)) held++;
      if (result.gapsDry.share > 0) finished++;
      expect(faultsOf(result)).toEqual([]);
      expect(dirtyWings(result)).toEqual([]);
    }),
    { numRuns: runs(200, 2000), seed: SEED },
  );
  console.info(`thaw order: seed ${SEED}, the skin holds the gaps in ${held}, dry in time ${finished}`);
  // Documents in which the rule decides, and such as get to the end: the property is about something.
  expect(held).toBeGreaterThan(80);
  expect(finished).toBeGreaterThan(20);
});

const SNOWY: ThawDocument = {
  soakline: 2,
  kind: "thaw",
  name: "Example",
  start: "2026-01-14T16:00+01:00",
  zone: "Europe/Oslo",
  hours: 48,
  aircraft: { area_m2: 25, temp_c: -14 },
  snow: { kind: "settled", depth_mm: 20 },
  hangar: { length_m: 14, width_m: 12, height_m: 4, insulated: true, set_c: 15, heater_kw: 15 },
  outside: { air_c: -14, dew_point_c: -17 },
};

test("the checker sees it when the rule is broken: a gap's own time told instead, or two times swapped", () => {
  const result = stayOf(SNOWY, 1);
  expect(faultsOf(result)).toEqual([]);
  // A fitting in warm air thaws long before the snow beside it: without the rule this is what would be told.
  const own = ownThaw(result);
  expect(own).toBeLessThan(result.skinClear.middle! - 3600);
  const band = { low: own, middle: own, high: own, share: 1 };
  const unheld = {
    ...result,
    gapsThawed: band,
    cases: { ...result.cases, gapsThawed: Float64Array.of(own) },
  };
  expect(faultsOf(unheld)).toEqual([
    "gapsThawed low",
    "gapsThawed middle",
    "gapsThawed high",
    "gapsThawed case 0",
  ]);
  const swapped = { ...result, skinDry: result.gapsDry, gapsDry: result.skinDry };
  expect(result.skinDry.middle).toBeLessThan(result.gapsDry.middle!);
  expect(faultsOf(swapped).length).toBeGreaterThan(0);
  const early = { ...result, cases: { ...result.cases, skinClear: Float64Array.of(0) } };
  expect(dirtyWings(early).length).toBeGreaterThan(0);
});

test("each case is held by its own skin, and one that never clears holds its gaps for good", () => {
  const never = Number.POSITIVE_INFINITY;
  const held = heldBySkin({
    skinClear: Float64Array.of(5, 1, never),
    skinDry: Float64Array.of(6, 2, 3),
    gapsThawed: Float64Array.of(1, 4, 1),
    gapsDry: Float64Array.of(2, 3, 2),
  });
  expect([...held.skinDry]).toEqual([6, 2, never]);
  expect([...held.gapsThawed]).toEqual([5, 4, never]);
  expect([...held.gapsDry]).toEqual([6, 4, never]);
});
