import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { EXIT, failureOf } from "../../src/cli/exit.js";
import { finding } from "../../src/findings/index.js";
import { soakline } from "./run.js";

test("a bad document: exit 2, every fault on a line of its own, nothing on standard output", async () => {
  const { code, stdout, stderr } = await soakline(["plan", "examples/bad/many-faults.json"]);
  expect(code).toBe(2);
  expect(stdout).toBe("");
  const lines = stderr.trimEnd().split("\n");
  expect(lines.length).toBe(5);
  for (const line of lines) expect(line).toMatch(/^[\w.[\]]+: expected .+, received .+$/);
});

test.each([
  [
    ["plan", "examples/none.json"],
    /FILE: expected a file that can be read \(there is no such file\), received examples\/none.json/,
  ],
  [["plan", "examples/lynx-tonight.json", "--taf", "none.txt"], /--taf: expected a file that can be read/],
  [["plan", "examples/lynx-tonight.json", "--chance", "high"], /Expected a number/],
  [
    ["plan", "examples/lynx-tonight.json", "--chance", "1.5"],
    /want\.chance: expected a number below 1, received 1\.5/,
  ],
  [["plan", "examples/lynx-tonight.json", "--units", "k"], /Allowed choices are c, f/],
  [["plan", "examples/bad/not-json.txt"], /line 4: expected JSON/],
  [["plan"], /missing required argument/],
  [["plan", "examples/lynx-tonight.json", "--wibble"], /unknown option/],
])("bad input is named and ends with 2: %j", async (args, words) => {
  const { code, stdout, stderr } = await soakline(args);
  expect(stderr).toMatch(words);
  expect(code).toBe(2);
  expect(stdout).toBe("");
});

test("help is no failure", async () => {
  const { code, stdout } = await soakline(["--help"]);
  expect(code).toBe(0);
  for (const command of ["plan", "explain", "simulate", "frost", "thaw", "catalogue", "tonight"])
    expect(stdout).toContain(command);
});

test("what ends without a result: bad input, stopped and a numerical failure are told apart", () => {
  const message = "No step meets the tolerance at t = 60";
  expect(failureOf({ status: "failed", message: finding("not-calculated", { remedy: message }) })).toEqual({
    code: 3,
    lines: [`numerical failure: ${message}`],
  });
  expect(failureOf({ status: "cancelled", message: finding("was-stopped", {}) })).toEqual({
    code: 130,
    lines: ["it was stopped"],
  });
  const issue = { path: "want.chance", expected: "a number below 1", received: "2" };
  expect(failureOf({ status: "refused", issues: [issue] })).toEqual({
    code: EXIT.badInput,
    lines: ["want.chance: expected a number below 1, received 2"],
  });
});

test("an engine and air beyond every real cold are still worked out, and told as not reachable", async () => {
  const scenario = JSON.parse(readFileSync("examples/lynx-tonight.json", "utf8"));
  const at = (time: string) => ({ time, air_c: -75, wind_mps: 3, dew_point_c: -78, cloud_fraction: 0 });
  const coldest = {
    ...scenario,
    initial: { all_c: -90, uncertainty_k: 0 },
    weather: { points: [at("2026-01-14T18:00+01:00"), at("2026-01-15T18:00+01:00")] },
    ensemble: { members: 40, seed: 1 },
  };
  const { code, stdout } = await soakline(["plan", "-"], { input: JSON.stringify(coldest) });
  expect(stdout).toMatch(/^Not ready at 10:00: under 1 in 100 at best/);
  expect(code).toBe(1);
});
