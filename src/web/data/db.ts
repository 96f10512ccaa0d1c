import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from "idb";
import type { LogbookEvent } from "../../logbook/index.js";
import { eventInCurrentForm } from "../../logbook/migrate-event.js";

// What the device keeps. Each book (the user's own base, the demo) is a database of its own.

export type Book = "own" | "demo";

interface Shape extends DBSchema {
  /** The logbook, by the ids its writers gave. */
  events: { key: string; value: KeptEvent };
  /** Ids of events that the server has not confirmed, in the order they were made. */
  outbox: { key: number; value: { readonly id: string } };
  /** Small things that are replaced whole: last view, last plans, how far the server's log is known. */
  notes: { key: string; value: unknown };
}

interface KeptEvent {
  readonly id: string;
  readonly event: LogbookEvent;
  /** Place in the server's log; undefined until it confirms. */
  readonly sequence?: number;
}

export type Db = IDBPDatabase<Shape>;

export function openBook(book: Book, onBlocked: () => void): Promise<Db> {
  return openDB<Shape>(`soakline-${book}`, 2, {
    async upgrade(db, version, _, tx) {
      if (version < 1) {
        db.createObjectStore("events", { keyPath: "id" });
        db.createObjectStore("outbox", { autoIncrement: true });
        db.createObjectStore("notes");
      }
      if (version === 1) await bringForward(tx);
    },
    // An old tab holds the old form open: the user is asked to close it.
    blocked: onBlocked,
    // This tab holds the old form open while another wants the new one.
    blocking: (_current, _blocked, event) => (event.target as unknown as { close(): void }).close(),
  });
}

/** Version 2 keeps events in today's form; what was worked out of them is worked out anew. */
async function bringForward(tx: IDBPTransaction<Shape, StoreName[], "versionchange">): Promise<void> {
  const events = tx.objectStore("events");
  for (let cursor = await events.openCursor(); cursor !== null; cursor = await cursor.continue()) {
    const event = eventInCurrentForm(cursor.value.event) as LogbookEvent;
    if (event !== cursor.value.event) await cursor.update({ ...cursor.value, event });
  }
  for (const key of ["view", "plans"]) await tx.objectStore("notes").delete(key);
}

type StoreName = "events" | "outbox" | "notes";

export async function eventsOf(db: Db): Promise<LogbookEvent[]> {
  return (await db.getAll("events")).map(({ event }) => event);
}

/** Keeps new events and, in the same transaction, that they have to be sent. */
export async function keepOwn(db: Db, events: readonly LogbookEvent[]): Promise<void> {
  const tx = db.transaction(["events", "outbox"], "readwrite");
  for (const event of events) {
    if ((await tx.objectStore("events").get(event.id)) !== undefined) continue;
    await tx.objectStore("events").add({ id: event.id, event });
    await tx.objectStore("outbox").add({ id: event.id });
  }
  await tx.done;
}

/** Keeps what the server has; an event of our own among it is no longer waiting. Returns how many were new here. */
export async function keepFromServer(
  db: Db,
  stored: readonly { readonly sequence: number; readonly event: LogbookEvent }[],
): Promise<number> {
  const tx = db.transaction(["events", "outbox", "notes"], "readwrite");
  let fresh = 0;
  for (const { sequence, event } of stored) {
    const known = await tx.objectStore("events").get(event.id);
    if (known === undefined) fresh++;
    await tx.objectStore("events").put({ id: event.id, event, sequence });
  }
  const ids = new Set(stored.map(({ event }) => event.id));
  for (
    let cursor = await tx.objectStore("outbox").openCursor();
    cursor !== null;
    cursor = await cursor.continue()
  ) {
    if (ids.has(cursor.value.id)) await cursor.delete();
  }
  const last = stored[stored.length - 1];
  if (last !== undefined) {
    const before = ((await tx.objectStore("notes").get("sequence")) as number | undefined) ?? 0;
    await tx.objectStore("notes").put(Math.max(before, last.sequence), "sequence");
  }
  await tx.done;
  return fresh;
}

export async function waitingOf(db: Db, limit = 200): Promise<{ key: number; event: LogbookEvent }[]> {
  const tx = db.transaction(["events", "outbox"]);
  const waiting: { key: number; event: LogbookEvent }[] = [];
  for (
    let cursor = await tx.objectStore("outbox").openCursor();
    cursor !== null && waiting.length < limit;
    cursor = await cursor.continue()
  ) {
    const kept = await tx.objectStore("events").get(cursor.value.id);
    if (kept !== undefined) waiting.push({ key: cursor.key, event: kept.event });
  }
  return waiting;
}

export async function sent(db: Db, keys: readonly number[]): Promise<void> {
  const tx = db.transaction("outbox", "readwrite");
  for (const key of keys) await tx.store.delete(key);
  await tx.done;
}

export async function note<T>(db: Db, key: string): Promise<T | undefined> {
  return (await db.get("notes", key)) as T | undefined;
}

export async function saveNote(db: Db, key: string, value: unknown): Promise<void> {
  await db.put("notes", value, key);
}

export async function clearBook(db: Db): Promise<void> {
  const tx = db.transaction(["events", "outbox", "notes"], "readwrite");
  await Promise.all([
    tx.objectStore("events").clear(),
    tx.objectStore("outbox").clear(),
    tx.objectStore("notes").clear(),
    tx.done,
  ]);
}
