import { spawn } from "node:child_process";
import { once } from "node:events";
import { setTimeout as wait } from "node:timers/promises";
import { expect, test } from "vitest";
import { createRandom } from "../../src/numerics/index.js";
import { openStore } from "../../src/store/index.js";
import { runSql, sqlitePlace } from "./stores.js";

const ROUNDS = 20;
const random = createRandom(20_261_130);
const place = sqlitePlace();

// A killed process shows that nothing acknowledged waits in its memory, and that what was half written is undone. A
// power cut it does not show: there synchronous = FULL and the disk's own honesty count.
test("killed at any moment, again and again, a store loses nothing that was acknowledged and is never damaged", async () => {
  const url = await place.freshUrl();
  const acknowledged: string[] = [];
  const readings: number[] = [];
  let inTheMiddle = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const lines = await killedAfter(url, Math.floor(random.uniform() * 40), random.uniform() * 20);
    inTheMiddle += lines.length > 1 ? 1 : 0;
    for (const line of lines) {
      if (line.startsWith("reading ")) readings.push(Number(line.slice("reading ".length)));
      else if (line !== "open") acknowledged.push(...line.split(" "));
    }
    expect(await runSql(url, "pragma integrity_check")).toEqual([{ integrity_check: "ok" }]);
  }
  // Most rounds are killed while writing, not before.
  expect(inTheMiddle).toBeGreaterThan(ROUNDS / 2);
  expect(acknowledged.length).toBeGreaterThan(ROUNDS);
  const store = await openStore(url);
  const kept = await store.eventsAfter(0, 1e6);
  const ids = new Set(kept.map(({ event }) => event.id));
  expect(acknowledged.filter((id) => !ids.has(id))).toEqual([]);
  expect(kept.map(({ sequence }) => sequence)).toEqual(kept.map((_, i) => i + 1));
  const raw = await store.readings({ aircraft: "lynx", from: 0, to: 1e16, resolution: "raw", limit: 1e6 });
  const times = new Set(raw.map(({ time }) => time));
  expect(readings.filter((time) => !times.has(time))).toEqual([]);
  await store.rollUp();
  const hours = await store.readings({ aircraft: "lynx", from: 0, to: 1e16, resolution: "hour", limit: 1e6 });
  expect(hours.reduce((sum, { count }) => sum + count, 0)).toBe(raw.length);
  await store.close();
}, 300_000);

/** The whole lines that a writer printed before it was killed: so many milliseconds after so many of them. */
async function killedAfter(url: string, count: number, delay: number): Promise<readonly string[]> {
  const child = spawn(process.execPath, ["test/store/fixtures/appending.mjs", url], {
    stdio: ["ignore", "pipe", "pipe"],
  });
  let text = "";
  let trouble = "";
  child.stderr.on("data", (data) => {
    trouble += data;
  });
  const closed = once(child, "close");
  await new Promise<void>((resolve, reject) => {
    child.stdout.on("data", (data) => {
      text += data;
      if (text.split("\n").length > count + 1) resolve();
    });
    child.on("close", () => reject(new Error(`the writer ended by itself: ${trouble}`)));
  });
  await wait(delay);
  child.kill("SIGKILL");
  const [, signal] = await closed;
  expect(signal).toBe("SIGKILL");
  return text
    .slice(0, text.lastIndexOf("\n") + 1)
    .split("\n")
    .filter((line) => line !== "");
}
