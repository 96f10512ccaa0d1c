import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { HEATERS, heaterBasis, weakestBasis } from "../../src/aircraft/index.js";

// The core reads no files: the catalogue carries what its heaters rest on as data, and it is counted here.

const FOLDER = new URL("../../data/measured-runs/", import.meta.url);
const heated: string[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".json"))
  .flatMap((name) => JSON.parse(readFileSync(new URL(name, FOLDER), "utf8")).heaters ?? []);

describe.each(HEATERS.map((heater) => [heater.id, heater] as const))("%s", (id, heater) => {
  const basis = heaterBasis(heater);
  const runs = heated.filter((one) => one === id).length;

  it("claims as many measured runs as there are", () => {
    expect(basis.kind === "measured" ? basis.runs : 0).toBe(runs);
  });

  it("is scaled from a heater that was measured, where it is scaled", () => {
    if (basis.kind !== "scaled") return;
    const from = HEATERS.find((one) => one.id === basis.from);
    expect(from && heaterBasis(from).kind).toBe("measured");
  });
});

it("claims for several heaters what the least certain of them rests on", () => {
  const two = { kind: "measured", runs: 2 } as const;
  const three = { kind: "measured", runs: 3 } as const;
  expect(weakestBasis([three, two])).toEqual(two);
  expect(weakestBasis([two, { kind: "scaled", from: "x" }])).toEqual({ kind: "scaled", from: "x" });
  expect(weakestBasis([{ kind: "estimated" }, three])).toEqual({ kind: "estimated" });
  expect(weakestBasis([])).toBeUndefined();
});
