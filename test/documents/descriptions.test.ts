import { expect, test } from "vitest";
import { COVERS, HEATERS, INSTALLATIONS } from "../../src/aircraft/index.js";
import { coverSchema, heaterSchema, installationSchema } from "../../src/documents/index.js";
import { EXAMPLE, issuesOf, readExample } from "./example-document.js";

const PAD = HEATERS[0];

test.each(INSTALLATIONS.map((entry) => [entry.id, entry] as const))(
  "%s can stand in a document in full",
  (_, entry) => {
    expect(installationSchema.parse(JSON.parse(JSON.stringify(entry)))).toEqual(entry);
    const read = readExample({ aircraft: entry, kit: { heaters: [], covers: [] }, fitted: { covers: [] } });
    expect(read.scenario.installation).toEqual(entry);
  },
);

test.each(HEATERS.map((entry) => [entry.id, entry] as const))(
  "heater %s can stand in a document in full",
  (_, entry) => {
    expect(heaterSchema.parse(JSON.parse(JSON.stringify(entry)))).toEqual(entry);
    const aircraft = INSTALLATIONS.find((i) => i.cylinders === (entry.cylinders ?? 4));
    const read = readExample({ aircraft: aircraft?.id, kit: { ...EXAMPLE.kit, heaters: [entry] } });
    expect(read.scenario.kit.heaters).toEqual([entry]);
  },
);

test.each(COVERS.map((entry) => [entry.id, entry] as const))(
  "cover %s can stand in a document in full",
  (_, entry) => {
    expect(coverSchema.parse(JSON.parse(JSON.stringify(entry)))).toEqual(entry);
    const read = readExample({ kit: { ...EXAMPLE.kit, covers: [entry] }, fitted: { covers: [entry.id] } });
    expect(read.scenario.kit.covers).toEqual([entry]);
  },
);

test("a number without an origin is refused, by its path", () => {
  const heater = { ...PAD, origins: { elements: "my own scales" } };
  expect(issuesOf({ kit: { heaters: [heater], covers: [] }, fitted: { covers: [] } })).toEqual([
    { path: "kit.heaters[0].origins", expected: "an origin for least_on_h", received: "nothing" },
    { path: "kit.heaters[0].origins", expected: "an origin for longest_on_h", received: "nothing" },
  ]);
});

test("one origin may stand for all numbers", () => {
  const heater = { ...PAD, origins: { "": "my own scales" } };
  expect(readExample({ kit: { ...EXAMPLE.kit, heaters: [heater] } }).scenario.kit.heaters).toEqual([heater]);
});

test("an unknown oil names the known ones", () => {
  const [installation] = INSTALLATIONS;
  const [issue] = issuesOf({
    aircraft: { ...installation, oil: { ...installation.oil, oil_id: "sae-5w-30" } },
  });
  expect(issue.path).toBe("aircraft.oil.oil_id");
  expect(issue.expected).toContain("sae-15w-50");
  expect(issue.received).toBe('"sae-5w-30"');
});

test("an air-cooled engine has no coolant and a liquid-cooled one has", () => {
  const air = INSTALLATIONS.find((i) => i.cooling === "air");
  const paths = (aircraft: unknown) =>
    issuesOf({ aircraft, kit: { heaters: [], covers: [] }, fitted: { covers: [] } }).map((i) => i.path);
  expect(paths({ ...air, cooling: "liquid" })).toContain("aircraft.bodies.coolant");
  const liquid = INSTALLATIONS.find((i) => i.cooling === "liquid");
  expect(paths({ ...liquid, cooling: "air" })).toContain("aircraft.bodies.coolant");
});

test("a starter that gives out more than it takes, an unknown metal and a Reid pressure in psi are refused", () => {
  const [installation] = INSTALLATIONS;
  const first = (change: object) => issuesOf({ aircraft: { ...installation, ...change } })[0];
  const strong = first({ cranking: { ...installation.cranking, stall_torque_nm: 5000 } });
  expect(strong.path).toBe("aircraft.cranking.stall_torque_nm");
  expect(strong.expected).toMatch(
    /^at most 215, what system_v, no_load_rpm and starter_resistance_ohm leave/,
  );
  const { piston } = installation.clearances;
  const brass = first({ clearances: { piston: { ...piston, outer_metal: "brass" } } });
  expect(brass.path).toBe("aircraft.clearances.piston.outer_metal");
  expect(first({ fuel: { grade: "avgas", reid_kpa: 6.5 } }).path).toBe("aircraft.fuel.reid_kpa");
});

test("two elements of one name are told apart by their place", () => {
  const heater = { ...PAD, elements: [PAD.elements[0], PAD.elements[0]] };
  expect(issuesOf({ kit: { ...EXAMPLE.kit, heaters: [heater] } })).toEqual([
    {
      path: "kit.heaters[0].elements[1].name",
      expected: "a name that no other element has",
      received: '"pad"',
    },
  ]);
});

test("a set made for six cylinders is not fitted to four", () => {
  expect(issuesOf({ kit: { ...EXAMPLE.kit, heaters: ["whole-engine-6"] } })).toEqual([
    { path: "kit.heaters[0]", expected: "a heater for 4 cylinders", received: '"whole-engine-6 for 6"' },
  ]);
});
