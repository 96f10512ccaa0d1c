import { setImmediate, setTimeout } from "node:timers/promises";
import { type RawBuilder, sql } from "kysely";
import { type Connection, type Database, type Dialect, lockBase, unsynced } from "./database.js";
import { HOUR, type HourRow, putHours } from "./hours.js";
import { MINUTE, rawFrom, TEN_MINUTES } from "./readings.js";

/** Ten-minute slots rolled up in one transaction, so that nobody else waits long: some ten milliseconds in SQLite. */
const SLOTS = 40;
/** [ms] of readings of one probe that are dropped in one transaction. */
const DROPPED_AT_ONCE = 24 * HOUR;

/**
 * Works out anew every minute, ten minutes and hour in which readings came in, however late they came. Whoever adds
 * readings waits meanwhile, so that none slips in between reading and unmarking.
 */
export async function rollUp(database: Database, base: string, pauseMs = 0): Promise<void> {
  while (
    await unsynced(database, async (connection) => {
      await lockBase(database, connection, "readings", base);
      return rollUpSome(database, connection, base);
    })
  ) {
    // SQLite answers without ever leaving the thread: messages that came in have their turn between transactions.
    await (pauseMs > 0 ? setTimeout(pauseMs) : setImmediate());
  }
}

/** Whether there may be more. */
async function rollUpSome(
  { dialect }: Database,
  connection: Connection,
  base: string,
  before = Number.MAX_SAFE_INTEGER,
): Promise<boolean> {
  const slots = await connection
    .selectFrom("dirty")
    .innerJoin("series", "series.id", "dirty.series")
    .select(["dirty.series", "dirty.start"])
    .where("series.base", "=", base)
    .where("dirty.start", "<", before)
    .limit(SLOTS)
    .execute();
  if (slots.length === 0) return false;
  // Whole numbers from our own tables: as literals, their number is not bounded by that of parameters.
  const listed = sql.raw(slots.map(({ series, start }) => `(${series}, ${start})`).join(", "));
  const inSlot = of(
    dialect,
    sql`slots`,
    sql`readings`,
    sql`r.series = slots.series and r.time >= slots.start and r.time < slots.start + ${sql.lit(TEN_MINUTES)}`,
  );
  const inHour = of(
    dialect,
    sql`hours`,
    sql`rollups`,
    sql`r.series = hours.series and r.step = ${sql.lit(TEN_MINUTES)}
      and r.start >= hours.start and r.start < hours.start + ${sql.lit(HOUR)}`,
  );
  const into = sql`insert into rollups (series, step, start, low, total, high, count)`;
  const onConflict = sql`on conflict (series, step, start) do update set
    low = excluded.low, total = excluded.total, high = excluded.high, count = excluded.count`;
  await sql`with slots (series, start) as (values ${listed}) ${into}
    select r.series, ${sql.lit(MINUTE)}, r.time - r.time % ${sql.lit(MINUTE)} as minute,
      min(r.temp_c), sum(r.temp_c), max(r.temp_c), count(*)
    from ${inSlot} group by r.series, minute ${onConflict}`.execute(connection);
  await sql`with slots (series, start) as (values ${listed}) ${into}
    select r.series, ${sql.lit(TEN_MINUTES)}, slots.start, min(r.temp_c), sum(r.temp_c), max(r.temp_c), count(*)
    from ${inSlot} group by r.series, slots.start ${onConflict}`.execute(connection);
  const hours = await sql<HourRow>`with slots (series, start) as (values ${listed}),
    hours as (select distinct series, start - start % ${sql.lit(HOUR)} as start from slots)
    select r.series, hours.start, min(r.low) as low, sum(r.total) as total, max(r.high) as high,
      cast(sum(r.count) as bigint) as count
    from ${inHour} group by r.series, hours.start`.execute(connection);
  await putHours(connection, hours.rows);
  await sql`delete from dirty where (series, start) in (values ${listed})`.execute(connection);
  return slots.length === SLOTS;
}

/**
 * For each row of `outer` those of `inner`, as r, that meet the condition, found by the key of `inner`. The planners of
 * both databases would rather go through the whole table: they do not see how little a range of time is.
 */
function of(
  dialect: Dialect,
  outer: RawBuilder<unknown>,
  inner: RawBuilder<unknown>,
  condition: RawBuilder<unknown>,
): RawBuilder<unknown> {
  if (dialect === "sqlite") return sql`${outer} cross join ${inner} r where ${condition}`;
  return sql`${outer} cross join lateral (select * from ${inner} r where ${condition} offset 0) r where true`;
}

/** See the contract. What is too old is refused from then on, before anything is dropped. */
export async function dropRawBefore(database: Database, base: string, time: number): Promise<number> {
  requireTime(time);
  const horizon = time - (time % HOUR);
  await rollUp(database, base);
  await database.kysely.transaction().execute(async (connection) => {
    await lockBase(database, connection, "readings", base);
    while (await rollUpSome(database, connection, base, horizon));
    if (horizon <= (await rawFrom(connection, base))) return;
    await connection
      .insertInto("raw_from")
      .values({ base, time: horizon })
      .onConflict((conflict) => conflict.column("base").doUpdateSet({ time: horizon }))
      .execute();
  });
  let dropped = 0;
  for (const { id } of await database.kysely
    .selectFrom("series")
    .select("id")
    .where("base", "=", base)
    .execute()) {
    dropped += await dropOf(database, id, horizon);
  }
  return dropped;
}

/** The newest reading stays, so that a probe that fell silent still shows what it said last. */
async function dropOf({ kysely }: Database, series: number, horizon: number): Promise<number> {
  let dropped = 0;
  for (;;) {
    const { oldest, newest } = await kysely
      .selectFrom("readings")
      .select(({ fn }) => [fn.min("time").as("oldest"), fn.max("time").as("newest")])
      .where("series", "=", series)
      .executeTakeFirstOrThrow();
    // Both are null where the series has no readings.
    if (oldest === null || newest === null || oldest >= Math.min(newest, horizon)) return dropped;
    const until = Math.min(newest, horizon, oldest + DROPPED_AT_ONCE);
    const { numDeletedRows } = await kysely
      .deleteFrom("readings")
      .where("series", "=", series)
      .where("time", "<", until)
      .executeTakeFirstOrThrow();
    dropped += Number(numDeletedRows);
  }
}

export async function dropMinutesBefore(database: Database, base: string, time: number): Promise<number> {
  requireTime(time);
  const { kysely } = database;
  // Where raw readings are left, a late one would bring back minutes that lack the others.
  const horizon = Math.min(time, await rawFrom(kysely, base));
  let dropped = 0;
  for (const { id } of await kysely.selectFrom("series").select("id").where("base", "=", base).execute()) {
    const { numDeletedRows } = await kysely
      .deleteFrom("rollups")
      .where("series", "=", id)
      .where("step", "=", MINUTE)
      .where("start", "<", horizon)
      .executeTakeFirstOrThrow();
    dropped += Number(numDeletedRows);
  }
  return dropped;
}

function requireTime(time: number): void {
  if (!(Number.isSafeInteger(time) && time >= 0)) {
    throw new RangeError(`invalid time: ${time} (expected whole milliseconds since 1970)`);
  }
}
