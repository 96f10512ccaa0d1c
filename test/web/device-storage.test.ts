import "fake-indexeddb/auto";
import { readFileSync } from "node:fs";
import { openDB } from "idb";
import { expect, test } from "vitest";
import { eventInCurrentForm, type LogbookEvent, readEvents } from "../../src/logbook/index.js";
import { eventsOf, note, openBook, waitingOf } from "../../src/web/data/db.js";

// What a device kept in version 1 of its storage: events in the words of version 1 of the set-up, some not sent yet.

const text = readFileSync("test/logbook/fixtures/logbook-1.json", "utf8");
const written: { id: string }[] = JSON.parse(text).events;
const current = written.map(eventInCurrentForm) as LogbookEvent[];

test("a device's storage of version 1 opens with its events in today's form, and what waits is sent so", async () => {
  const old = await openDB("soakline-own", 1, {
    upgrade(db) {
      db.createObjectStore("events", { keyPath: "id" });
      db.createObjectStore("outbox", { autoIncrement: true });
      db.createObjectStore("notes");
    },
  });
  for (const [i, event] of written.entries()) {
    await old.put("events", { id: event.id, event, ...(i < 2 ? { sequence: i + 1 } : {}) });
    if (i >= 2) await old.add("outbox", { id: event.id });
  }
  for (const key of ["view", "plans", "has-server"]) await old.put("notes", true, key);
  old.close();

  const db = await openBook("own", () => {
    throw new Error("blocked");
  });
  expect(await eventsOf(db)).toEqual(current);
  const waiting = (await waitingOf(db)).map(({ event }) => event);
  expect(waiting).toEqual(current.slice(2));
  expect(readEvents(waiting).issues).toEqual([]);
  expect(await db.get("events", written[1].id)).toMatchObject({ sequence: 2 });
  // What was worked out in another form is worked out anew; what is known stays.
  expect(await note(db, "view")).toBeUndefined();
  expect(await note(db, "plans")).toBeUndefined();
  expect(await note(db, "has-server")).toBe(true);
  db.close();
});

test("a new device's storage is of today's form at once", async () => {
  const db = await openBook("demo", () => {
    throw new Error("blocked");
  });
  expect([db.version, [...db.objectStoreNames]]).toEqual([2, ["events", "notes", "outbox"]]);
  db.close();
});
