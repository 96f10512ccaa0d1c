import { sql } from "kysely";
import type { ProbeReading } from "../logbook/index.js";
import type { AppendReadingsResult, ReadingsRequest, ReadingsRow, Resolution } from "./contract.js";
import { type Connection, type Database, inChunks, lockBase } from "./database.js";
import { readHours } from "./hours.js";

/** [ms] */
export const MINUTE = 60_000;
export const TEN_MINUTES = 600_000;

const CHUNK = 1000;

/** All of the readings or none; the ten minutes they fall into are marked to be rolled up. */
export async function appendReadings(
  database: Database,
  base: string,
  rows: readonly ProbeReading[],
): Promise<AppendReadingsResult> {
  rows.forEach(requireReading);
  if (rows.length === 0) return { kept: 0, known: 0 };
  return database.kysely.transaction().execute(async (connection) => {
    await lockBase(database, connection, "readings", base);
    const from = await rawFrom(connection, base);
    const recent = rows.filter(({ time }) => time >= from);
    const seriesOf = await seriesFor(connection, base, recent);
    const readings = recent.map((row) => ({ series: seriesOf(row), time: row.time, temp_c: row.tempC }));
    let kept = 0;
    for (const chunk of inChunks(readings, CHUNK)) {
      const { numInsertedOrUpdatedRows = 0n } = await connection
        .insertInto("readings")
        .values(chunk)
        .onConflict((conflict) => conflict.columns(["series", "time"]).doNothing())
        .executeTakeFirstOrThrow();
      kept += Number(numInsertedOrUpdatedRows);
    }
    if (kept > 0) await markDirty(connection, readings);
    const tooOld = rows.length - recent.length;
    return { kept, known: recent.length - kept, ...(tooOld === 0 ? {} : { tooOld }) };
  });
}

function requireReading({ time, tempC }: ProbeReading): void {
  if (!(Number.isSafeInteger(time) && time >= 0)) {
    throw new RangeError(`invalid time: ${time} (expected whole milliseconds since 1970)`);
  }
  if (!Number.isFinite(tempC)) throw new RangeError(`invalid tempC: ${tempC} (expected a number)`);
}

export async function markDirty(
  connection: Connection,
  readings: readonly { readonly series: number; readonly time: number }[],
): Promise<void> {
  const slots = new Map<string, { series: number; start: number }>();
  for (const { series, time } of readings) {
    const start = time - (time % TEN_MINUTES);
    slots.set(`${series} ${start}`, { series, start });
  }
  for (const chunk of inChunks([...slots.values()], CHUNK)) {
    await connection
      .insertInto("dirty")
      .values(chunk)
      .onConflict((conflict) => conflict.columns(["series", "start"]).doNothing())
      .execute();
  }
}

/** [ms] before which raw readings were dropped; 0 where none were. */
export async function rawFrom(connection: Connection, base: string): Promise<number> {
  const row = await connection
    .selectFrom("raw_from")
    .select("time")
    .where("base", "=", base)
    .executeTakeFirst();
  return row?.time ?? 0;
}

type Named = Pick<ProbeReading, "aircraft" | "probe">;

/** The series of every probe named, made where it is new. */
export async function seriesFor(
  connection: Connection,
  base: string,
  rows: readonly Named[],
): Promise<(row: Named) => number> {
  const nameOf = ({ aircraft, probe }: Named) => JSON.stringify([aircraft, probe]);
  const wanted = new Map(rows.map((row) => [nameOf(row), row]));
  const known = new Map<string, number>();
  const look = async () => {
    const aircraft = [...new Set([...wanted.values()].map((row) => row.aircraft))];
    for (const chunk of inChunks(aircraft, CHUNK)) {
      const found = await connection
        .selectFrom("series")
        .select(["id", "aircraft", "probe"])
        .where("base", "=", base)
        .where("aircraft", "in", chunk)
        .execute();
      for (const row of found) known.set(nameOf(row), row.id);
    }
  };
  await look();
  const missing = [...wanted]
    .filter(([name]) => !known.has(name))
    .map(([, { aircraft, probe }]) => ({ base, aircraft, probe }));
  if (missing.length > 0) {
    for (const chunk of inChunks(missing, CHUNK))
      await connection.insertInto("series").values(chunk).execute();
    await look();
  }
  return (row) => {
    const id = known.get(nameOf(row));
    if (id === undefined) throw new Error(`a series was not made: ${nameOf(row)}`);
    return id;
  };
}

export async function queryReadings(
  { kysely }: Database,
  base: string,
  { aircraft, probes, resolution, ...range }: ReadingsRequest,
): Promise<readonly ReadingsRow[]> {
  let query = kysely
    .selectFrom("series")
    .select(["id", "probe"])
    .where("base", "=", base)
    .where("aircraft", "=", aircraft);
  if (probes !== undefined) {
    if (probes.length === 0) return [];
    query = query.where("probe", "in", probes);
  }
  const names = new Map((await query.orderBy("id").execute()).map(({ id, probe }) => [id, probe]));
  if (names.size === 0) return [];
  if (resolution === "hour") return readHours(kysely, names, range);
  const rows = await stepsQuery(kysely, [...names.keys()], resolution, range).execute();
  return rows.map(({ series, time, low, total, high, count }) => ({
    probe: names.get(series) ?? "",
    time,
    low,
    mean: total / count,
    high,
    count,
  }));
}

type Range = Pick<ReadingsRequest, "from" | "to" | "limit">;

/** Readings, or their rollups by the minute or ten minutes, in order of time. @internal for tests */
export function stepsQuery(
  connection: Connection,
  series: readonly number[],
  resolution: Exclude<Resolution, "hour">,
  { from, to, limit }: Range,
) {
  if (resolution === "raw") {
    return connection
      .selectFrom("readings")
      .select([
        "series",
        "time",
        "temp_c as low",
        "temp_c as total",
        "temp_c as high",
        sql.lit(1).as("count"),
      ])
      .where("series", "in", series)
      .where("time", ">=", from)
      .where("time", "<", to)
      .orderBy("time")
      .orderBy("series")
      .limit(limit);
  }
  return connection
    .selectFrom("rollups")
    .select(["series", "start as time", "low", "total", "high", "count"])
    .where("series", "in", series)
    .where("step", "=", resolution === "minute" ? MINUTE : TEN_MINUTES)
    .where("start", ">=", from)
    .where("start", "<", to)
    .orderBy("start")
    .orderBy("series")
    .limit(limit);
}

export async function latestReadings({ kysely }: Database, base: string): Promise<readonly ProbeReading[]> {
  const rows = await kysely
    .selectFrom("series")
    .innerJoin("readings", (join) =>
      join.onRef("readings.series", "=", "series.id").on("readings.time", "=", ({ selectFrom }) =>
        selectFrom("readings as later")
          .select(({ fn }) => fn.max("later.time").as("time"))
          .whereRef("later.series", "=", "series.id"),
      ),
    )
    .select(["series.aircraft", "series.probe", "readings.time", "readings.temp_c"])
    .where("series.base", "=", base)
    .orderBy("series.id")
    .execute();
  return rows.map(({ aircraft, probe, time, temp_c }) => ({ aircraft, probe, time, tempC: temp_c }));
}
