import type { Store } from "./contract.js";
import { type Database, openDatabase } from "./database.js";
import { appendEvents, eventReaders } from "./events.js";
import { migrate } from "./migrate.js";
import { peopleKeeper } from "./people.js";
import { appendReadings, latestReadings, queryReadings } from "./readings.js";
import { dropMinutesBefore, dropRawBefore, rollUp } from "./rollups.js";
import { stateKeeper } from "./states.js";

export interface StoreOptions {
  /** Which base of the database; several may share one. "main" where left out. */
  readonly base?: string;
  /** [ms] since 1970 UTC: what `received` is taken from; the computer's clock where left out. */
  readonly clock?: () => number;
}

/**
 * Opens the store at `file:PATH`, a plain path (SQLite) or `postgres://…`, making it or bringing it forward to this
 * version where needed. Throws a StoreFailure where it cannot be used.
 */
export async function openStore(url: string, options: StoreOptions = {}): Promise<Store> {
  const { clock = Date.now } = options;
  const base = baseOf(options);
  const database = await openedDatabase(url);
  return {
    append: (events) => appendEvents(database, base, events, clock()),
    ...eventReaders(database, base),
    appendReadings: (rows) => appendReadings(database, base, rows),
    readings: (request) => queryReadings(database, base, request),
    latestReadings: () => latestReadings(database, base),
    rollUp: (pauseMs) => rollUp(database, base, pauseMs),
    dropRawBefore: (time) => dropRawBefore(database, base, time),
    dropMinutesBefore: (time) => dropMinutesBefore(database, base, time),
    ...stateKeeper(database, base),
    ...peopleKeeper(database, base),
    close: () => database.kysely.destroy(),
  };
}

/** A database of this program's version. */
export async function openedDatabase(url: string): Promise<Database> {
  const database = openDatabase(url);
  try {
    await migrate(database);
    return database;
  } catch (error) {
    await database.kysely.destroy();
    throw error;
  }
}

export function baseOf({ base = "main" }: Pick<StoreOptions, "base">): string {
  if (base === "" || base.length > 200) {
    throw new RangeError(`invalid base: ${JSON.stringify(base)} (expected 1 to 200 characters)`);
  }
  return base;
}
