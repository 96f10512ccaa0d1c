import { BACKUP_VERSION, writeBackup } from "./backup-file.js";
import type { Connection } from "./database.js";
import { daysQuery, HOUR, hoursIn } from "./hours.js";
import { baseOf, openedDatabase, type StoreOptions } from "./open-store.js";
import { rawFrom } from "./readings.js";

// A backup is JSON lines: header, one thing or a run of readings a line, end with the checksum. docs/logbook.md.

export interface BackupCounts {
  readonly events: number;
  readonly readings: number;
}

/** Rows read at a time, and of readings in one line. */
const PAGE = 500;

/**
 * Writes a base as it stands at one moment to a file that `restoreFrom` reads into a store of either kind, while others
 * go on writing. Sessions are left out: whoever was signed in signs in again. It holds password hashes: keep it as safe
 * as the store.
 */
export async function backupTo(url: string, file: string, options: StoreOptions = {}): Promise<BackupCounts> {
  const base = baseOf(options);
  const { clock = Date.now } = options;
  const database = await openedDatabase(url);
  const counts = { events: 0, readings: 0 };
  try {
    await database.kysely
      .transaction()
      .setIsolationLevel("repeatable read")
      .setAccessMode("read only")
      .execute(async (connection) => {
        const made = new Date(clock()).toISOString();
        await writeBackup(
          file,
          { soakline_backup: BACKUP_VERSION, base, made },
          dumped(connection, base, counts),
        );
      });
  } finally {
    await database.kysely.destroy();
  }
  return counts;
}

async function* dumped(
  connection: Connection,
  base: string,
  counts: { events: number; readings: number },
): AsyncGenerator<object> {
  for (let last = 0; ; ) {
    const rows = await connection
      .selectFrom("events")
      .select(["sequence", "received", "aircraft", "content"])
      .where("base", "=", base)
      .where("sequence", ">", last)
      .orderBy("sequence")
      .limit(PAGE)
      .execute();
    for (const { content, ...row } of rows) yield { event: { ...row, event: JSON.parse(content) } };
    counts.events += rows.length;
    last = rows.at(-1)?.sequence ?? last;
    if (rows.length < PAGE) break;
  }
  const from = await rawFrom(connection, base);
  if (from > 0) yield { raw_from: from };
  const series = await connection
    .selectFrom("series")
    .selectAll()
    .where("base", "=", base)
    .orderBy("id")
    .execute();
  for (const { id, aircraft, probe } of series) {
    for await (const rows of readingsOf(connection, id)) {
      counts.readings += rows.length;
      yield { readings: { aircraft, probe, rows } };
    }
    for await (const rows of rollupsOf(connection, id, from)) yield { rollups: { aircraft, probe, rows } };
    for await (const rows of hoursOf(connection, id, from)) yield { rollups: { aircraft, probe, rows } };
  }
  for (const table of ["states", "users", "device_tokens"] as const) {
    const rows = await connection.selectFrom(table).selectAll().where("base", "=", base).execute();
    for (const { base: _, ...row } of rows) yield { [table]: row };
  }
}

async function* readingsOf(
  connection: Connection,
  series: number,
): AsyncGenerator<readonly (readonly number[])[]> {
  for (let last = -1; ; ) {
    const rows = await connection
      .selectFrom("readings")
      .select(["time", "temp_c"])
      .where("series", "=", series)
      .where("time", ">", last)
      .orderBy("time")
      .limit(PAGE)
      .execute();
    if (rows.length > 0) yield rows.map(({ time, temp_c }) => [time, temp_c]);
    last = rows.at(-1)?.time ?? last;
    if (rows.length < PAGE) return;
  }
}

/** Those whose raw readings are gone; the others are worked out anew. */
async function* rollupsOf(
  connection: Connection,
  series: number,
  before: number,
): AsyncGenerator<readonly (readonly number[])[]> {
  for (let last = { step: 0, start: 0 }; ; ) {
    const rows = await connection
      .selectFrom("rollups")
      .select(["step", "start", "low", "total", "high", "count"])
      .where("series", "=", series)
      .where("start", "<", before)
      .where(({ eb, or, and }) =>
        or([eb("step", ">", last.step), and([eb("step", "=", last.step), eb("start", ">", last.start)])]),
      )
      .orderBy("step")
      .orderBy("start")
      .limit(PAGE)
      .execute();
    if (rows.length > 0) {
      yield rows.map(({ step, start, low, total, high, count }) => [step, start, low, total, high, count]);
    }
    last = rows.at(-1) ?? last;
    if (rows.length < PAGE) return;
  }
}

async function* hoursOf(
  connection: Connection,
  series: number,
  before: number,
): AsyncGenerator<readonly (readonly number[])[]> {
  const days = await daysQuery(connection, [series], 0, before).execute();
  for (const { day, content } of days) {
    const hours = hoursIn(series, day, content).filter(({ start }) => start < before);
    if (hours.length > 0) {
      yield hours.map(({ start, low, total, high, count }) => [HOUR, start, low, total, high, count]);
    }
  }
}
