import { createHash } from "node:crypto";
import type { Selectable } from "kysely";
import { canonicalText, eventInCurrentForm, type LogbookEvent, type StoredEvent } from "../logbook/index.js";
import type { AppendResult, Store } from "./contract.js";
import { type Connection, type Database, inChunks, lockBase } from "./database.js";
import type { Tables } from "./tables.js";

/** Rows in one statement: both databases allow some 30 000 parameters. */
const CHUNK = 500;

/**
 * All of the events or none, in one transaction. Sequences grow in the order of the commits: a base's writers wait for
 * each other, so that a reader that has seen a sequence never finds a lower one later.
 */
export async function appendEvents(
  database: Database,
  base: string,
  events: readonly LogbookEvent[],
  received: number,
): Promise<AppendResult> {
  if (events.length === 0) return { kept: [], known: [], conflicting: [] };
  const hashed = events.map((event) => ({ event, hash: hashOf(event) }));
  return database.kysely.transaction().execute(async (connection) => {
    await lockBase(database, connection, "events", base);
    const hashes = await hashesOf(
      connection,
      base,
      hashed.map(({ event }) => event.id),
    );
    const aircraft = await aircraftOf(connection, base, events);
    let sequence = await lastSequence(connection, base);
    const rows: Selectable<Tables["events"]>[] = [];
    const known: string[] = [];
    const conflicting: string[] = [];
    for (const { event, hash } of hashed) {
      const before = hashes.get(event.id);
      if (before !== undefined) {
        const isSame = before === hash || (await isInOlderForm(connection, base, event.id, hash));
        (isSame ? known : conflicting).push(event.id);
        continue;
      }
      hashes.set(event.id, hash);
      rows.push({
        base,
        sequence: ++sequence,
        id: event.id,
        happened: Date.parse(event.at),
        received,
        kind: event.kind,
        aircraft: aircraft(event),
        content: JSON.stringify(event),
        hash,
      });
    }
    for (const chunk of inChunks(rows, CHUNK)) await connection.insertInto("events").values(chunk).execute();
    return { kept: rows.map(storedOf), known, conflicting };
  });
}

export function hashOf(event: LogbookEvent): string {
  return createHash("sha256").update(canonicalText(event)).digest("hex");
}

async function hashesOf(
  connection: Connection,
  base: string,
  ids: readonly string[],
): Promise<Map<string, string>> {
  const hashes = new Map<string, string>();
  for (const chunk of inChunks(ids, CHUNK)) {
    const rows = await connection
      .selectFrom("events")
      .select(["id", "hash"])
      .where("base", "=", base)
      .where("id", "in", chunk)
      .execute();
    for (const { id, hash } of rows) hashes.set(id, hash);
  }
  return hashes;
}

/** Whether what is kept under an id is the same event, as an earlier version of the program wrote it. */
async function isInOlderForm(
  connection: Connection,
  base: string,
  id: string,
  hash: string,
): Promise<boolean> {
  const row = await connection
    .selectFrom("events")
    .select("content")
    .where("base", "=", base)
    .where("id", "=", id)
    .executeTakeFirst();
  return row !== undefined && hashOf(eventIn(row.content)) === hash;
}

/** Whose page an event belongs on; a correction and a cleared fault go where the event stands that they are about. */
async function aircraftOf(
  connection: Connection,
  base: string,
  events: readonly LogbookEvent[],
): Promise<(event: LogbookEvent) => string | null> {
  const named = new Map<string, string>();
  for (const event of events) {
    const own = ownAircraft(event);
    if (own !== undefined) named.set(event.id, own);
  }
  const about = events.flatMap((event) =>
    "of" in event && ownAircraft(event) === undefined && !named.has(event.of) ? [event.of] : [],
  );
  for (const chunk of inChunks(about, CHUNK)) {
    const rows = await connection
      .selectFrom("events")
      .select(["id", "aircraft"])
      .where("base", "=", base)
      .where("id", "in", chunk)
      .execute();
    for (const { id, aircraft } of rows) if (aircraft !== null) named.set(id, aircraft);
  }
  return (event) => named.get(event.id) ?? ("of" in event ? (named.get(event.of) ?? null) : null);
}

function ownAircraft(event: LogbookEvent): string | undefined {
  if (event.kind !== "correction") return "aircraft" in event ? event.aircraft : undefined;
  const { instead } = event;
  return instead !== null && "aircraft" in instead ? instead.aircraft : undefined;
}

async function lastSequence(connection: Connection, base: string): Promise<number> {
  const row = await connection
    .selectFrom("events")
    .select("sequence")
    .where("base", "=", base)
    .orderBy("sequence", "desc")
    .limit(1)
    .executeTakeFirst();
  return row?.sequence ?? 0;
}

function storedOf({
  sequence,
  received,
  content,
}: Pick<Selectable<Tables["events"]>, "sequence" | "received" | "content">): StoredEvent {
  return { sequence, received: new Date(received).toISOString(), event: eventIn(content) };
}

/** What was kept is never rewritten: it is read in today's form. */
function eventIn(content: string): LogbookEvent {
  return eventInCurrentForm(JSON.parse(content)) as LogbookEvent;
}

const STORED = ["sequence", "received", "content"] as const;

export function eventReaders(
  { kysely }: Database,
  base: string,
): Pick<Store, "eventsAfter" | "eventsBefore" | "event"> {
  const events = () => kysely.selectFrom("events").select(STORED).where("base", "=", base);
  return {
    eventsAfter: async (sequence, limit) => {
      const query = events().where("sequence", ">", sequence).orderBy("sequence").limit(limit);
      return (await query.execute()).map(storedOf);
    },
    eventsBefore: async ({ before, aircraft, kinds, limit }) => {
      let query = events().orderBy("sequence", "desc").limit(limit);
      if (before !== undefined) query = query.where("sequence", "<", before);
      if (aircraft !== undefined) query = query.where("aircraft", "=", aircraft);
      if (kinds !== undefined) {
        if (kinds.length === 0) return [];
        query = query.where("kind", "in", kinds);
      }
      return (await query.execute()).map(storedOf);
    },
    event: async (id) => {
      const row = await events().where("id", "=", id).executeTakeFirst();
      return row === undefined ? undefined : storedOf(row);
    },
  };
}
