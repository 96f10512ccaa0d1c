import { setTimeout as wait } from "node:timers/promises";
import { expect, test } from "vitest";
import type { StoredEvent } from "../../src/logbook/index.js";
import { lockBase } from "../../src/store/database.js";
import { openStore, type Store } from "../../src/store/index.js";
import { openedDatabase } from "../../src/store/open-store.js";
import { HOUR, reading, START, shutDown } from "./example-events.js";
import { describePostgres, runSql } from "./stores.js";

const WRITERS = 4;
const BATCHES = 60;

describePostgres("several programs at one PostgreSQL base", (place) => {
  test("a reader that goes on from the highest sequence sees every event once, in order", async () => {
    const url = await place.freshUrl();
    const stores = await Promise.all(Array.from({ length: WRITERS + 1 }, () => openStore(url)));
    const [reader, ...writers] = stores;
    let writing = WRITERS;
    const written = writers.map(async (store, w) => {
      let next = w * 100_000;
      for (let batch = 0; batch < BATCHES; batch++) {
        const events = Array.from({ length: 1 + ((batch + w) % 5) }, () => shutDown(next++));
        // Now and then the same again, as after a lost answer.
        await store.append(batch % 7 === 0 ? [...events, ...events] : events);
      }
      writing--;
      return next - w * 100_000;
    });
    const seen: StoredEvent[] = [];
    let polls = 0;
    for (let last = 0; ; polls++) {
      const done = writing === 0;
      const page = await reader.eventsAfter(last, 7);
      seen.push(...page);
      last = page.at(-1)?.sequence ?? last;
      if (page.length === 0 && done) break;
      if (page.length === 0) await wait(1);
    }
    const total = (await Promise.all(written)).reduce((sum, n) => sum + n, 0);
    expect(polls).toBeGreaterThan(20);
    expect(seen.map(({ sequence }) => sequence)).toEqual(Array.from({ length: total }, (_, i) => i + 1));
    expect(new Set(seen.map(({ event }) => event.id)).size).toBe(total);
    expect(await reader.eventsAfter(0, 1e6)).toEqual(seen);
    await closeAll(stores);
  });

  test("the same events from all sides at once are kept once", async () => {
    const url = await place.freshUrl();
    const stores = await Promise.all(Array.from({ length: WRITERS }, () => openStore(url)));
    const events = Array.from({ length: 50 }, (_, i) => shutDown(i));
    const results = await Promise.all(
      stores.map((store, i) => store.append(i % 2 === 0 ? events : events.toReversed())),
    );
    expect(results.reduce((sum, { kept }) => sum + kept.length, 0)).toBe(50);
    expect(results.reduce((sum, { known }) => sum + known.length, 0)).toBe(50 * (WRITERS - 1));
    expect(results.flatMap(({ conflicting }) => conflicting)).toEqual([]);
    await closeAll(stores);
  });

  test("connections that the server breaks, busy or idle, fail what they were doing and nothing else", async () => {
    const url = await place.freshUrl();
    const store = await openStore(url);
    await store.append([shutDown(1)]);
    const breakAll = `select pg_terminate_backend(pid) from pg_stat_activity
      where application_name = 'soakline' and datname = current_database()`;
    await runSql(url, breakAll);
    expect((await eventually(() => store.append([shutDown(2)]))).kept).toHaveLength(1);
    // Held up by the lock of another session, so that it is broken in the middle.
    const held = await openStore(url);
    const database = await openedDatabase(url);
    await database.kysely
      .transaction()
      .execute(async (connection) => {
        await lockBase(database, connection, "events", "main");
        const waiting = store.append([shutDown(3)]);
        const refused = expect(waiting).rejects.toThrow(/terminat/);
        await wait(200);
        await runSql(url, breakAll);
        await refused;
      })
      .catch(() => undefined);
    expect((await eventually(() => store.append([shutDown(3)]))).kept).toHaveLength(1);
    expect(await eventually(() => held.eventsAfter(0, 9))).toHaveLength(3);
    await closeAll([store, held]);
    await database.kysely.destroy();
  });

  test("no reading is missed by the rollups, though they are made while readings come in", async () => {
    const url = await place.freshUrl();
    const stores = await Promise.all(Array.from({ length: WRITERS + 1 }, () => openStore(url)));
    const [roller, ...writers] = stores;
    let writing = WRITERS;
    const written = writers.map(async (store, w) => {
      for (let m = 0; m < 120; m++) {
        // All in the same few slots of ten minutes, and each twice from two writers.
        await store.appendReadings([reading(m / 4, w, `p${w % 2}`), reading(m / 4 + 1 / 8, w, `p${w}`)]);
      }
      writing--;
    });
    let times = 0;
    for (; writing > 0; times++) await roller.rollUp();
    await Promise.all(written);
    await roller.rollUp();
    expect(times).toBeGreaterThan(5);
    const range = { aircraft: "lynx", from: START, to: START + HOUR, limit: 1e6 };
    const raw = await roller.readings({ ...range, resolution: "raw" });
    for (const resolution of ["minute", "ten-minutes", "hour"] as const) {
      const rows = await roller.readings({ ...range, resolution });
      expect(rows.reduce((sum, { count }) => sum + count, 0)).toBe(raw.length);
    }
    expect(raw.length).toBe(2 * 120 + 4 * 120);
    await closeAll(stores);
  });
});

/** A connection may be found broken only when it is used; the next try has another. */
async function eventually<T>(attempt: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries++) {
    try {
      return await attempt();
    } catch (error) {
      if (tries === 10) throw error;
      await wait(50);
    }
  }
}

async function closeAll(stores: readonly Store[]): Promise<void> {
  await Promise.all(stores.map((store) => store.close()));
}
