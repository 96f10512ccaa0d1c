import { OF_BASE } from "../base/index.js";
import type { KnownReading } from "../index.js";
import type { AircraftState } from "../logbook/index.js";
import type { Store } from "../store/index.js";

/** [ms] of readings that are taken as they came, and beyond which their means by the minute are. */
const RAW_SPAN = 30 * 60_000;
const MOST_ROWS = 20_000;
/** [ms] real time for others between two pieces of rolling up. */
const PAUSE = 1;

/** What an aircraft's probes and the base's own said from `from` to `to` [ms]. */
export async function readingsSince(
  store: Pick<Store, "readings" | "rollUp">,
  { setUp }: AircraftState,
  from: number,
  to: number,
): Promise<KnownReading[]> {
  const isLong = to - from > RAW_SPAN;
  if (isLong) await store.rollUp(PAUSE);
  const probed = setUp.probes.length > 0 ? [setUp.id] : [];
  const rows: KnownReading[] = [];
  for (const aircraft of [...probed, OF_BASE]) {
    let begin = from;
    for (;;) {
      const page = await store.readings({
        ...{ aircraft, from: begin, to, limit: MOST_ROWS },
        resolution: isLong ? "minute" : "raw",
      });
      for (const { probe, time, mean } of page) rows.push({ aircraft, probe, time, tempC: mean });
      const last = page.at(-1);
      if (page.length < MOST_ROWS || last === undefined || last.time <= begin) break;
      // A time may be cut in two by the page: it is read once more, and what was read of it dropped.
      while (rows.at(-1)?.time === last.time) rows.pop();
      begin = last.time;
    }
  }
  return rows;
}
