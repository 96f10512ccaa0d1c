import { spawn } from "node:child_process";
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { WinterStudyDocument } from "../../src/documents/index.js";
import { CheckpointTrouble } from "../../src/node/index.js";
import { openCheckpoint } from "../../src/node/winter-checkpoint.js";
import { winterFromDocument } from "../../src/questions/index.js";
import { PLAIN, soaklineProcess } from "../cli/run.js";
import { winterDocument } from "../winter/small-winter.js";

// The built program, as its users run it: threads, a file of finished pieces, and a real kill.

const DOCUMENT = JSON.stringify(winterDocument({ weather: { place: "ravnholt", years: 4 } }));
let folder = "";
let expected: WinterStudyDocument;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "soakline-winter-"));
  const outcome = winterFromDocument(DOCUMENT);
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  expected = JSON.parse(JSON.stringify(outcome.result));
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (args: readonly string[], input = DOCUMENT) =>
  soaklineProcess(["winter", "-", "--json", ...args], { input });
const linesOf = (file: string) =>
  existsSync(file) ? readFileSync(file, "utf8").split("\n").slice(0, -1) : [];

test("threads come to what one thread comes to", { timeout: 120_000 }, async () => {
  const { code, stdout, stderr } = await run(["--threads", "3"]);
  expect(stderr).toBe("");
  expect(code).toBe(0);
  expect(JSON.parse(stdout)).toEqual(expected);
});

describe("a study killed in the middle", () => {
  test("goes on from its finished pieces and comes to the same, also after a torn last line", {
    timeout: 240_000,
  }, async () => {
    const file = join(folder, "kept", "study.jsonl");
    await killedAfter(1, file);
    const kept = linesOf(file);
    // A header and some pieces, but not all.
    expect(kept.length).toBeGreaterThanOrEqual(2);
    expect(kept.length).toBeLessThan(5);
    appendFileSync(file, '{"kit":0,"year":3,"habits":[{"refu');
    const { code, stdout, stderr } = await run(["--keep", file]);
    expect(stderr).toBe("");
    expect(code).toBe(0);
    expect(JSON.parse(stdout)).toEqual(expected);
    const after = linesOf(file);
    expect(after.slice(0, kept.length)).toEqual(kept);
    expect(after).toHaveLength(5);
    // All is there: nothing is worked out again.
    const again = await run(["--keep", file]);
    expect(JSON.parse(again.stdout)).toEqual(expected);
    expect(linesOf(file)).toEqual(after);
  });

  test("refuses the pieces of another study, and a file that is none", async () => {
    const file = join(folder, "other.jsonl");
    openCheckpoint(file, "of another study").close();
    const other = await run(["--keep", file]);
    expect(other.code).toBe(2);
    expect(other.stderr).toMatch(/^--keep: expected a file of this study, .* belongs to another study/);
    writeFileSync(file, "dear diary\n");
    expect(() => openCheckpoint(file, "any")).toThrow(CheckpointTrouble);
    expect(readFileSync(file, "utf8")).toBe("dear diary\n");
  });
});

/** Runs a study on one thread and kills it as soon as so many pieces are in its file. */
function killedAfter(pieces: number, file: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const child = spawn(
      process.execPath,
      ["dist/cli/main.js", "winter", "-", "--json", "--threads", "1", "--keep", file],
      { env: PLAIN, stdio: ["pipe", "ignore", "inherit"] },
    );
    child.stdin.end(DOCUMENT);
    const look = setInterval(() => {
      if (linesOf(file).length > pieces) child.kill("SIGKILL");
    }, 5);
    child.on("error", reject);
    child.on("exit", (code, signal) => {
      clearInterval(look);
      if (signal === "SIGKILL") resolve();
      else reject(new Error(`it ended by itself (exit code ${code}) before it could be killed`));
    });
  });
}

test("the rows as CSV, with an empty cell where there is no number", { timeout: 120_000 }, async () => {
  const file = join(folder, "rows.csv");
  const { code } = await run(["--csv", file]);
  expect(code).toBe(0);
  const [head, ...rows] = readFileSync(file, "utf8").trimEnd().split("\r\n");
  expect(head).toMatch(
    /^kit,switching,habit,refused,not_advised,ready_mean,ready_rate_p05,.*energy_kwh_p50,.*wet_h_p50/,
  );
  expect(rows).toHaveLength(3);
  const cells = rows[0]!.match(/("([^"]|"")*"|[^,]*)(,|$)/g)!.map((cell) => cell.replace(/,$/, ""));
  const column = (name: string) => cells[head!.split(",").indexOf(name)];
  expect(Number(column("energy_kwh_p50"))).toBe(expected.rows[0]!.energy_kwh.p50);
  expect(column("payback_winters_p50")).toBe("");
});
