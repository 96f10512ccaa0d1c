import { randomBytes } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import pg from "pg";
import { afterAll, beforeAll, describe } from "vitest";

/** A place that hands out the address of a new, empty store of its kind with every call. */
export interface StorePlace {
  readonly kind: "sqlite" | "postgres";
  freshUrl(): Promise<string>;
  /** For files beside the stores; taken away afterwards. */
  readonly folder: string;
}

const POSTGRES = process.env.SOAKLINE_TEST_POSTGRES ?? "postgres://postgres@127.0.0.1:5432/postgres";

/** Whether this is the tier of the tests that talks to PostgreSQL. */
const onPostgres = process.env.TEST_TIER === "postgres";

/** The same tests on both databases, each in its tier. */
export function describeStores(what: string, tests: (place: StorePlace) => void): void {
  describe(`${what}, ${onPostgres ? "PostgreSQL" : "SQLite"}`, () =>
    tests(onPostgres ? postgresPlace() : sqlitePlace()));
}

export function describePostgres(what: string, tests: (place: StorePlace) => void): void {
  if (onPostgres) describe(what, () => tests(postgresPlace()));
}

export function sqlitePlace(): StorePlace {
  const folder = temporaryFolder();
  let made = 0;
  return { kind: "sqlite", folder, freshUrl: async () => `file:${join(folder, `store-${++made}.db`)}` };
}

/** Making and dropping a database takes a second: two take turns, so that a test may use two at once. */
function postgresPlace(): StorePlace {
  const folder = temporaryFolder();
  const names = ["a", "b"].map((letter) => `soakline_test_${randomBytes(6).toString("hex")}_${letter}`);
  const made: string[] = [];
  let given = 0;
  const admin = new pg.Client({ connectionString: POSTGRES });
  beforeAll(
    () =>
      admin.connect().catch((error: Error) => {
        throw new Error(`no PostgreSQL answers at ${POSTGRES} (SOAKLINE_TEST_POSTGRES): ${error.message}`);
      }),
    SLOW,
  );
  afterAll(async () => {
    for (const name of made) await admin.query(`drop database ${name} with (force)`);
    await admin.end();
  }, SLOW);
  return {
    kind: "postgres",
    folder,
    freshUrl: async () => {
      const name = names[given++ % names.length];
      const url = new URL(POSTGRES);
      url.pathname = `/${name}`;
      if (made.includes(name)) await runSql(url.href, "drop schema if exists soakline cascade");
      else {
        await admin.query(`create database ${name}`);
        made.push(name);
      }
      return url.href;
    },
  };
}

/** [ms] on a machine that does much else. */
const SLOW = 120_000;

function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "soakline-store-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Runs statements beside the store, as another program would. */
export async function runSql(
  url: string,
  ...statements: readonly string[]
): Promise<readonly Record<string, unknown>[]> {
  if (url.startsWith("file:")) {
    const { default: SQLite } = await import("better-sqlite3");
    const database = new SQLite(url.slice("file:".length));
    try {
      let rows: Record<string, unknown>[] = [];
      for (const statement of statements) {
        const prepared = database.prepare(statement);
        rows = prepared.reader ? (prepared.all() as Record<string, unknown>[]) : [];
        if (!prepared.reader) prepared.run();
      }
      return rows;
    } finally {
      database.close();
    }
  }
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query("set search_path to soakline");
    let rows: Record<string, unknown>[] = [];
    for (const statement of statements) rows = (await client.query(statement)).rows;
    return rows;
  } finally {
    await client.end();
  }
}

/** A script of many statements, in its own transaction where it says so. */
export async function runScript(url: string, script: string): Promise<void> {
  if (url.startsWith("file:")) {
    const { default: SQLite } = await import("better-sqlite3");
    const database = new SQLite(url.slice("file:".length));
    database.exec(script);
    database.close();
    return;
  }
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(script);
  await client.end();
}
