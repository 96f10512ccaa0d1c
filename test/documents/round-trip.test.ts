import fc from "fast-check";
import { expect, test } from "vitest";
import { COVERS, HEATERS, INSTALLATIONS } from "../../src/aircraft/index.js";
import { readScenarioDocument, scenarioSchema } from "../../src/documents/index.js";
import { localText } from "../../src/weather/index.js";

const ZONES = ["Europe/Oslo", "America/Anchorage", "Antarctica/Troll", "Asia/Kathmandu", "UTC"];
const tenth = (low: number, high: number) => fc.integer({ min: low * 10, max: high * 10 }).map((n) => n / 10);
const optional = <T>(key: string, value: fc.Arbitrary<T>) =>
  fc.option(value, { nil: undefined }).map((v) => (v === undefined ? {} : { [key]: v }));

/** An installation with kit that fits it: one duct at most, and sets made for its number of cylinders. */
const equipped = fc.constantFrom(...INSTALLATIONS).chain((installation) => {
  const fitting = HEATERS.filter((h) => h.cylinders === undefined || h.cylinders === installation.cylinders);
  const firstDuct = fitting.find((h) => h.duct !== undefined);
  const heaters = fitting.filter((h) => h.duct === undefined || h === firstDuct);
  return fc.record({
    installation: fc.constant(installation),
    heaters: fc.shuffledSubarray(heaters, { maxLength: 3 }),
    covers: fc.shuffledSubarray([...COVERS], { maxLength: 3 }),
  });
});

/** Valid documents with catalogue entries by id or in full, and with or without what may be left out. */
const documents = fc
  .record({
    equipped,
    hours: fc.integer({ min: 2, max: 60 }),
    minute: fc.integer({ min: 28_000_000, max: 30_000_000 }),
    zone: fc.constantFrom(...ZONES),
    inFull: fc.boolean(),
  })
  .chain(({ equipped: { installation, ...kit }, hours, minute, zone, inFull }) => {
    const heaters = kit.heaters.map((h) => h.id);
    const covers = kit.covers.map((c) => c.id);
    const at = fc.record({ at_h: tenth(0, hours) });
    const change = fc.oneof(
      ...(heaters.length === 0
        ? []
        : [fc.constantFrom("plug_in", "unplug").map((what) => ({ do: what, heaters }))]),
      ...(covers.length === 0
        ? []
        : [fc.constantFrom("cover_on", "cover_off").map((what) => ({ do: what, covers }))]),
      fc.constantFrom("ramp", "hangar").map((to) => ({ do: "move", to })),
    );
    const point = (at_h: number) =>
      fc
        .record({
          air: tenth(-50, 20),
          more: fc.tuple(
            optional("wind_mps", tenth(0, 30)),
            optional("dew_point_c", tenth(-70, -51)),
            optional("cloud_fraction", fc.constantFrom(0, 0.5, 1)),
          ),
        })
        .map(({ air, more }) => ({ at_h, air_c: air, ...Object.assign({}, ...more) }));
    return fc.record({
      soakline: fc.constant(2),
      name: fc.string({ minLength: 1 }),
      aircraft: fc.constant(inFull ? installation : installation.id),
      kit: fc.constant(inFull ? kit : { heaters, covers }),
      start: fc.constant(localText(minute * 60, zone)),
      hours: fc.constant(hours),
      place: fc.constantFrom("ramp", "hangar"),
      hangar: fc.record({ air_c: tenth(-10, 20) }),
      weather: fc.record({ points: fc.tuple(point(0), point(hours / 2), point(hours)) }),
      optionals: fc.tuple(
        optional("zone", fc.constant(zone)),
        optional("fitted", fc.record({ covers: fc.subarray(covers) })),
        optional("plugged_in", fc.subarray(heaters)),
        optional("initial", fc.record({ all_c: tenth(-60, 90) })),
        optional("site", fc.record({ roughness_m: fc.constantFrom(0.0002, 0.03, 1) })),
        optional(
          "events",
          fc.array(
            fc.tuple(at, change).map(([a, c]) => ({ ...a, ...c })),
            { maxLength: 4 },
          ),
        ),
        optional(
          "want",
          fc.record({
            departure: fc.constant(localText(minute * 60 + hours * 3600, zone)),
            chance: fc.constantFrom(0.5, 0.9),
          }),
        ),
        optional("limits", fc.record({ evenness_at_most_k: tenth(1, 50) })),
        optional("ensemble", fc.record({ members: fc.integer({ min: 20, max: 5000 }), seed: fc.nat() })),
      ),
    });
  })
  .map(({ optionals, ...document }) => Object.assign({}, document, ...optionals));

test("any valid document survives the way through JSON and is read as itself", () => {
  fc.assert(
    fc.property(documents, (document) => {
      const reading = readScenarioDocument(JSON.stringify(document));
      if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
      expect(reading.document).toEqual(document);
      expect(scenarioSchema.parse(JSON.parse(JSON.stringify(reading.document)))).toEqual(document);
      expect(readScenarioDocument(JSON.stringify(reading.document))).toEqual(reading);
    }),
    { numRuns: 60 },
  );
});

test("no document at all makes the reader throw", () => {
  fc.assert(
    fc.property(fc.oneof(fc.jsonValue(), fc.string()), (source) => {
      const reading = readScenarioDocument(source);
      expect(reading.ok).toBe(false);
      if (!reading.ok) expect(reading.issues.length).toBeGreaterThan(0);
    }),
  );
});

test("a valid document with one section spoilt is refused with a path into that section", () => {
  fc.assert(
    fc.property(
      documents,
      fc.constantFrom("aircraft", "kit", "start", "hours", "place", "weather"),
      fc.constantFrom(null, 7, [], true),
      (document, key, spoilt) => {
        fc.pre(!(key === "hours" && spoilt === 7));
        const reading = readScenarioDocument({ ...document, [key]: spoilt });
        expect(reading.ok).toBe(false);
        if (!reading.ok) expect(reading.issues.some(({ path }) => path.startsWith(key))).toBe(true);
      },
    ),
    { numRuns: 40 },
  );
});
