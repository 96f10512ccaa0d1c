import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { baseDocumentOf, readBaseDocument } from "../../src/base-documents/index.js";
import { type BaseDocument, baseSchema, demoBase, issueText } from "../../src/index.js";
import type { BaseSetUp } from "../../src/logbook/index.js";
import { plainWords } from "../plain-words.js";
import { exampleBase, withAircraft } from "./example-base.js";

const EXAMPLE = exampleBase({ carts: [] });

function faultsOf(document: unknown, files: Readonly<Record<string, string>> = {}): string[] {
  const reading = readBaseDocument(document, {
    readFile: (name) => {
      const text = files[name];
      return text === undefined ? { ok: false, reason: "there is no such file" } : { ok: true, text };
    },
  });
  return reading.ok ? [] : reading.issues.map(issueText);
}

test("the example reads, as text and as a value, and says what it assumes", () => {
  const text = readFileSync("examples/ravnholt-base.json", "utf8");
  const reading = readBaseDocument(text);
  if (!reading.ok) throw new Error(reading.issues.map(issueText).join("\n"));
  expect(reading.aircraft.map((a) => a.read.name)).toEqual(["Lynx", "Heron", "Marten", "Wren"]);
  expect(reading.limits.circuits[0].currentMost).toBeCloseTo(12.8, 6);
  expect(plainWords(reading.assumptions)).toMatch(/80 % of their breaker/);
  expect(reading.aircraft.map((a) => a.carts)).toEqual([[], [0], [], []]);
});

const lynx = (change: object) => withAircraft(EXAMPLE, "lynx", () => change);
const first = EXAMPLE.aircraft[0];

test.each<[string, unknown, RegExp]>([
  ["another kind", { soakline: 2, kind: "frost" }, /^kind: expected "base"/],
  ["no JSON", "{", /expected JSON/],
  ["a misspelt key", { ...EXAMPLE, outlets: 2 }, /^outlets: expected no such key/],
  [
    "a circuit without outlets",
    { ...EXAMPLE, circuits: [{ ...EXAMPLE.circuits[0], outlets: 0 }] },
    /^circuits\[0\]\.outlets: expected/,
  ],
  [
    "a negative breaker",
    { ...EXAMPLE, circuits: [{ ...EXAMPLE.circuits[0], limit_a: -16 }] },
    /^circuits\[0\]\.limit_a/,
  ],
  [
    "an id twice",
    { ...EXAMPLE, aircraft: [first, first] },
    /^aircraft\[1\]\.id: expected an id that stands once/,
  ],
  [
    "a circuit nobody knows",
    { ...EXAMPLE, aircraft: [{ ...first, circuits: ["roof"] }] },
    /^aircraft\[0\]\.circuits\[0\]: expected one of ramp, received "roof"/,
  ],
  [
    "people who leave before they come",
    { ...EXAMPLE, people: [{ from: "2026-01-15T06:00+01:00", to: "2026-01-14T22:00+01:00", count: 1 }] },
    /^people\[0\]\.to: expected a time after/,
  ],
  [
    "a heater nobody knows on a cart",
    { ...EXAMPLE, carts: [{ id: "cart", heater: "stove" }] },
    /^carts\[0\]\.heater: expected one of/,
  ],
  [
    "a cart for an aircraft that is not there",
    { ...EXAMPLE, carts: [{ id: "cart", heater: "ducted-electric-1500", aircraft: ["owl"] }] },
    /^carts\[0\]\.aircraft\[0\]/,
  ],
  ["more in the hangar than it has bays", { ...EXAMPLE, hangar: undefined }, /hangar/],
  [
    "an engine nobody knows",
    lynx({ aircraft: "steam" }),
    /^aircraft\[0\]\.scenario\.aircraft: expected one of/,
  ],
  [
    "another start than the base",
    lynx({ start: "2026-01-14T19:00+01:00" }),
    /^aircraft\[0\]\.scenario\.start: expected what the base has/,
  ],
  [
    "plugging in as an event",
    lynx({ events: [{ at_h: 2, do: "plug_in", heaters: ["whole-engine-4"] }] }),
    /^aircraft\[0\]\.scenario\.events: expected covers only/,
  ],
  [
    "plugged in without its circuit",
    {
      ...lynx({ plugged_in: ["whole-engine-4", "battery-blanket-60"] }),
      circuits: [EXAMPLE.circuits[0], { ...EXAMPLE.circuits[0], id: "shed" }],
    },
    /^aircraft\[0\]\.connected: expected the circuit its plug is in/,
  ],
  [
    "half plugged in",
    lynx({ plugged_in: ["whole-engine-4"] }),
    /^aircraft\[0\]\.scenario\.plugged_in: expected all heaters of the wish or none/,
  ],
  [
    "more plugged in than may be planned",
    {
      ...lynx({ plugged_in: ["whole-engine-4", "battery-blanket-60"] }),
      circuits: [{ ...EXAMPLE.circuits[0], limit_a: 2.4 }],
    },
    /^aircraft: expected plugged in on ramp at most 1\.9 A.*received "2\.0 A"/,
  ],
  [
    "a burner that is on in the hangar",
    lynx({
      place: "hangar",
      kit: { heaters: ["ducted-fuel-12000"], covers: ["insulated-cover"] },
      plugged_in: ["ducted-fuel-12000"],
      want: { departure: "10:00", heaters: ["ducted-fuel-12000"] },
    }),
    /^aircraft\[0\]\.scenario\.plugged_in: expected ducted-fuel-12000 off in the hangar/,
  ],
  [
    "a file that is not there",
    { ...EXAMPLE, aircraft: [{ ...first, scenario: "owl.json" }] },
    /^aircraft\[0\]\.scenario: expected a file that can be read \(there is no such file\)/,
  ],
  [
    "told of an aircraft that is not there",
    { ...EXAMPLE, told: [{ id: "owl", circuit: null, cart: null, heat: [], hangar: null }] },
    /^told\[0\]\.id/,
  ],
  [
    "nobody wanted",
    { ...EXAMPLE, aircraft: [{ ...first, scenario: { ...(first.scenario as object), want: undefined } }] },
    /^aircraft: expected at least one with a departure/,
  ],
  ["weather with a hole, said once for all", { ...EXAMPLE, weather: { points: [] } }, /^weather/],
])("%s is refused with its place", (_, document, expected) => {
  const faults = faultsOf(
    JSON.parse(typeof document === "string" ? JSON.stringify(document) : JSON.stringify(document)),
  );
  expect(faults.join("\n")).toMatch(new RegExp(expected.source, "m"));
  expect(new Set(faults).size).toBe(faults.length);
});

test("carts go to engines they fit and are big enough for; one that makers reject goes to none, and says so", () => {
  const carts = [
    { id: "burner", heater: "ducted-fuel-12000" },
    { id: "blower", heater: "ducted-electric-1500" },
    { id: "small", heater: "in-cowl-400" },
  ];
  const reading = readBaseDocument({ ...EXAMPLE, carts });
  if (!reading.ok) throw new Error(reading.issues.map(issueText).join("\n"));
  // Marten's and Wren's engines are smaller than the 3 l that 12 kW are for.
  expect(reading.aircraft.map(({ id, carts: of }) => [id, of])).toEqual([
    ["lynx", [0, 1]],
    ["heron", [0, 1]],
    ["marten", [1]],
    ["wren", [1]],
  ]);
  expect(plainWords(reading.assumptions)).toMatch(/small is not planned: /);
});

test("aircraft come from files too", () => {
  const own = first.scenario;
  const document: BaseDocument = { ...EXAMPLE, aircraft: [{ ...first, scenario: "lynx.json" }] };
  expect(faultsOf(document, { "lynx.json": JSON.stringify(own) })).toEqual([]);
  expect(faultsOf(document, { "lynx.json": "[]" }).join()).toMatch(/a file with an object/);
});

const SET_UP: BaseSetUp = {
  soakline_base: 3,
  name: "Ravnholt Strip",
  zone: "CET",
  hangar: { bays: 1, air_c: 6, move_min: 20 },
  circuits: [{ id: "ramp", name: "Ramp", limit_a: 16, voltage_v: 230, outlets: 2 }],
  carts: [{ id: "cart", heater: "ducted-electric-1500" }],
  aircraft: demoBase().scenarios.map((scenario) => ({
    id: scenario.name.toLowerCase(),
    name: scenario.name,
    engine: scenario.aircraft,
    kit: scenario.kit,
    known: { at: scenario.start, place: scenario.place, covers_on: [], initial: {} },
    limits: {},
    circuit: "ramp",
    probes: [],
    switches:
      scenario.name === "Heron"
        ? [
            {
              id: "heron-switch",
              name: "Heron's switch",
              heaters: ["whole-engine-6", "battery-blanket-60"],
              longest_on_min: 720,
              via: {
                kind: "mqtt",
                say: { topic: "heron/set", on: "ON", off: "OFF" },
                hear: { topic: "heron/state", on: "ON", off: "OFF" },
              },
            },
          ]
        : [],
  })) as BaseSetUp["aircraft"],
  probes: [],
};

test("a live base's set-up and its scenarios make a document that reads", () => {
  const scenarios = demoBase().scenarios;
  const document = baseDocumentOf(
    SET_UP,
    scenarios.map((scenario) => ({ id: scenario.name.toLowerCase(), scenario })),
  );
  expect(baseSchema.safeParse(document).error).toBeUndefined();
  expect(document.aircraft.map((a) => a.switching)).toEqual(["hand", "network", "hand", "hand"]);
  const reading = readBaseDocument(document);
  if (!reading.ok) throw new Error(reading.issues.map(issueText).join("\n"));
  expect(reading.aircraft.length).toBe(4);
  expect(reading.ensemble.members).toBe(300);
  expect(() => baseDocumentOf(SET_UP, [{ id: "owl", scenario: scenarios[0] }])).toThrow(
    /unknown aircraft: owl/,
  );
  expect(() => baseDocumentOf(SET_UP, [])).toThrow(/missing aircraft/);
});
