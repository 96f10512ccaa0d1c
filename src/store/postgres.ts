import { CompiledQuery, Kysely, PostgresDialect } from "kysely";
import pg from "pg";
import type { Tables } from "./tables.js";

export const SCHEMA = "soakline";

/** [ms] */
const CONNECTING = 10_000;
const CONNECTIONS = 8;

/** Every table stands in a schema of its own, so that the database may be shared with others. */
export function openPostgres(url: string): Kysely<Tables> {
  const pool = new pg.Pool({
    connectionString: url,
    max: CONNECTIONS,
    connectionTimeoutMillis: CONNECTING,
    application_name: "soakline",
    types: {
      // Counts and times come as text otherwise; none of them is beyond what a number holds exactly.
      getTypeParser: ((oid: number, format?: "text" | "binary") =>
        oid === pg.types.builtins.INT8
          ? Number
          : pg.types.getTypeParser(oid, format as "text")) as typeof pg.types.getTypeParser,
    },
  });
  // A connection that breaks fails the query it was busy with, which says so, and is replaced. Without listeners the
  // breaking itself, told once more as an event, would end the process.
  pool.on("error", () => undefined);
  pool.on("connect", (client) => client.on("error", () => undefined));
  return new Kysely<Tables>({
    dialect: new PostgresDialect({
      pool,
      onCreateConnection: async (connection) => {
        for (const setting of SETTINGS) await connection.executeQuery(CompiledQuery.raw(setting));
      },
    }),
  });
}

/** What was acknowledged is on disk, whatever the server's default; nobody waits for ever for a lock. */
const SETTINGS = [
  `set search_path to ${SCHEMA}`,
  "set synchronous_commit to on",
  "set lock_timeout to '20s'",
  "set default_transaction_isolation to 'read committed'",
];
