import pg from "pg";
import PgBoss from "pg-boss";
import {
  failed,
  type Outcome,
  type PieceResult,
  pieceKey,
  piecesOf,
  type WinterStudyDocument,
  winterPiece,
  winterStudy,
} from "../index.js";
import { english } from "../words/index.js";
import { type BundleReading, readBundle, studyId, type WinterBundle } from "./winter-bundle.js";

// A study shared by processes and machines through PostgreSQL. A piece's job is taken, its result stored and the job
// completed in one transaction that is open while the piece is worked out: either all three are there or none. Who dies in
// the middle loses its connection, the transaction with it, and the job is free again at once. The result's primary key
// keeps a second one out whatever happens.

const QUEUE = "soakline-winter-pieces";
const BOSS_SCHEMA = "soakline_queue";

const TABLES = `
  create schema if not exists soakline_winter;
  create table if not exists soakline_winter.study (
    id text primary key, bundle text not null, begun_at timestamptz not null default now()
  );
  create table if not exists soakline_winter.piece (
    study text not null references soakline_winter.study (id) on delete cascade,
    key text not null, result text not null, worked_by text not null,
    done_at timestamptz not null default now(), primary key (study, key)
  );`;
/** Two processes that begin at once must not both make the tables. */
const TABLES_LOCK = 7_340_211;

interface Job {
  readonly study: string;
  readonly kit: number;
  readonly year: number;
}

interface Queue {
  readonly pool: pg.Pool;
  readonly boss: PgBoss;
  close(): Promise<void>;
}

/** @param name shown to whoever looks at the database who is connected */
async function open(url: string, name = "soakline winter"): Promise<Queue> {
  const pool = new pg.Pool({ connectionString: url, max: 4, keepAlive: true, application_name: name });
  // An idle connection that breaks says so when it is next used.
  pool.on("error", () => undefined);
  const db = { executeSql: (text: string, values: unknown[]) => pool.query(text, values) };
  const boss = new PgBoss({ db, schema: BOSS_SCHEMA, supervise: false, schedule: false });
  boss.on("error", () => undefined);
  try {
    const client = await pool.connect();
    try {
      await client.query("select pg_advisory_lock($1)", [TABLES_LOCK]);
      await client.query(TABLES);
      await boss.start();
      await boss.createQueue(QUEUE);
    } finally {
      await client.query("select pg_advisory_unlock($1)", [TABLES_LOCK]).catch(() => undefined);
      client.release();
    }
  } catch (error) {
    await pool.end();
    throw error;
  }
  return {
    pool,
    boss,
    async close() {
      await boss.stop({ graceful: false, wait: false, close: false });
      await pool.end();
    },
  };
}

/** Puts a study and a job for each of its pieces there, once however often it is asked: all or nothing. */
export async function submitStudy(
  url: string,
  bundle: WinterBundle,
  read: BundleReading & { readonly ok: true },
): Promise<string> {
  const queue = await open(url);
  const client = await queue.pool.connect();
  const study = studyId(bundle);
  try {
    await client.query("begin");
    const { rowCount } = await client.query(
      "insert into soakline_winter.study (id, bundle) values ($1, $2) on conflict do nothing",
      [study, JSON.stringify(bundle)],
    );
    if (rowCount === 1) {
      const db = { executeSql: (text: string, values: unknown[]) => client.query(text, values) };
      await queue.boss.insert(
        piecesOf(read).map(({ kit, year }) => ({
          name: QUEUE,
          data: { study, kit, year } satisfies Job,
          retryLimit: RETRIES,
        })),
        { db },
      );
    }
    await client.query("commit");
    return study;
  } catch (error) {
    await client.query("rollback").catch(() => undefined);
    throw error;
  } finally {
    client.release();
    await queue.close();
  }
}

/** Times a piece that fails is tried again. */
const RETRIES = 3;

export interface WorkRequest {
  readonly url: string;
  /** Who works, for the record. */
  readonly name: string;
  /** Ends when no job is left, instead of waiting for more. */
  readonly drain?: boolean;
  readonly onPiece?: (key: string) => void;
  /** Asked between pieces. */
  readonly goOn?: () => boolean;
}

/** [ms] between looks for work where there is none. */
const PAUSE = 1000;

/** Works pieces of any study until told to stop. Returns how many. */
export async function workWinters({ url, name, drain, onPiece, goOn }: WorkRequest): Promise<number> {
  const queue = await open(url, name);
  const studies = new Map<string, BundleReading>();
  let worked = 0;
  try {
    while (goOn?.() ?? true) {
      const key = await workOne(queue, studies, name);
      if (key !== undefined) {
        worked++;
        onPiece?.(key);
      } else if (drain === true) break;
      else await new Promise((resolve) => setTimeout(resolve, PAUSE));
    }
    return worked;
  } finally {
    await queue.close();
  }
}

/** Takes one job, works it out, stores what it came to; undefined when there is none. */
async function workOne(
  { pool, boss }: Queue,
  studies: Map<string, BundleReading>,
  name: string,
): Promise<string | undefined> {
  const client = await pool.connect();
  let broken: Error | undefined;
  client.once("error", (error) => {
    broken = error;
  });
  const db = { executeSql: (text: string, values: unknown[]) => client.query(text, values) };
  try {
    await client.query("begin");
    const [job] = await boss.fetch<Job>(QUEUE, { batchSize: 1, db });
    if (job === undefined) {
      await client.query("rollback");
      return undefined;
    }
    const { study, kit, year } = job.data;
    const key = pieceKey({ kit, year });
    const outcome = await resultOf(study, job.data);
    if (outcome.status === "completed") {
      await client.query(
        "insert into soakline_winter.piece (study, key, result, worked_by) values ($1, $2, $3, $4) on conflict do nothing",
        [study, key, JSON.stringify(outcome.result), name],
      );
      await boss.complete(QUEUE, job.id, {}, { db });
    } else {
      await boss.fail(QUEUE, job.id, { message: messageOf(outcome) }, { db });
    }
    await client.query("commit");
    return key;
  } catch (error) {
    await client.query("rollback").catch(() => undefined);
    throw broken ?? error;
  } finally {
    client.release(broken !== undefined);
  }

  async function resultOf(study: string, { kit, year }: Job): Promise<Outcome<PieceResult>> {
    const read = studies.get(study) ?? (await bundleOf(study));
    studies.set(study, read);
    if (!read.ok) return { status: "refused", issues: read.issues };
    return winterPiece(read, { kit, year });
  }

  async function bundleOf(study: string): Promise<BundleReading> {
    const { rows } = await client.query("select bundle from soakline_winter.study where id = $1", [study]);
    return readBundle(JSON.parse(rows[0].bundle) as WinterBundle);
  }
}

function messageOf(outcome: Exclude<Outcome<unknown>, { status: "completed" }>): string {
  return outcome.status === "refused"
    ? outcome.issues.map(({ path }) => path).join(", ")
    : english(outcome.message);
}

/** Pieces that are there so far. */
async function finishedPieces(url: string, study: string): Promise<PieceResult[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const { rows } = await client.query(
      "select result from soakline_winter.piece where study = $1 order by key",
      [study],
    );
    return rows.map(({ result }) => JSON.parse(result) as PieceResult);
  } finally {
    await client.end();
  }
}

/** Why pieces failed for good, each in words; none when none did. */
async function failures(url: string, study: string): Promise<string[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const { rows } = await client.query(
      `select data, output from ${BOSS_SCHEMA}.job where name = $1 and state = 'failed' and data->>'study' = $2`,
      [QUEUE, study],
    );
    return rows.map(({ data, output }) => `${pieceKey(data)}: ${output?.message ?? "failed"}`);
  } finally {
    await client.end();
  }
}

/** Waits until workers have done all pieces, then puts the study together. */
export async function awaitStudy(
  url: string,
  study: string,
  read: BundleReading & { readonly ok: true },
  onProgress?: (done: number) => void,
): Promise<Outcome<WinterStudyDocument>> {
  const wanted = piecesOf(read).length;
  for (;;) {
    const results = await finishedPieces(url, study);
    onProgress?.(results.length / wanted);
    if (results.length === wanted) return { status: "completed", result: winterStudy(read, results) };
    const troubles = await failures(url, study);
    if (troubles.length > 0) return failed(troubles.join("; "));
    await new Promise((resolve) => setTimeout(resolve, PAUSE));
  }
}
