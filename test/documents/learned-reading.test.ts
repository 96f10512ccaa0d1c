import { describe, expect, test } from "vitest";
import { installationById } from "../../src/aircraft/index.js";
import { learnedSchema, readScenarioDocument } from "../../src/documents/index.js";
import { learnedDocument } from "../../src/documents/learned-document.js";
import type { FittedAircraft } from "../../src/learning/index.js";
import { EXAMPLE, issuesOf, readExample } from "./example-document.js";

const LEARNED: FittedAircraft = {
  version: 1,
  base: "four-carburettor-160",
  multipliers: {
    names: ["journals", "ventilation"],
    mean: [0.3, -0.2],
    factor: [
      [0.2, 0],
      [-0.05, 0.1],
    ],
  },
  evidence: [
    {
      origin: "a log",
      hash: "0123456789abcdef",
      readings: 700,
      from: 1768251600,
      to: 1768294800,
      heaters: ["whole-engine-4"],
      settings: [{ place: "ramp", covers: ["insulated-cover"] }],
      probes: [
        {
          name: "oil",
          place: { part: "oil" },
          noise: 0.5,
          offset: -1.2,
          offsetSd: 0.4,
          lag: 60,
          lagLogSd: 0.5,
        },
      ],
    },
  ],
};

const document = learnedDocument(LEARNED);
const changed = (change: object) => ({ ...document, ...change });

describe("what was learned of an aircraft", () => {
  test("survives being written and read", () => {
    expect(learnedSchema.parse(JSON.parse(JSON.stringify(document)))).toEqual(document);
    expect(readExample({ learned: document }).learned).toEqual(LEARNED);
  });

  test("multiplies the heat stores that it was learned on, though the catalogue's have grown since", () => {
    const { catalogue: _, ...first } = learnedDocument({
      ...LEARNED,
      multipliers: { names: ["heat_stores"], mean: [0.1], factor: [[0.05]] },
    });
    const [mean] = readExample({ learned: first }).learned?.multipliers.mean ?? [];
    // The crankcase of the class held 11.5 kJ/K then.
    const crankcase = installationById("four-carburettor-160").bodies.crankcase.heat_capacity_j_per_k;
    expect(crankcase * Math.exp(mean)).toBeCloseTo(11_500 * Math.exp(0.1), -2);
  });

  test("is read from a file beside the scenario", () => {
    const readFile = (name: string) =>
      name === "mine.json"
        ? { ok: true as const, text: JSON.stringify(document) }
        : { ok: false as const, reason: "no such file" };
    const found = readScenarioDocument({ ...EXAMPLE, learned: "mine.json" }, { readFile });
    expect(found.ok && found.learned).toEqual(LEARNED);
    const missing = readScenarioDocument({ ...EXAMPLE, learned: "yours.json" }, { readFile });
    expect(missing.ok ? [] : missing.issues).toMatchObject([
      { path: "learned", expected: "a file that can be read (no such file)" },
    ]);
  });

  test("a file of another kind is named with its fault", () => {
    const readFile = () => ({ ok: true as const, text: '{"soakline":1,"kind":"frost"}' });
    const other = readScenarioDocument({ ...EXAMPLE, learned: "frost.json" }, { readFile });
    expect(other.ok ? [] : other.issues).toMatchObject([{ path: "frost.json: kind" }]);
  });

  test("left out, the aircraft is the catalogue's again", () => {
    expect(readExample().learned).toBeUndefined();
  });

  test.each([
    ["another aircraft", changed({ base: "six-injected-300" }), "learned.base"],
    [
      "an unknown number",
      changed({ multipliers: { ...document.multipliers, names: ["luck", "journals"] } }),
      "learned",
    ],
    [
      "too few means",
      changed({ multipliers: { ...document.multipliers, mean_log: [0.3] } }),
      "learned.multipliers.mean_log",
    ],
    [
      "a factor that is no triangle",
      changed({
        multipliers: {
          ...document.multipliers,
          factor_log: [
            [0.2, 0.1],
            [0, 0.1],
          ],
        },
      }),
      "learned.multipliers.factor_log",
    ],
    ["no evidence", changed({ evidence: [] }), "learned"],
    [
      "a time that is none",
      changed({ evidence: [{ ...document.evidence[0], from: "yesterday" }] }),
      "learned.evidence[0].from",
    ],
  ])("refuses %s", (_, learned, path) => {
    const issues = issuesOf({ learned });
    expect(issues.length).toBeGreaterThan(0);
    expect(issues[0].path.startsWith(path)).toBe(true);
  });
});
