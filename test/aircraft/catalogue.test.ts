import { describe, expect, test } from "vitest";
import {
  COVERS,
  coverById,
  HEATERS,
  heaterById,
  INSTALLATIONS,
  installationById,
  type Origins,
  originOf,
} from "../../src/aircraft/index.js";
import { english } from "../../src/words/index.js";

/** Paths of all numbers in a record, "a.b.0.c". */
function numberPaths(value: unknown, path = ""): string[] {
  if (typeof value === "number") return [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    numberPaths(inner, path === "" ? key : `${path}.${key}`),
  );
}

const ENTRIES: [string, { origins: Origins }][] = [...INSTALLATIONS, ...HEATERS, ...COVERS].map((e) => [
  e.id,
  e,
]);

describe("catalogue", () => {
  test.each(ENTRIES)("%s: every number has an origin", (_, entry) => {
    const paths = numberPaths({ ...entry, origins: undefined });
    expect(paths.length).toBeGreaterThan(2);
    const missing = paths.filter((path) => originOf(entry.origins, path) === "no origin given");
    expect(missing).toEqual([]);
  });

  test.each(ENTRIES)("%s: every origin belongs to something", (_, entry) => {
    const paths = numberPaths({ ...entry, origins: undefined });
    const idle = Object.keys(entry.origins).filter(
      (key) => key !== "" && !paths.some((p) => p === key || p.startsWith(`${key}.`)),
    );
    expect(idle).toEqual([]);
  });

  test("ids are unique", () => {
    const ids = ENTRIES.map(([id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test("there are at least six installations, of each class that is flown in the cold", () => {
    expect(INSTALLATIONS.length).toBeGreaterThanOrEqual(6);
    expect(new Set(INSTALLATIONS.map((i) => i.cylinders))).toEqual(new Set([2, 4, 6, 9]));
    expect(INSTALLATIONS.some((i) => i.cooling === "liquid")).toBe(true);
    expect(INSTALLATIONS.some((i) => i.lubrication === "dry-tank")).toBe(true);
  });

  test("every heater says what can hurt, with a source", () => {
    for (const heater of HEATERS) {
      expect(heater.cautions.length, heater.id).toBeGreaterThan(0);
      for (const caution of heater.cautions) expect(caution.source.length, heater.id).toBeGreaterThan(5);
      expect(heater.longest_on_h).toBeLessThanOrEqual(24);
    }
  });

  test("fuel-fired heat is attended and warns of carbon monoxide", () => {
    const fired = HEATERS.filter((h) => h.duct?.energy === "fuel");
    expect(fired.length).toBeGreaterThan(0);
    for (const heater of fired) {
      expect(heater.attended).toBe(true);
      expect(heater.cautions.some((c) => english(c).includes("carbon monoxide"))).toBe(true);
    }
  });

  test("an unknown id is answered with the known ones", () => {
    expect(() => installationById("four-cylinder")).toThrow(
      /^unknown installation: four-cylinder \(expected one of two-light-60,/,
    );
    expect(() => heaterById("x")).toThrow("unknown heater: x");
    expect(() => coverById("x")).toThrow("unknown cover: x");
  });

  test("immersion keeps to the still-oil watt density of 1.6 W/cm²", () => {
    for (const heater of HEATERS) {
      for (const element of heater.elements) {
        if (element.in_oil) expect(element.power_w / element.area_cm2, heater.id).toBeLessThanOrEqual(1.6);
      }
    }
  });
});
