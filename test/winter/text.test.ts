import { expect, test } from "vitest";
import { styleFor } from "../../src/cli/style.js";
import { kitText } from "../../src/cli/text/kit-text.js";
import { winterText } from "../../src/cli/text/winter-text.js";
import { kitComparisonSchema } from "../../src/documents/index.js";
import { kitFromDocument, winterFromDocument } from "../../src/questions/index.js";
import { winterDocument } from "./small-winter.js";

const TERMINAL = { env: { LANG: "C.UTF-8" }, isTty: false };
const STYLE = styleFor(TERMINAL, { all: true });
const FIRST = styleFor(TERMINAL);
const longest = (lines: readonly string[]) => Math.max(...lines.map((line) => [...line].length));

test("a winter fits 80 columns, answer first, every row told and charted, cautions beside", () => {
  const outcome = winterFromDocument(
    winterDocument({
      kits: [
        {
          name: "pad",
          heaters: ["sump-pad-220"],
          covers: ["insulated-cover"],
          switching: "by_hand",
          price: 500,
        },
        {
          name: "a cart with a long name that goes on and on",
          heaters: ["ducted-fuel-12000"],
          covers: [],
          switching: "phone_network",
        },
      ].map((kit) => ({ ...kit, name: kit.name.slice(0, 40) })),
    }),
  );
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  const lines = winterText(outcome.result, STYLE);
  const text = lines.join("\n");
  expect(longest(lines)).toBeLessThanOrEqual(80);
  const first = winterText(outcome.result, FIRST);
  expect(first.length).toBeLessThanOrEqual(24);
  expect(longest(first)).toBeLessThanOrEqual(80);
  expect(first.join("\n")).toMatch(
    /^Not advised +always on: .* h allowed|^Not advised +always on: it has no end/m,
  );
  expect(lines[0]).toMatch(/^pad, (always 3 h before|as planned): ready in /);
  expect(text).toMatch(/^kit, habit +ready +warm +on h +kWh +time h +time +EUR/m);
  expect(text).toMatch(/^ {2}always on \(!\) +>?\d+% +\d+% +\d+ +\d+/m);
  expect(text).toMatch(/not possible: somebody must stand by/);
  expect(text).toMatch(/^pad +always on +[█░]+ +>?\d+%$/m);
  expect(text).toMatch(/Always on is compared, not advised/);
  expect(text).toMatch(/The weather is made, not measured/);
  expect(text).toMatch(/The aircraft's handbook and the engine maker's instructions decide/);
});

test("kits side by side: longer leads or lower chances as it gets colder, no heat needed when it is mild; 80 columns", () => {
  const outcome = kitFromDocument({
    ...{ soakline: 2, kind: "kit", name: "kits", aircraft: "four-carburettor-160", place: "ramp" },
    cases: [
      { air_c: 5, wind_mps: 0 },
      { air_c: -15, wind_mps: 0 },
      { air_c: -35, wind_mps: 5 },
    ],
    kits: [
      { name: "pad", heaters: ["sump-pad-220"], covers: ["insulated-cover"], switching: "by_hand" },
      { name: "set", heaters: ["whole-engine-4"], covers: ["insulated-cover"], switching: "mains_timer" },
      { name: "cover alone", heaters: [], covers: ["insulated-cover"], switching: "by_hand" },
    ],
    ensemble: { members: 40, seed: 1 },
  });
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  const { kits } = outcome.result;
  expect(kitComparisonSchema.parse(JSON.parse(JSON.stringify(outcome.result)))).toEqual(outcome.result);
  for (const { cases } of kits) {
    expect(cases[0]).toMatchObject({ status: "not-required", lead_h: null });
    expect(cases[0]!.energy_kwh.p50).toBe(0);
  }
  const [pad, set, alone] = kits.map(({ cases }) => cases);
  expect(set![1]!.status).toBe("ready");
  // The pad takes nearly as long for the least as the set for an engine warm through.
  expect(pad![1]).toMatchObject({ status: "ready", aim: "least" });
  expect(set![1]!.warm_chance).toBeGreaterThan(pad![1]!.warm_chance);
  expect(pad![2]!.chance).toBeLessThan(pad![1]!.chance);
  expect(alone![2]).toMatchObject({
    status: "not-reached",
    lead_h: null,
    hottest_surface_c: null,
    wet_h: null,
  });
  // 400 W for as long as it was on.
  expect(set![1]!.energy_kwh.p50).toBeCloseTo(0.4 * (set![1]!.lead_h! - 0.25), 1);
  // A set warms the whole engine through at -15 °C, a pad under the sump does not.
  expect(set![1]).toMatchObject({ aim: "warm-through" });
  expect(set![1]!.warm_chance).toBeGreaterThanOrEqual(0.9);
  expect(outcome.result.ranking[0]).toBe(1);
  const first = kitText(outcome.result, FIRST);
  expect(first[0]).toMatch(/^set: ready in 9 in 10 cases down to -/);
  expect(first.length).toBeLessThanOrEqual(24);
  const lines = kitText(outcome.result, STYLE);
  expect(longest([...first, ...lines])).toBeLessThanOrEqual(80);
  expect(lines.join("\n")).toMatch(/^-15, calm .*\d\.\d/m);
});

test("faults of a winter document are named all at once, with their places", () => {
  const outcome = winterFromDocument(
    winterDocument({
      weather: { place: "atlantis", csv_files: ["a.csv"] },
      flying: { flight_h: 1 },
      kits: [
        { name: "one", heaters: ["sump-pad-999"], covers: [], switching: "by_hand" },
        { name: "one", heaters: [], covers: ["tent"], switching: "by_magic" },
      ],
      habits: [{ do: "clock" }],
      against: "another",
      colour: "red",
    }),
  );
  if (outcome.status !== "refused") throw new Error(outcome.status);
  const paths = outcome.issues.map(({ path }) => path);
  for (const path of ["weather", "flying", "kits[1].switching", "habits[0]", "colour"])
    expect(paths).toContain(path);
});
