import { sql } from "kysely";
import type { Connection, Database } from "./database.js";
import { StoreFailure } from "./failure.js";
import { STORE_MIGRATIONS } from "./migrations.js";
import { SCHEMA } from "./postgres.js";

/** @internal for tests */
export const STORE_VERSION = STORE_MIGRATIONS.length;

/**
 * Brings a database forward to this program's version, from any earlier one or from nothing, all or not at all. One
 * that is newer, or another program's, is refused and left as it is.
 */
export async function migrate(database: Database): Promise<void> {
  if ((await versionOf(database, database.kysely)) === STORE_VERSION) return;
  await database.kysely.transaction().execute(async (connection) => {
    if (database.dialect === "postgres") {
      await sql`select pg_advisory_xact_lock(hashtextextended('soakline:schema', 0))`.execute(connection);
    }
    // Somebody else may have been first.
    const version = await versionOf(database, connection);
    for (const { version: to, statements } of STORE_MIGRATIONS.slice(version)) {
      if (to === 1) await begin(database, connection);
      try {
        for (const statement of statements(database.dialect)) await sql.raw(statement).execute(connection);
      } catch (error) {
        const reason = error instanceof Error ? error.message : String(error);
        throw new StoreFailure(
          "migration-failed",
          `the store is of version ${version} and cannot be brought to ${to}: ${reason}; it was left as it was`,
          { cause: error },
        );
      }
      await connection.updateTable("soakline_schema").set({ version: to }).execute();
    }
  });
}

async function begin({ dialect }: Database, connection: Connection): Promise<void> {
  if (dialect === "postgres") {
    const { rows } = await sql`select 1 from pg_namespace where nspname = ${SCHEMA}`.execute(connection);
    if (rows.length === 0) await sql.raw(`create schema ${SCHEMA}`).execute(connection);
  }
  const strict = dialect === "sqlite" ? " strict" : "";
  await sql.raw(`create table soakline_schema (version integer not null)${strict}`).execute(connection);
  await connection.insertInto("soakline_schema").values({ version: 0 }).execute();
}

/** 0 for an empty database. */
async function versionOf(database: Database, connection: Connection): Promise<number> {
  const tables = await tableNames(database, connection);
  if (!tables.includes("soakline_schema")) {
    if (tables.length === 0) return 0;
    throw new StoreFailure("not-a-store", "the database holds tables, but not those of a Soakline store");
  }
  const rows = await connection.selectFrom("soakline_schema").select("version").execute();
  const version = rows[0]?.version ?? Number.NaN;
  if (rows.length !== 1 || !(version >= 1)) {
    throw new StoreFailure("not-a-store", "the database does not say of which version it is");
  }
  if (version > STORE_VERSION) {
    throw new StoreFailure(
      "newer-version",
      `the store is of version ${version}, this program knows versions up to ${STORE_VERSION}: use a newer program`,
    );
  }
  return version;
}

async function tableNames({ dialect }: Database, connection: Connection): Promise<readonly string[]> {
  const query =
    dialect === "sqlite"
      ? sql<{ name: string }>`select name from sqlite_master where type = 'table'`
      : sql<{ name: string }>`select tablename as name from pg_tables where schemaname = ${SCHEMA}`;
  return (await query.execute(connection)).rows.map(({ name }) => name);
}
