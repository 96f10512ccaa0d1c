import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readerBeside } from "../../src/node/index.js";
import { planFromDocument } from "../../src/questions/index.js";
import { issuesOfAny } from "./read-any.js";

const EXAMPLES = readdirSync("examples").filter((name) => name.endsWith(".json"));

test.each(EXAMPLES)("examples/%s can be read and says that it is invented", (name) => {
  const path = `examples/${name}`;
  const text = readFileSync(path, "utf8");
  expect(issuesOfAny(text, { readFile: readerBeside(path) })).toEqual([]);
  expect(JSON.parse(text).note).toBe("invented aircraft, place and weather");
});

function planOf(name: string) {
  const source = readFileSync(`examples/${name}`, "utf8");
  const outcome = planFromDocument(source, { overrides: { members: 60 } });
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

test("one windy night at -30 °C: with cover in time, without it later or never, never with a small or a hopeless heater", () => {
  const [tonight, bare, small, impossible] = [
    "lynx-tonight.json",
    "lynx-cover-off.json",
    "lynx-small-heater.json",
    "lynx-impossible.json",
  ].map(planOf);
  const lead = ({ status, plug_in, departure }: typeof tonight) =>
    status === "ready" && plug_in !== null ? departure.at_h - plug_in.at_h : Number.POSITIVE_INFINITY;
  expect(tonight.status).toBe("ready");
  expect(lead(bare)).toBeGreaterThan(lead(tonight));
  for (const plan of [small, impossible]) {
    expect(plan.status).toBe("not-reachable");
    expect(plan.message).not.toBeNull();
    expect(plan.remedies.length).toBeGreaterThan(0);
    for (const { chance } of plan.remedies) expect(chance).toBeGreaterThan(plan.chance);
  }
  expect(small.chance).toBeLessThan(tonight.chance);
});
