import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { learnedSchema, learningSchema, nowSchema, planSchema } from "../../src/documents/index.js";
import { plainWords } from "../plain-words.js";
import { soakline } from "./run.js";

const NIGHT = "examples/lynx-logged-night.json";
const LOG = ["--log", "examples/logs/lynx-night.csv"];
const folder = mkdtempSync(join(tmpdir(), "soakline-learning-"));

describe("learn", () => {
  test("says first what was learned, then what is open, the probes and the next reading", async () => {
    const { code, stdout } = await soakline(["learn", NIGHT, ...LOG]);
    expect(stdout).toMatch(/^Learned \d+ of 14 numbers of this aircraft/);
    for (const word of ["The log did not show", "Probes: reading minus model", "Read next", "9 in 10"]) {
      expect(stdout).toContain(word);
    }
    expect(stdout.split("\n").filter((line) => [...line].length > 80)).toEqual([]);
    expect(code).toBe(0);
  });

  test("JSON of its schema; saves what was learned; that makes plans of this aircraft narrower", async () => {
    const saved = join(folder, "learned.json");
    const { code, stdout } = await soakline(["learn", NIGHT, ...LOG, "--json", "--save", saved]);
    expect(code).toBe(0);
    const learning = learningSchema.parse(JSON.parse(stdout));
    expect(learning.probes.map((p) => p.name)).toEqual(["oil temp (°C)", "case top (°C)", "heads (°C)"]);
    for (const { coverage } of learning.probes) expect(coverage).toBeGreaterThan(0.8);
    expect(learnedSchema.parse(JSON.parse(readFileSync(saved, "utf8")))).toEqual(learning.learned);

    const want = { departure: "09:30", chance: 0.5, heaters: ["sump-pad-220"] };
    const night = { ...JSON.parse(readFileSync(NIGHT, "utf8")), events: [], want };
    const general = join(folder, "general.json");
    const own = join(folder, "own.json");
    writeFileSync(general, JSON.stringify(night));
    writeFileSync(own, JSON.stringify({ ...night, learned: "learned.json" }));
    const [before, after] = await Promise.all(
      [general, own].map(async (file) =>
        planSchema.parse(JSON.parse((await soakline(["plan", file, "--json"])).stdout)),
      ),
    );
    const spread = (plan: typeof before) => {
      const { margin } = plan.criteria.find((c) => c.id === "bearings") ?? { margin: { p05: 0, p95: 0 } };
      return margin.p95 - margin.p05;
    };
    expect(spread(after)).toBeLessThan(0.7 * spread(before));
    expect(plainWords(after.assumptions)).toMatch(/as learned from \d+ readings/);
    expect(plainWords(before.assumptions)).not.toMatch(/learned/);
  });

  test("leaves out what no name tells, says so, and takes the answer", async () => {
    const file = join(folder, "open.csv");
    const text = readFileSync("examples/logs/lynx-night.csv", "utf8").replace("heads (°C)", "T7 (°C)");
    writeFileSync(file, text);
    const open = await soakline(["learn", NIGHT, "--log", file]);
    expect(open.code).toBe(0);
    expect(open.stdout).toContain("left out, its name tells no place: T7 (°C)");
    const told = await soakline(["learn", NIGHT, "--log", file, "--column", "T7 (°C)=heads", "--json"]);
    expect(told.code).toBe(0);
    expect(learningSchema.parse(JSON.parse(told.stdout)).probes).toHaveLength(3);
    writeFileSync(file, text.replace("oil temp", "T1").replace("case top", "T2"));
    const nothing = await soakline(["learn", NIGHT, "--log", file]);
    expect(nothing.code).toBe(2);
    expect(nothing.stderr).toMatch(/column T7 .*: expected --column "T7 \(°C\)=PART"/);
  });

  test("a flight's log without a flag: its cool-down teaches, and what was taken for what is told", async () => {
    const { code, stdout } = await soakline([
      "learn",
      "examples/wren-after-flight.json",
      "--log",
      "examples/logs/wren-flight.csv",
    ]);
    expect(code).toBe(0);
    for (const words of ["heads, °F by their values, the mean of all", "RPM: rpm", "cooling since 14:2"]) {
      expect(stdout).toContain(words);
    }
  });

  test("a logbook's export alone: how often its plans came true; any other file without a log is refused", async () => {
    const record = await soakline(["learn", "test/logbook/fixtures/logbook-1.json"]);
    expect(record.code).toBe(0);
    expect(record.stdout).toMatch(/^(Nothing can be said yet|\d+ of \d+ starts were easy)/);
    const scenario = await soakline(["learn", NIGHT]);
    expect(scenario).toMatchObject({
      code: 2,
      stderr: expect.stringMatching(/learn: expected --log with a scenario document, or a logbook/),
    });
  });

  test("a missing log, a bad pair and a log of another day are named", async () => {
    const missing = await soakline(["learn", NIGHT, "--log", "nowhere.csv"]);
    expect(missing).toMatchObject({
      code: 2,
      stderr: expect.stringMatching(/--log: expected a file that can be read/),
    });
    const pair = await soakline(["learn", NIGHT, ...LOG, "--column", "heads"]);
    expect(pair).toMatchObject({ code: 2, stderr: expect.stringMatching(/--column: expected HEADER=PART/) });
    const other = await soakline(["learn", "examples/lynx-tonight.json", ...LOG]);
    expect(other).toMatchObject({
      code: 2,
      stderr: expect.stringMatching(/log: expected readings of parts/),
    });
  });
});

describe("now", () => {
  test("estimates every part, also those without a probe, and judges the start", async () => {
    const { code, stdout } = await soakline(["now", NIGHT, ...LOG, "--json"]);
    expect(code).toBe(0);
    const now = nowSchema.parse(JSON.parse(stdout));
    expect(now.at.time).toBe("2026-01-13T10:00+01:00");
    for (const part of ["crankshaft", "cylinders", "battery", "oil_film"]) {
      const { p05_c, p50_c, p95_c } = now.parts[part];
      expect(p05_c).toBeLessThan(p50_c);
      expect(p50_c).toBeLessThan(p95_c);
    }
    expect(now.parts.crankshaft.p95_c - now.parts.crankshaft.p05_c).toBeGreaterThan(
      now.parts.crankcase.p95_c - now.parts.crankcase.p05_c,
    );
    expect(now.criteria.map((c) => c.id)).toContain("bearings");
    expect(now.probes.map((p) => p.readings)).toEqual([720, 720, 720]);
    expect(plainWords(now.assumptions)).toMatch(/air around the aircraft is as outside \(°C\) measured it/);
  });

  test("a heater that was said to be on but stayed cold is noticed", async () => {
    const night = JSON.parse(readFileSync(NIGHT, "utf8"));
    const file = join(folder, "forgotten.json");
    // Said to be plugged in again an hour before the end; the log shows that the engine went on cooling.
    writeFileSync(
      file,
      JSON.stringify({
        ...night,
        events: [...night.events, { at_h: 10, do: "plug_in", heaters: ["sump-pad-220"] }],
      }),
    );
    const { stdout } = await soakline(["now", file, ...LOG, "--json"]);
    const { deviations } = nowSchema.parse(JSON.parse(stdout));
    const cold = deviations.find((d) => d.finding === "heater-not-heating");
    expect(cold?.chance).toBeGreaterThan(0.9);
  });

  test("text in 80 columns, the answer first", async () => {
    const { stdout } = await soakline(["now", NIGHT, ...LOG]);
    expect(stdout).toMatch(/^At 10:00: ready in .+ cases\. Weakest point: .+\./);
    expect(stdout).toMatch(/part now/);
    expect(stdout.split("\n").filter((line) => [...line].length > 80)).toEqual([]);
  });
});
