import fc from "fast-check";
import { sql } from "kysely";
import { expect, test } from "vitest";
import type { ProbeReading } from "../../src/logbook/index.js";
import { openStore, type Resolution, type Store } from "../../src/store/index.js";
import { openedDatabase } from "../../src/store/open-store.js";
import { appendReadings } from "../../src/store/readings.js";
import { rollUp } from "../../src/store/rollups.js";
import { HOUR, MINUTE, reading, START } from "./example-events.js";
import { describeStores } from "./stores.js";

const ALL = { from: 0, to: START + 1e9, limit: 1e6 };
const STEPS = { minute: MINUTE, "ten-minutes": 10 * MINUTE, hour: HOUR };

describeStores("readings", (place) => {
  const opened = async (): Promise<Store> => openStore(await place.freshUrl());
  const rowsOf = (store: Store, resolution: Resolution, aircraft = "lynx") =>
    store.readings({ ...ALL, aircraft, resolution });

  test("readings are kept once, by aircraft, probe and time", async () => {
    const store = await opened();
    const rows = [reading(0, -5), reading(1, -4), reading(0, -20, "heads"), reading(0, 3, "oil", "wren")];
    expect(await store.appendReadings([...rows, rows[0]])).toEqual({ kept: 4, known: 1 });
    expect(await store.appendReadings([...rows, reading(2, -3)])).toEqual({ kept: 1, known: 4 });
    expect(await store.appendReadings([])).toEqual({ kept: 0, known: 0 });
    expect(await rowsOf(store, "raw")).toEqual(
      [
        ["oil", 0, -5],
        ["heads", 0, -20],
        ["oil", 1, -4],
        ["oil", 2, -3],
      ].map(([probe, minute, temp]) => ({
        probe,
        time: START + Number(minute) * MINUTE,
        low: temp,
        mean: temp,
        high: temp,
        count: 1,
      })),
    );
    await store.close();
  });

  test("a query is of an aircraft, of probes, from inclusive to exclusive, with a limit", async () => {
    const store = await opened();
    await store.appendReadings([0, 1, 2, 3].flatMap((m) => [reading(m, m), reading(m, 50 + m, "heads")]));
    const temps = async (request: object) => {
      const whole = { ...ALL, aircraft: "lynx", resolution: "raw" as const, ...request };
      return (await store.readings(whole)).map((row) => row.mean);
    };
    expect(await temps({ probes: ["oil"], from: START + MINUTE, to: START + 3 * MINUTE })).toEqual([1, 2]);
    expect(await temps({ limit: 3 })).toEqual([0, 50, 1]);
    expect(await temps({ probes: [] })).toEqual([]);
    expect(await temps({ probes: ["gone"] })).toEqual([]);
    expect(await temps({ aircraft: "wren" })).toEqual([]);
    await store.close();
  });

  test.each([
    [{ ...reading(0, 1), time: 0.5 }, /invalid time: 0.5/],
    [{ ...reading(0, 1), time: Number.NaN }, /invalid time: NaN/],
    [{ ...reading(0, 1), time: -1 }, /invalid time: -1/],
    [reading(0, Number.NaN), /invalid tempC: NaN/],
    [reading(0, Number.POSITIVE_INFINITY), /invalid tempC: Infinity/],
  ])("an impossible reading is refused, and the others of its batch with it", async (bad, message) => {
    const store = await opened();
    await expect(store.appendReadings([reading(0, 5), bad])).rejects.toThrow(message);
    expect(await rowsOf(store, "raw")).toEqual([]);
    await store.close();
  });

  test("rollups are what the readings say, whenever they came and however often they were rolled up", async () => {
    const store = await opened();
    const made = fc.sample(
      fc.record({
        aircraft: fc.constantFrom("lynx", "wren"),
        probe: fc.constantFrom("oil", "heads"),
        time: fc.integer({ min: START, max: START + 5 * HOUR }),
        tempC: fc.integer({ min: -400, max: 900 }).map((tenths) => tenths / 10),
      }),
      { numRuns: 4000, seed: 11 },
    );
    // Late readings fall into hours that were rolled up long before.
    for (let i = 0; i < made.length; i += 500) {
      await store.appendReadings(made.slice(i, i + 500));
      if (i % 1000 === 0) await store.rollUp();
    }
    await store.rollUp();
    await store.rollUp();
    for (const aircraft of ["lynx", "wren"]) {
      for (const resolution of ["minute", "ten-minutes", "hour"] as const) {
        const rows = await rowsOf(store, resolution, aircraft);
        expect(rows.map(({ probe, time, ...rest }) => [`${probe} ${time}`, rest])).toEqual(
          expectedRollups(made, aircraft, STEPS[resolution]),
        );
      }
    }
    await store.close();
  });

  if (place.kind === "sqlite") {
    test("rollups do not wait for the disk; what comes after them does again", async () => {
      const database = await openedDatabase(await place.freshUrl());
      await appendReadings(database, "main", [reading(0, 1)]);
      await rollUp(database, "main");
      const full = 2;
      expect((await sql`pragma synchronous`.execute(database.kysely)).rows).toEqual([{ synchronous: full }]);
      await database.kysely.destroy();
    });
  }

  test("the newest reading of each probe", async () => {
    const store = await opened();
    await store.appendReadings([
      reading(5, 1),
      reading(2, 9),
      reading(3, 7, "heads"),
      reading(1, 4, "out", "base"),
    ]);
    await store.appendReadings([reading(4, 2)]);
    expect(await store.latestReadings()).toEqual([
      reading(5, 1),
      reading(3, 7, "heads"),
      reading(1, 4, "out", "base"),
    ]);
    await store.close();
  });

  test("dropped raw readings leave the rollups and the newest of each probe", async () => {
    const store = await opened();
    const minutes = Array.from({ length: 4 * 60 }, (_, m) => m);
    const heads = [reading(2, 39, "heads"), reading(3, 40, "heads")];
    await store.appendReadings([...minutes.map((m) => reading(m, m / 10)), ...heads]);
    // Not rolled up before: dropping does it, and down to the full hour.
    expect(await store.dropRawBefore(START + 2 * HOUR + 59 * MINUTE)).toBe(121);
    const raw = await rowsOf(store, "raw");
    expect(raw.map((row) => row.probe === "heads" || row.time >= START + 2 * HOUR)).not.toContain(false);
    expect(raw).toHaveLength(121);
    const hours = (await rowsOf(store, "hour")).filter((row) => row.probe === "oil");
    expect(hours.map(({ time, low, high, count }) => [(time - START) / HOUR, low, high, count])).toEqual([
      [0, 0, 5.9, 60],
      [1, 6, 11.9, 60],
      [2, 12, 17.9, 60],
      [3, 18, 23.9, 60],
    ]);
    expect(await store.latestReadings()).toContainEqual(reading(3, 40, "heads"));
    // Too old now, known or not: it is said so, and the hour keeps what it had.
    expect(
      await store.appendReadings([reading(30, 99), reading(5, 0.5), reading(130, 99), reading(130.5, 99)]),
    ).toEqual({
      kept: 1,
      known: 1,
      tooOld: 2,
    });
    await store.rollUp();
    const after = (await rowsOf(store, "hour")).filter((row) => row.probe === "oil");
    expect(after.map(({ high, count }) => [high, count])).toEqual([
      [5.9, 60],
      [11.9, 60],
      [99, 61],
      [23.9, 60],
    ]);
    expect(await store.dropRawBefore(START + HOUR)).toBe(0);
    expect(await store.appendReadings([reading(100, 1)])).toEqual({ kept: 0, known: 0, tooOld: 1 });
    await store.close();
  });

  test("minutes are dropped only where the raw readings are gone", async () => {
    const store = await opened();
    await store.appendReadings(Array.from({ length: 180 }, (_, m) => reading(m, m)));
    await store.rollUp();
    expect(await store.dropMinutesBefore(START + 3 * HOUR)).toBe(0);
    await store.dropRawBefore(START + HOUR);
    expect(await store.dropMinutesBefore(START + 3 * HOUR)).toBe(60);
    expect(await rowsOf(store, "minute")).toHaveLength(120);
    expect(await rowsOf(store, "ten-minutes")).toHaveLength(18);
    await store.close();
  });

  test("two bases in one database keep their readings apart", async () => {
    const url = await place.freshUrl();
    const [north, south] = [await openStore(url, { base: "north" }), await openStore(url, { base: "south" })];
    await north.appendReadings([reading(0, -30), reading(90, -31)]);
    await south.appendReadings([reading(0, 20), reading(90, 21)]);
    await north.rollUp();
    expect((await rowsOf(north, "hour")).map((row) => row.mean)).toEqual([-30, -31]);
    expect(await rowsOf(south, "hour")).toEqual([]);
    await north.dropRawBefore(START + HOUR);
    expect(await south.appendReadings([reading(1, 20)])).toEqual({ kept: 1, known: 0 });
    expect(await rowsOf(south, "raw")).toHaveLength(3);
    await north.close();
    await south.close();
  });
});

/** Worked out plainly, from the first of every probe and time. */
function expectedRollups(made: readonly ProbeReading[], aircraft: string, step: number) {
  const first = new Map<string, ProbeReading>();
  for (const row of made) {
    const key = `${row.probe} ${row.time}`;
    if (row.aircraft === aircraft && !first.has(key)) first.set(key, row);
  }
  const buckets = new Map<string, number[]>();
  const order = [...first.values()].sort((a, b) => a.time - b.time);
  for (const { probe, time, tempC } of order) {
    const key = `${probe} ${Math.floor(time / step) * step}`;
    buckets.set(key, [...(buckets.get(key) ?? []), tempC]);
  }
  const firstSeen = [...new Set(made.filter((row) => row.aircraft === aircraft).map((row) => row.probe))];
  return [...buckets]
    .sort(([a], [b]) => {
      const [[probeA, timeA], [probeB, timeB]] = [a.split(" "), b.split(" ")];
      return Number(timeA) - Number(timeB) || firstSeen.indexOf(probeA) - firstSeen.indexOf(probeB);
    })
    .map(([key, temps]) => [
      key,
      {
        low: Math.min(...temps),
        // Sums in another order differ in the last digits.
        mean: expect.closeTo(temps.reduce((sum, t) => sum + t, 0) / temps.length, 9),
        high: Math.max(...temps),
        count: temps.length,
      },
    ]);
}
