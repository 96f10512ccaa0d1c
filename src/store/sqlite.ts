import { closeSync, mkdirSync, openSync } from "node:fs";
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import SQLite from "better-sqlite3";
import {
  CompiledQuery,
  type DatabaseConnection,
  Kysely,
  SqliteDialect,
  SqliteDriver,
  type TransactionSettings,
} from "kysely";
import { StoreFailure } from "./failure.js";
import type { Tables } from "./tables.js";

/** [ms] how long to wait for another process that is writing. */
const BUSY = 10_000;

/**
 * An SQLite file that keeps what was acknowledged through a power cut: write-ahead log, synced to disk with every
 * commit. Only its owner may read it: it holds password hashes.
 */
export function openSqlite(url: string): Kysely<Tables> {
  const path = pathOf(url);
  if (path !== MEMORY) {
    mkdirSync(dirname(path), { recursive: true });
    closeSync(openSync(path, "a", 0o600));
  }
  const database = new SQLite(path, { timeout: BUSY });
  try {
    database.pragma("journal_mode = WAL");
    database.pragma("synchronous = FULL");
    database.pragma("foreign_keys = ON");
  } catch (error) {
    database.close();
    const reason = error instanceof Error ? error.message : String(error);
    throw new StoreFailure("not-a-store", `${path} cannot be used as a store: ${reason}`, { cause: error });
  }
  return new Kysely<Tables>({ dialect: new WritingDialect({ database }) });
}

const MEMORY = ":memory:";

function pathOf(url: string): string {
  if (url.startsWith("file://")) return fileURLToPath(url);
  return url.startsWith("file:") ? url.slice("file:".length) : url;
}

/** A transaction that reads first and writes then would fail where another process wrote between: it begins as a writer. */
class WritingDriver extends SqliteDriver {
  override async beginTransaction(
    connection: DatabaseConnection,
    settings: TransactionSettings = {},
  ): Promise<void> {
    const readOnly = settings.accessMode === "read only";
    await connection.executeQuery(CompiledQuery.raw(readOnly ? "begin" : "begin immediate"));
  }
}

class WritingDialect extends SqliteDialect {
  readonly #database: SQLite.Database;

  constructor({ database }: { readonly database: SQLite.Database }) {
    super({ database });
    this.#database = database;
  }

  override createDriver(): SqliteDriver {
    return new WritingDriver({ database: this.#database });
  }
}
