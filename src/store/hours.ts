import { sql } from "kysely";
import type { ReadingsRow } from "./contract.js";
import { type Connection, inChunks } from "./database.js";

// The hours of a day (UTC) of a series stand in one row, as bytes. A year of eight probes is then 3 000 rows instead of
// 70 000: it is read in a fifth of the time, and SQLite, which answers while everything else waits, holds nobody up.

/** [ms] */
export const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/** [low, total, high, count] of each hour, little-endian doubles; a count of 0 is an hour without readings. */
const NUMBERS = 4;
const NUMBER_BYTES = 8;
const DAY_BYTES = 24 * NUMBERS * NUMBER_BYTES;

export interface HourRow {
  readonly series: number;
  /** [ms] since 1970 UTC. */
  readonly start: number;
  readonly low: number;
  readonly total: number;
  readonly high: number;
  readonly count: number;
}

/** Rows in one statement. */
const CHUNK = 200;

/** Puts hours into their days, in place of what these said of them. */
export async function putHours(connection: Connection, rows: readonly HourRow[]): Promise<void> {
  const byDay = new Map<string, HourRow[]>();
  for (const row of rows) {
    const key = `${row.series}, ${row.start - (row.start % DAY)}`;
    const known = byDay.get(key);
    if (known === undefined) byDay.set(key, [row]);
    else known.push(row);
  }
  for (const keys of inChunks([...byDay.keys()], CHUNK)) {
    // Whole numbers of our own making.
    const listed = sql.raw(keys.map((key) => `(${key})`).join(", "));
    const before = await connection
      .selectFrom("hours")
      .selectAll()
      .where(sql<boolean>`(series, day) in (values ${listed})`)
      .execute();
    const days = new Map(before.map(({ series, day, content }) => [`${series}, ${day}`, content]));
    const values = keys.map((key) => {
      const content = Buffer.from(days.get(key) ?? Buffer.alloc(DAY_BYTES));
      const [series, day] = key.split(", ").map(Number);
      for (const { start, low, total, high, count } of byDay.get(key) ?? []) {
        const at = ((start - day) / HOUR) * NUMBERS;
        [low, total, high, count].forEach((number, i) => {
          content.writeDoubleLE(number, (at + i) * NUMBER_BYTES);
        });
      }
      return { series, day, content };
    });
    await connection
      .insertInto("hours")
      .values(values)
      .onConflict((conflict) =>
        conflict.columns(["series", "day"]).doUpdateSet(({ ref }) => ({ content: ref("excluded.content") })),
      )
      .execute();
  }
}

/** Days of the series that may hold hours of the range, in order of time. */
export function daysQuery(connection: Connection, series: readonly number[], from: number, to: number) {
  return connection
    .selectFrom("hours")
    .select(["series", "day", "content"])
    .where("series", "in", series)
    .where("day", ">", from - DAY)
    .where("day", "<", to)
    .orderBy("day")
    .orderBy("series");
}

/** In order of time; `probeOf` names a series. */
export async function readHours(
  connection: Connection,
  probes: ReadonlyMap<number, string>,
  { from, to, limit }: { readonly from: number; readonly to: number; readonly limit: number },
): Promise<ReadingsRow[]> {
  // Every day holds an hour at least, but those at the two ends may hold it outside of the range.
  const most = limit + 2 * probes.size;
  const days = await daysQuery(connection, [...probes.keys()], from, to)
    .limit(most)
    .execute();
  const rows: ReadingsRow[] = [];
  for (let first = 0; first < days.length; ) {
    let next = first;
    while (next < days.length && days[next].day === days[first].day) next++;
    const ofDay = days.slice(first, next).map(({ series, content }) => ({
      probe: probes.get(series) ?? "",
      number: viewOf(content),
    }));
    for (let hour = 0; hour < 24; hour++) {
      const time = days[first].day + hour * HOUR;
      if (time < from || time >= to) continue;
      for (const { probe, number } of ofDay) {
        const count = number(hour, 3);
        if (count === 0) continue;
        if (rows.length === limit) return rows;
        rows.push({
          probe,
          time,
          low: number(hour, 0),
          mean: number(hour, 1) / count,
          high: number(hour, 2),
          count,
        });
      }
    }
    first = next;
  }
  return rows;
}

/** Every hour in the bytes of a day. */
export function hoursIn(series: number, day: number, content: Uint8Array): readonly HourRow[] {
  const number = viewOf(content);
  return Array.from({ length: 24 }, (_, hour) => ({
    series,
    start: day + hour * HOUR,
    low: number(hour, 0),
    total: number(hour, 1),
    high: number(hour, 2),
    count: number(hour, 3),
  })).filter(({ count }) => count > 0);
}

/** Whatever the machine's own order of bytes: what one computer wrote another may read. */
function viewOf(content: Uint8Array): (hour: number, which: number) => number {
  const view = new DataView(content.buffer, content.byteOffset, DAY_BYTES);
  return (hour, which) => view.getFloat64((hour * NUMBERS + which) * NUMBER_BYTES, true);
}
