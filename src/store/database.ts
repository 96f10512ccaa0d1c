import { type Kysely, sql, type Transaction } from "kysely";
import { openPostgres } from "./postgres.js";
import { openSqlite } from "./sqlite.js";
import type { Tables } from "./tables.js";

export type Dialect = "sqlite" | "postgres";
export type Connection = Kysely<Tables> | Transaction<Tables>;

export interface Database {
  readonly dialect: Dialect;
  readonly kysely: Kysely<Tables>;
}

/** `file:PATH` or a plain path is an SQLite file, `postgres://…` a PostgreSQL database. */
export function openDatabase(url: string): Database {
  if (/^postgres(ql)?:\/\//.test(url)) return { dialect: "postgres", kysely: openPostgres(url) };
  const scheme = /^([a-z][a-z0-9+.-]*):/i.exec(url)?.[1];
  // The rest of an address may hold a password and is not repeated.
  if ((scheme !== undefined && scheme !== "file") || url === "" || url === "file:") {
    const shown = scheme === undefined ? "nothing" : `${scheme}:…`;
    throw new RangeError(`invalid url: ${shown} (expected file:PATH, a path, or postgres://…)`);
  }
  return { dialect: "sqlite", kysely: openSqlite(url) };
}

/**
 * Only one writer of a kind at a time in a base, until the transaction ends. SQLite has one writer anyway; PostgreSQL
 * gives the lock back after the commit can be seen, so that whoever comes next also sees what was written.
 */
export async function lockBase(
  { dialect }: Database,
  connection: Connection,
  what: "events" | "readings",
  base: string,
): Promise<void> {
  if (dialect === "sqlite") return;
  await sql`select pg_advisory_xact_lock(hashtextextended(${`soakline:${what}:${base}`}, 0))`.execute(
    connection,
  );
}

/**
 * A transaction that does not wait for the disk. Only for what is worked out again where a power cut takes it back; the
 * next transaction that waits brings this one to the disk too.
 */
export async function unsynced<T>(
  { dialect, kysely }: Database,
  work: (connection: Connection) => Promise<T>,
): Promise<T> {
  if (dialect === "postgres") {
    return kysely.transaction().execute(async (connection) => {
      await sql`set local synchronous_commit to off`.execute(connection);
      return work(connection);
    });
  }
  // The one connection is held throughout, so that nothing else is written meanwhile.
  return kysely.connection().execute(async (connection) => {
    await sql`pragma synchronous = normal`.execute(connection);
    try {
      return await connection.transaction().execute(work);
    } finally {
      await sql`pragma synchronous = full`.execute(connection);
    }
  });
}

export function inChunks<T>(all: readonly T[], size: number): readonly (readonly T[])[] {
  const chunks: T[][] = [];
  for (let i = 0; i < all.length; i += size) chunks.push(all.slice(i, i + size));
  return chunks;
}
