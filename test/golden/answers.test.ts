import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/findings/index.js";
import {
  awayFromDocument,
  basePlanFromDocument,
  frostFromDocument,
  kitFromDocument,
  type Outcome,
  planFromDocument,
  simulateFromDocument,
  thawFromDocument,
  winterFromDocument,
} from "../../src/index.js";
import { solveMilp } from "../../src/node/index.js";
import { english } from "../../src/words/index.js";
import { inBothLanguages, printed } from "./told.js";

/**
 * Every example's answer as it was, so that a change of structure that is meant to change no answer is seen to change
 * none. The stored answers are the product's own: they check nothing against the world. GOLDEN=write writes them anew.
 */
const ANSWERS = new URL("./answers/", import.meta.url);
const EXAMPLES = new URL("../../examples/", import.meta.url);

type Answer = (source: unknown) => Outcome<object> | Promise<Outcome<object>>;

const readFile = (name: string) =>
  ({ ok: true, text: readFileSync(new URL(name, EXAMPLES), "utf8") }) as const;
const withFiles = { readFile };

const CASES: readonly (readonly [string, Answer])[] = [
  ["lynx-tonight", (s) => planFromDocument(s, withFiles)],
  ["lynx-small-heater", (s) => planFromDocument(s, withFiles)],
  ["lynx-impossible", (s) => planFromDocument(s, withFiles)],
  ["marten-pulled-out", (s) => planFromDocument(s, withFiles)],
  ["lynx-cover-off", (s) => simulateFromDocument(s, withFiles)],
  ["wren-away", (s) => awayFromDocument(s, withFiles)],
  ["frost-clear-night", (s) => frostFromDocument(s, withFiles)],
  ["thaw-snow-hangar", (s) => thawFromDocument(s, withFiles)],
  ["winter-kits", (s) => kitFromDocument(s, withFiles)],
  ["winter-lynx", (s) => winterFromDocument(s, withFiles)],
  ["ravnholt-base", (s) => basePlanFromDocument(s, { ...withFiles, solveMilp })],
];

/** Words, and what stands a second time as another number. */
const NOT_PINNED = new Set([
  ..."time text title reason source message name label words explanation refused received steps".split(" "),
  ..."assumptions warnings cautions first_cautions start_briefing origin soakline unit quantity".split(" "),
  ..."values remedies plan".split(" "),
]);
/**
 * Winters and kits used to be searched with steps of 0.5 K error; with a closer one, the same search finds a shorter lead
 * in cold nights in which none is enough (and the former code, run so close, finds just these). What hangs on those nights.
 */
const CLOSER = /^(kits\[1\]\.cases\[2\]\.(lead_h|wet_h)|rows\[[58]\]\.(heater|energy|months|longest))/;
/** Rows kept of a long course: its shape is the same question at each. */
const ROWS_OF_COURSE = 12;

/**
 * How far a number may move: the grid of plug-ins is ten minutes, a chance over 500 cases has a standard error of 0.02 at
 * worst, and a course that is cut elsewhere moves by some tenths of a kelvin. What a search then picks moves energy by
 * one step of its heater.
 */
function allowed(path: string, was: number): number {
  if (CLOSER.test(path)) return 0.45 * Math.abs(was);
  const key = path.replace(/[.[\]\d]+$/, "");
  if (/(_h|_min)$/.test(key)) return 0.18 + 0.02 * Math.abs(was);
  if (/_c$|margin|value/.test(path)) return 0.6;
  if (/chance|share|rate/.test(path)) return 0.03;
  return 0.06 * Math.abs(was) + 0.05;
}

function leavesOf(value: unknown, path = "", out: Record<string, unknown> = {}): Record<string, unknown> {
  if (Array.isArray(value)) {
    const stride = Math.max(1, Math.floor(value.length / ROWS_OF_COURSE));
    value.forEach((one, i) => {
      if (i % stride === 0) leavesOf(one, `${path}[${i}]`, out);
    });
  } else if (typeof value === "object" && value !== null) {
    // What was found was stored in words.
    if ("code" in value && "values" in value) {
      out[path] = english(value as Finding);
      return out;
    }
    for (const [key, one] of Object.entries(value)) {
      // A comparison has each criterion many times over; its chances tell the same.
      if (NOT_PINNED.has(key) || (key === "criteria" && path.startsWith("kits"))) continue;
      leavesOf(one, path === "" ? key : `${path}.${key}`, out);
    }
  } else out[path] = value;
  return out;
}

describe("golden answers", () => {
  it.each(CASES)("%s answers as it did", { timeout: 240_000 }, async (name, answer) => {
    const outcome = await answer(readFileSync(new URL(`${name}.json`, EXAMPLES), "utf8"));
    if (outcome.status !== "completed") throw new Error(`${name}: ${JSON.stringify(outcome)}`);
    const told = [...printed(outcome.result), ...inBothLanguages(outcome.result)];
    expect(told.length).toBeGreaterThan(40);
    for (const text of told) expect(text).not.toMatch(/\[object |undefined|NaN/);
    const leaves = leavesOf(outcome.result);
    const file = new URL(`${name}.json`, ANSWERS);
    if (process.env.GOLDEN === "write") writeFileSync(file, `${JSON.stringify(leaves, null, 1)}\n`);
    expect(existsSync(file), `${name} has no stored answer`).toBe(true);
    const stored = JSON.parse(readFileSync(file, "utf8")) as Record<string, unknown>;
    const moved = Object.entries(stored).flatMap(([path, was]) => {
      const is = leaves[path];
      const same =
        typeof was === "number" && typeof is === "number"
          ? Math.abs(is - was) <= allowed(path, was)
          : is === was;
      return same ? [] : [`${path}: ${was} -> ${is}`];
    });
    expect(moved.slice(0, 20)).toEqual([]);
    expect(
      Object.keys(leaves)
        .filter((path) => !(path in stored))
        .slice(0, 20),
    ).toEqual([]);
  });
});
