import type { LogbookEvent } from "../logbook/index.js";
import type { BackupCounts } from "./backup.js";
import { contentOf, verifyBackup } from "./backup-file.js";
import { type Connection, lockBase } from "./database.js";
import { hashOf } from "./events.js";
import { StoreFailure } from "./failure.js";
import { HOUR, putHours } from "./hours.js";
import { baseOf, openedDatabase, type StoreOptions } from "./open-store.js";
import { markDirty, seriesFor } from "./readings.js";
import { rollUp } from "./rollups.js";

/**
 * Fills an empty base of a store from a backup, with the sequences and times the events had; all or nothing. A backup
 * that is cut off or changed is refused before anything is written, and so is a base that holds something.
 */
export async function restoreFrom(
  url: string,
  file: string,
  options: StoreOptions = {},
): Promise<BackupCounts> {
  const base = baseOf(options);
  await verifyBackup(file);
  const database = await openedDatabase(url);
  try {
    const counts = await database.kysely.transaction().execute(async (connection) => {
      await lockBase(database, connection, "events", base);
      await lockBase(database, connection, "readings", base);
      await requireEmpty(connection, base);
      return load(connection, base, file);
    });
    await rollUp(database, base);
    return counts;
  } finally {
    await database.kysely.destroy();
  }
}

const HOLDING = ["events", "series", "states", "users", "device_tokens"] as const;

async function requireEmpty(connection: Connection, base: string): Promise<void> {
  for (const table of HOLDING) {
    const row = await connection
      .selectFrom(table)
      .select("base")
      .where("base", "=", base)
      .limit(1)
      .executeTakeFirst();
    if (row === undefined) continue;
    throw new StoreFailure(
      "not-empty",
      `the base "${base}" of the store holds ${table.replace("_", " ")} already: restore into an empty one`,
    );
  }
}

interface Run {
  readonly aircraft: string;
  readonly probe: string;
  readonly rows: readonly (readonly number[])[];
}

async function load(connection: Connection, base: string, file: string): Promise<BackupCounts> {
  const counts = { events: 0, readings: 0 };
  let rawFrom = 0;
  const seriesOf = async (run: Run) => (await seriesFor(connection, base, [run]))(run);
  for await (const entry of contentOf(file)) {
    const [kind, value] = Object.entries(entry)[0];
    switch (kind) {
      case "event":
        await putEvent(connection, base, value as EventEntry);
        counts.events++;
        break;
      case "raw_from":
        rawFrom = value as number;
        await connection.insertInto("raw_from").values({ base, time: rawFrom }).execute();
        break;
      case "readings": {
        const run = value as Run;
        const series = await seriesOf(run);
        const readings = run.rows.map(([time, temp_c]) => ({ series, time, temp_c }));
        await connection.insertInto("readings").values(readings).execute();
        await markDirty(
          connection,
          readings.filter(({ time }) => time >= rawFrom),
        );
        counts.readings += readings.length;
        break;
      }
      case "rollups": {
        const run = value as Run;
        const series = await seriesOf(run);
        const rollups = run.rows.map(([step, start, low, total, high, count]) => ({
          series,
          step,
          start,
          low,
          total,
          high,
          count,
        }));
        await putHours(
          connection,
          rollups.filter(({ step }) => step === HOUR),
        );
        const others = rollups.filter(({ step }) => step !== HOUR);
        if (others.length > 0) await connection.insertInto("rollups").values(others).execute();
        break;
      }
      case "states":
      case "users":
      case "device_tokens":
        await connection
          .insertInto(kind)
          .values({ base, ...(value as object) } as never)
          .execute();
        break;
      default:
        throw new StoreFailure("backup-damaged", `${file} holds what this program does not know: ${kind}`);
    }
  }
  return counts;
}

interface EventEntry {
  readonly sequence: number;
  readonly received: number;
  readonly aircraft: string | null;
  readonly event: LogbookEvent;
}

async function putEvent(
  connection: Connection,
  base: string,
  { sequence, received, aircraft, event }: EventEntry,
): Promise<void> {
  const { id, at, kind } = event;
  const content = JSON.stringify(event);
  const happened = Date.parse(at);
  await connection
    .insertInto("events")
    .values({ base, sequence, id, happened, received, kind, aircraft, content, hash: hashOf(event) })
    .execute();
}
