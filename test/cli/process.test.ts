import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { soakline, soaklineProcess } from "./run.js";

// What only a process has: its worker, its pipes, its end. All else of the command line is tested in this process.

const NIGHT = "examples/lynx-logged-night.json";
const FEW = ["--members", "30"];

test.each([
  ["a plan from standard input", ["plan", "-", "--all", ...FEW], 0],
  ["one plan for a base, by the exact solver", ["base", "examples/ravnholt-base.json", ...FEW], 0],
  ["a log handed to the worker", ["now", NIGHT, "--log", "examples/logs/lynx-night.csv"], 0],
  ["a departure that cannot be met", ["plan", "examples/lynx-impossible.json", ...FEW], 1],
  ["faults that the worker finds", ["plan", "examples/bad/many-faults.json"], 2],
  ["a fault of the command line", ["plan", "examples/lynx-tonight.json", "--wibble"], 2],
])("a process answers as the program does: %s", async (_, args, code) => {
  const input = readFileSync("examples/lynx-tonight.json", "utf8");
  const [process, program] = [await soaklineProcess(args, { input }), await soakline(args, { input })];
  expect(process).toEqual(program);
  expect(process.code).toBe(code);
});

test.each([
  ["plan", "lynx-small-heater", "5000"],
  ["thaw", "thaw-snow-hangar", "1000"],
])(
  "an interruption ends a long %s at once, with 130 and without half a result",
  async (command, name, members) => {
    // More than a pipe holds: once all is written, the child has started and is reading.
    const input = readFileSync(`examples/${name}.json`, "utf8") + " ".repeat(300_000);
    const args = [command, "-", "--members", members];
    const { code, signal, stdout } = await soaklineProcess(args, { input, interrupted: true });
    expect({ code, signal, stdout }).toEqual({ code: 130, signal: null, stdout: "" });
  },
);
