import { appendFileSync, existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setImmediate as nextTurn } from "node:timers/promises";
import { describe, expect, test } from "vitest";
import { backupTo, openStore, restoreFrom, type Store } from "../../src/store/index.js";
import { HOUR, note, reading, START, shutDown } from "./example-events.js";
import { describePostgres, describeStores, type StorePlace, sqlitePlace } from "./stores.js";

const clock = () => START;

/** Everything that a backup is to hold, in a form that can be compared. */
async function contents(store: Store) {
  const readings = [];
  for (const aircraft of ["lynx", "wren", "base"]) {
    for (const resolution of ["raw", "minute", "ten-minutes", "hour"] as const) {
      const rows = await store.readings({ aircraft, from: 0, to: START + 1e9, resolution, limit: 1e6 });
      readings.push(rows.map((row) => ({ ...row, mean: Number(row.mean.toFixed(9)) })));
    }
  }
  return {
    events: await store.eventsAfter(0, 1e6),
    page: await store.eventsBefore({ aircraft: "lynx", limit: 1e6 }),
    readings,
    latest: await store.latestReadings(),
    states: await store.states(""),
    users: await store.users(),
    tokens: await store.deviceTokens(),
  };
}

async function fill(url: string, base = "main"): Promise<Awaited<ReturnType<typeof contents>>> {
  const store = await openStore(url, { base, clock });
  await store.append(Array.from({ length: 1100 }, (_, i) => shutDown(i, i % 3 === 0 ? "wren" : "lynx")));
  const correction = {
    ...note(5000, "not so"),
    kind: "correction",
    of: shutDown(1).id,
    instead: null,
  } as const;
  await store.append([note(4000, "line\u2028apart, \u0000, half \ud800"), correction]);
  await store.appendReadings(Array.from({ length: 1500 }, (_, m) => reading(m, m / 7)));
  await store.appendReadings(Array.from({ length: 30 }, (_, m) => reading(m, -m, "heads")));
  await store.appendReadings([reading(3, -30, "outside", "base")]);
  await store.rollUp();
  await store.dropRawBefore(START + 5 * HOUR + 1);
  await store.dropMinutesBefore(START + 2 * HOUR);
  await store.saveState("runner", { since: [1, null] });
  await store.saveUser({ id: "u1", name: "Owner", role: "owner", passwordHash: "hashed" });
  await store.saveSession({ tokenHash: "a", user: "u1", expires: 9e12, lastSeen: 1 });
  await store.saveDeviceToken({ id: "d1", name: "Logger", tokenHash: "t", role: "device", created: 1 });
  const held = await contents(store);
  await store.close();
  return held;
}

async function restored(url: string, file: string, base = "main") {
  const counts = await restoreFrom(url, file, { base });
  const store = await openStore(url, { base });
  const held = await contents(store);
  return { store, held, counts };
}

describeStores("backups", (place) => {
  test("a restored base holds all that was backed up, and goes on from there", async () => {
    const file = join(place.folder, "whole.jsonl");
    const url = await place.freshUrl();
    const held = await fill(url);
    const counts = await backupTo(url, file, { clock });
    // Of 1500 minutes the first 5 hours were dropped; the newest of the two silent probes stay.
    expect(counts).toEqual({ events: 1102, readings: 1200 + 2 });
    const back = await restored(await place.freshUrl(), file);
    expect(back.counts).toEqual(counts);
    expect(back.held).toEqual(held);
    expect(await back.store.session("a")).toBeUndefined();
    expect(await back.store.append([shutDown(3, "wren"), shutDown(9000)])).toMatchObject({
      known: [shutDown(3).id],
      kept: [{ sequence: 1103 }],
    });
    // What was rolled up and dropped before is still too old.
    expect(await back.store.appendReadings([reading(10, 1)])).toEqual({ kept: 0, known: 0, tooOld: 1 });
    await back.store.close();
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(readdirSync(place.folder).filter((name) => name.endsWith(".part"))).toEqual([]);
  });

  test("one base of several is backed up, and may be restored under another name", async () => {
    const file = join(place.folder, "north.jsonl");
    const url = await place.freshUrl();
    const held = await fill(url, "north");
    const south = await openStore(url, { base: "south" });
    await south.append([note(1, "south")]);
    await south.close();
    await backupTo(url, file, { base: "north" });
    expect(readFileSync(file, "utf8")).not.toContain('"south"');
    const back = await restored(url, file, "north-2");
    expect(back.held).toEqual(held);
    await back.store.close();
  });

  test("a base that holds something is not restored over", async () => {
    const file = join(place.folder, "over.jsonl");
    const url = await place.freshUrl();
    const held = await fill(url);
    await backupTo(url, file);
    await expect(restoreFrom(url, file)).rejects.toMatchObject({ kind: "not-empty" });
    const store = await openStore(url);
    expect(await contents(store)).toEqual(held);
    await store.close();
  });

  test("a backup shows one moment, though others go on writing", async () => {
    const file = join(place.folder, "moment.jsonl");
    const url = await place.freshUrl();
    const store = await openStore(url);
    await store.append(Array.from({ length: 2000 }, (_, i) => shutDown(i)));
    // Many probes lie between the events and the states of a backup: time for others to write.
    await store.appendReadings(Array.from({ length: 12_000 }, (_, i) => reading(i, 1, `probe-${i % 120}`)));
    let last = 2000;
    let running = true;
    const writing = (async () => {
      while (running) {
        await store.append([shutDown(last++)]);
        await store.saveState("last", last);
        // SQLite answers at once: without a pause nobody else would have a turn.
        await nextTurn();
      }
    })();
    const { events } = await backupTo(url, file);
    running = false;
    await writing;
    await store.close();
    const back = await restored(await place.freshUrl(), file);
    expect(back.held.events).toHaveLength(events);
    expect(back.held.events.map(({ sequence }) => sequence)).toEqual(
      Array.from({ length: events }, (_, i) => i + 1),
    );
    // The state was saved after its event: a backup of one moment holds at most one event more than the state says.
    const saved = back.held.states.get("last");
    expect(events - (typeof saved === "number" ? saved : 2000)).toBeOneOf([0, 1]);
    await back.store.close();
  });
});

describe("backup files", () => {
  const place = sqlitePlace();
  const backup = async (name: string) => {
    const file = join(place.folder, name);
    const url = await place.freshUrl();
    await fill(url);
    await backupTo(url, file);
    return file;
  };
  const refused = async (file: string, kind = "backup-damaged") => {
    const url = await place.freshUrl();
    await expect(restoreFrom(url, file)).rejects.toMatchObject({ kind });
    // Nothing was made of it, not even a store.
    expect(existsSync(url.slice("file:".length))).toBe(false);
  };

  test("one cut off anywhere is refused", async () => {
    const file = await backup("cut.jsonl");
    const whole = readFileSync(file);
    const ends = [
      0,
      1,
      40,
      Math.floor(whole.length / 2),
      whole.length - 100,
      whole.length - 2,
      whole.length - 1,
    ];
    const lineEnd = whole.indexOf("\n", Math.floor(whole.length / 2)) + 1;
    const beforeEndLine = whole.lastIndexOf("\n", whole.length - 2) + 1;
    for (const end of [...ends, lineEnd, beforeEndLine]) {
      writeFileSync(file, whole.subarray(0, end));
      await refused(file);
    }
  });

  test("one with a changed byte anywhere is refused", async () => {
    const file = await backup("changed.jsonl");
    const whole = readFileSync(file);
    const places = Array.from({ length: 30 }, (_, i) => Math.floor(((i + 0.5) / 30) * whole.length));
    for (const place of [...places, whole.length - 20]) {
      const changed = Buffer.from(whole);
      changed[place] ^= 1;
      writeFileSync(file, changed);
      await refused(file);
    }
  });

  test("one with lines added, doubled or taken out is refused", async () => {
    const file = await backup("lines.jsonl");
    const whole = readFileSync(file, "utf8");
    const lines = whole.split("\n");
    for (const changed of [
      [...lines.slice(0, 5), ...lines.slice(6)],
      [...lines.slice(0, 5), lines[4], ...lines.slice(5)],
      [...lines.slice(0, -1), lines[4], ""],
    ]) {
      writeFileSync(file, changed.join("\n"));
      await refused(file);
    }
    writeFileSync(file, whole);
    appendFileSync(file, whole);
    await refused(file);
  });

  test("one of a newer program, or of something else, is refused", async () => {
    const file = join(place.folder, "newer.jsonl");
    writeFileSync(file, '{"soakline_backup":3}\n{"lines":1,"sha256":""}\n');
    await refused(file, "backup-of-newer-version");
    writeFileSync(file, "Dear Sir,\n");
    await refused(file);
    await expect(restoreFrom(await place.freshUrl(), join(place.folder, "gone.jsonl"))).rejects.toThrow(
      /ENOENT/,
    );
  });

  test("a backup that cannot be finished leaves the one before", async () => {
    const file = await backup("kept.jsonl");
    const before = readFileSync(file, "utf8");
    const url = await place.freshUrl();
    await fill(url);
    const { runSql } = await import("./stores.js");
    // An event that is no JSON: reading it fails in the middle of the writing.
    await runSql(url, "insert into events values ('main', 2000, 'x', 1, 1, 'note', null, '{', 'h')");
    await expect(backupTo(url, file)).rejects.toThrow();
    expect(readFileSync(file, "utf8")).toBe(before);
    expect(readdirSync(place.folder).filter((name) => name.includes(".part"))).toEqual([]);
  });
});

describePostgres("backups from one database to the other", (postgres) => {
  const sqlite = sqlitePlace();
  test.each<[string, StorePlace, StorePlace]>([
    ["SQLite to PostgreSQL", sqlite, postgres],
    ["PostgreSQL to SQLite", postgres, sqlite],
  ])("%s: the same base", async (name, from, to) => {
    const file = join(sqlite.folder, `${name}.jsonl`);
    const url = await from.freshUrl();
    const held = await fill(url);
    await backupTo(url, file);
    const back = await restored(await to.freshUrl(), file);
    expect(back.held).toEqual(held);
    await back.store.close();
  });
});
