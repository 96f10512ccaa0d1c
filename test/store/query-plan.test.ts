import { sql } from "kysely";
import { expect, test } from "vitest";
import { daysQuery, HOUR, putHours } from "../../src/store/hours.js";
import { openStore } from "../../src/store/index.js";
import { openedDatabase } from "../../src/store/open-store.js";
import { appendReadings, stepsQuery } from "../../src/store/readings.js";
import { rollUp } from "../../src/store/rollups.js";
import { reading, START } from "./example-events.js";
import { describeStores, runSql } from "./stores.js";

const DAY = 24 * HOUR;
const YEAR = 365;
const PROBES = Array.from({ length: 8 }, (_, p) => `probe-${p}`);
const AIRCRAFT = ["lynx", "wren", "heron"];

describeStores("queries of long times", (place) => {
  test("find their rows by an index, and give a year of hours of one aircraft whole", async () => {
    const url = await place.freshUrl();
    const database = await openedDatabase(url);
    const { kysely } = database;
    for (const aircraft of AIRCRAFT) {
      const rows = PROBES.flatMap((probe) =>
        Array.from({ length: 24 * 10 }, (_, h) => reading(60 * h, (h % 50) - 25, probe, aircraft)),
      );
      await appendReadings(database, "main", rows);
    }
    await rollUp(database, "main");
    // A year of hours without the year of readings that they come from.
    for (const { id } of await kysely.selectFrom("series").select("id").execute()) {
      const hours = Array.from({ length: 24 * YEAR }, (_, h) => {
        return { series: id, start: START + h * HOUR, low: -h, total: h * 60, high: h + 0.5, count: 60 };
      });
      await putHours(kysely, hours);
    }
    if (place.kind === "postgres") {
      await runSql(url, ...["readings", "rollups", "hours"].map((table) => `vacuum analyze ${table}`));
    }

    const series = await kysely.selectFrom("series").select("id").where("aircraft", "=", "heron").execute();
    const ids = series.map(({ id }) => id);
    const range = { from: START + DAY, to: START + 2 * DAY, limit: 1000 };
    const queries = [
      stepsQuery(kysely, ids, "raw", range),
      stepsQuery(kysely, ids, "minute", range),
      stepsQuery(kysely, ids, "ten-minutes", range),
      daysQuery(kysely, ids, range.from, range.to),
    ];
    for (const query of queries) {
      const how = place.kind === "sqlite" ? query.explain(undefined, sql`query plan`) : query.explain();
      const plan = JSON.stringify(await how);
      if (place.kind === "sqlite") {
        expect(plan).toMatch(
          /SEARCH \w+ USING PRIMARY KEY \(series=\?( AND step=\?)? AND \w+>\? AND \w+<\?\)/,
        );
        expect(plan).not.toMatch(/SCAN/);
      } else {
        expect(plan).toMatch(/Index Scan/);
        expect(plan).not.toMatch(/Seq Scan/);
      }
    }
    await kysely.destroy();

    const store = await openStore(url);
    const rows = await store.readings({
      aircraft: "lynx",
      from: START,
      to: START + YEAR * DAY,
      resolution: "hour",
      limit: 1e6,
    });
    expect(rows).toHaveLength(PROBES.length * 24 * YEAR);
    expect(rows[8 * 5]).toEqual({
      probe: "probe-0",
      time: START + 5 * HOUR,
      low: -5,
      mean: 5,
      high: 5.5,
      count: 60,
    });
    await store.close();
  });
});
