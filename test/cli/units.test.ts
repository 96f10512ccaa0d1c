import { describe, expect, test } from "vitest";
import { CATALOGUE } from "../../src/cli/text/catalogue-text.js";
import { INSTALLATIONS, whyTopics } from "../../src/index.js";
import { soakline, soaklineProcess } from "./run.js";

const LEARN = ["examples/lynx-logged-night.json", "--log", "examples/logs/lynx-night.csv"];
const FEW = ["--members", "20"];
const TOPICS = [...new Set(INSTALLATIONS.flatMap(whyTopics))];
const [reference] = INSTALLATIONS;

/** Works on threads of the built program. */
const WINTER = ["winter", "examples/winter-lynx.json", "--members", "2"];

/** Every other command that prints a temperature or a wind. */
const COMMANDS: readonly (readonly string[])[] = [
  ["plan", "examples/lynx-tonight.json", "--all", ...FEW],
  ["plan", "examples/lynx-impossible.json", "--all", ...FEW],
  ["explain", "examples/lynx-tonight.json", "--all", ...FEW],
  ["simulate", "examples/lynx-cover-off.json", "--all", ...FEW],
  ["away", "examples/wren-away.json", "--all", ...FEW],
  ["base", "examples/ravnholt-base.json", "--all", ...FEW],
  ["frost", "examples/frost-clear-night.json", "--all", ...FEW],
  ["thaw", "examples/thaw-snow-hangar.json", "--all", ...FEW],
  ["kit", "examples/winter-kits.json", "--all", ...FEW],
  ["learn", ...LEARN],
  ["now", ...LEARN],
  ["tonight", "--all", ...FEW],
  ...TOPICS.map((topic) => ["why", topic, "-20"]),
  ...TOPICS.map((topic) => ["why", topic, "12"]),
  ...Object.entries(CATALOGUE).flatMap(([section, entries]) =>
    entries.map(({ id }) => ["catalogue", section, id]),
  ),
];

/**
 * What keeps its own unit: cautions and where numbers come from (a published limit is not rounded again), and what quotes
 * the user's own input. These are the lists under such a heading, a "!" of a first screen or below a fact, a "Source" with
 * its lines, and the names and units of the log's own columns.
 */
const QUOTES =
  /^(Care|Origin of the numbers|Doubtful input|Left out of the log, or doubtful|Columns, as taken\..*)$/;

const COLUMN = /(oil temp|case top|heads|outside) \(°C\)/g;

function ownWords(text: string): string {
  let skipping: RegExp | undefined;
  const kept = text
    .replace(COLUMN, "$1")
    .split("\n")
    .filter((line) => {
      if (skipping?.test(line)) return false;
      skipping = undefined;
      if (QUOTES.test(line)) skipping = /\S/;
      else if (/^!/.test(line)) skipping = /^ {2}\S/;
      else if (/^ {14}!/.test(line)) skipping = /^ {16}\S/;
      else if (/^(- | {2})?Source/.test(line)) skipping = /^ {2,}\S/;
      return skipping === undefined;
    });
  return kept.join("\n");
}

/** Degrees and winds of another unit, also where a line is broken between the number and its unit. */
const OTHER_UNITS = /.*(°C|m\/s|km\/h|\d\s+K\b).*/g;

describe("units follow the user", { timeout: 300_000 }, () => {
  test("what quotes others is told apart from our own words", () => {
    const own = ownWords("a -4 °F\n! 5 °C\n  6 °C\nb\nSource  7 °C\n   8 °C\nCare\n- 9 °C\n\nc 10 °C");
    expect(own).toBe("a -4 °F\nb\n\nc 10 °C");
    expect(own.match(OTHER_UNITS)).toEqual(["c 10 °C"]);
    expect("short of 3 K, 3\nK, 12 kW, K".match(OTHER_UNITS)).toHaveLength(1);
  });

  test.each([...COMMANDS, WINTER].map((args) => ({ args, name: args.join(" ") })))(
    "$name",
    async ({ args }) => {
      const run = args === WINTER ? soaklineProcess : soakline;
      const { stdout, stderr } = await run([...args, "--units", "f", "--wind-units", "kt"]);
      expect(stderr).toBe("");
      expect(ownWords(stdout).match(OTHER_UNITS) ?? []).toEqual([]);
    },
  );

  test("winds are in knots or km/h where they were asked for, of the same wind", async () => {
    const told = async (unit: string) =>
      (await soakline(["tonight", ...FEW, "--wind-units", unit])).stdout.match(/^ +wind (\S+) +(\d+)/m);
    const [mps, kt, kmh] = await Promise.all(["mps", "kt", "kmh"].map(told));
    expect([mps?.[1], kt?.[1], kmh?.[1]]).toEqual(["m/s", "kt", "km/h"]);
    expect(Number(kmh?.[2]) / Number(kt?.[2])).toBeCloseTo(1.852, 0);
  });

  test("a number in the catalogue is in the user's unit and says so", async () => {
    const { stdout } = await soakline(["catalogue", "installations", reference!.id, "--units", "f"]);
    const { no_preheat_c: limit } = reference!.limits;
    expect(stdout).toContain(`${Math.round(limit * 1.8 + 32)} °F`);
    expect(stdout).toMatch(/contacts\.sump_oil_w_per_k +[\d.]+$/m);
  });
});
