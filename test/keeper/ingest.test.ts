import { expect, test } from "vitest";
import { createIngest } from "../../src/keeper/ingest.js";
import type { ProbeReading } from "../../src/logbook/index.js";

const row = (n: number): ProbeReading => ({ aircraft: "lynx", probe: "oil", time: n, tempC: n / 10 });
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

test("what comes in is kept in batches, in order, nothing twice, and the wait is told of every row", async () => {
  const batches: number[][] = [];
  const waits: number[] = [];
  const ingest = createIngest({
    async keep(rows) {
      batches.push(rows.map(({ time }) => time));
      await pause(5);
    },
    onKept: (seconds) => waits.push(seconds),
    onTrouble: (error) => expect(error).toBeUndefined(),
    mono: () => performance.now(),
  });
  for (let n = 0; n < 1234; n++) {
    ingest.add(row(n));
    if (n % 100 === 0) await pause(2);
  }
  await ingest.flush();
  expect(batches.flat()).toEqual(Array.from({ length: 1234 }, (_, n) => n));
  expect(batches.length).toBeLessThan(100);
  expect(Math.max(...batches.map((batch) => batch.length))).toBeLessThanOrEqual(500);
  expect(waits.length).toBe(1234);
  expect(Math.min(...waits)).toBeGreaterThanOrEqual(0);
  expect(ingest.waiting).toBe(0);
});

test("what cannot be kept waits and is tried again", async () => {
  const kept: number[] = [];
  let troubles = 0;
  let works = false;
  const ingest = createIngest({
    async keep(rows) {
      if (!works) throw new Error("no space left");
      kept.push(...rows.map(({ time }) => time));
    },
    onKept: () => undefined,
    onTrouble: (_, rows) => {
      troubles++;
      expect(rows).toBeGreaterThan(0);
    },
    mono: () => performance.now(),
  });
  for (let n = 0; n < 10; n++) ingest.add(row(n));
  await pause(50);
  expect([kept.length, troubles, ingest.waiting]).toEqual([0, 1, 10]);
  works = true;
  ingest.add(row(10));
  await pause(1200);
  expect(kept).toEqual(Array.from({ length: 11 }, (_, n) => n));
  expect(ingest.letGo).toBe(0);
});
