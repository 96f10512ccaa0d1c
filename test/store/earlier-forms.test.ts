import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { canonicalText, deriveBase, eventInCurrentForm, type LogbookEvent } from "../../src/logbook/index.js";
import { hashOf } from "../../src/store/events.js";
import { backupTo, openStore, restoreFrom } from "../../src/store/index.js";
import { STORE_VERSION } from "../../src/store/migrate.js";
import { describeStores, runScript, runSql } from "./stores.js";

// A store as an earlier program left it: its events in the words of version 1 of the set-up.

const { events: written } = JSON.parse(readFileSync("test/logbook/fixtures/logbook-1.json", "utf8")) as {
  events: { id: string; at: string; kind: string; aircraft?: string }[];
};
const current = written.map(eventInCurrentForm) as LogbookEvent[];

describeStores("events of an earlier form", (place) => {
  async function oldStore(): Promise<string> {
    const url = await place.freshUrl();
    await runScript(url, readFileSync(`test/store/fixtures/version-1.${place.kind}.sql`, "utf8"));
    for (const [i, event] of written.entries()) {
      const values = [
        `'old', ${1 + i}, '${event.id}', ${Date.parse(event.at)}, 0, '${event.kind}'`,
        event.aircraft === undefined ? "null" : `'${event.aircraft}'`,
        `'${JSON.stringify(event).replaceAll("'", "''")}', '${hashOf(event as LogbookEvent)}'`,
      ];
      await runSql(url, `insert into events values (${values.join(", ")})`);
    }
    return url;
  }

  test("they are read in today's form, known when they are sent again in either, and left as they were", async () => {
    const url = await oldStore();
    const store = await openStore(url, { base: "old" });
    const kept = (await store.eventsAfter(0, 100)).map(({ event }) => event);
    expect(kept).toEqual(current);
    expect(canonicalText(kept[0])).not.toBe(canonicalText(written[0]));
    expect((await store.event(written[2].id))?.event).toMatchObject({ weakest: "oil-pumps" });
    const page = await store.eventsBefore({ kinds: ["set-up"], limit: 5 });
    expect(page.map(({ event }) => event)).toEqual([current[0]]);
    expect(deriveBase(kept)?.setUp.soakline_base).toBe(3);
    const ids = written.map((event) => event.id);
    expect(await store.append(current)).toEqual({ kept: [], known: ids, conflicting: [] });
    expect(await store.append(written as LogbookEvent[])).toMatchObject({ known: ids, conflicting: [] });
    const other = { ...current[2], weakest: "bearings" } as LogbookEvent;
    expect(await store.append([other])).toEqual({ kept: [], known: [], conflicting: [other.id] });
    await store.close();
    const [row] = await runSql(
      url,
      `select content from events where base = 'old' and id = '${written[0].id}'`,
    );
    expect(JSON.parse(String(row.content))).toEqual(written[0]);
  });

  test("a backup holds them as they were, and a restored store reads them in today's form", async () => {
    const file = join(place.folder, "old.jsonl");
    await backupTo(await oldStore(), file, { base: "old" });
    expect(readFileSync(file, "utf8")).toContain('"command_topic":"strip/pad/set"');
    const url = await place.freshUrl();
    await restoreFrom(url, file, { base: "old" });
    const store = await openStore(url, { base: "old" });
    expect((await store.eventsAfter(0, 100)).map(({ event }) => event)).toEqual(current);
    expect(await store.append(current)).toMatchObject({ kept: [], conflicting: [] });
    await store.close();
  });

  test("an earlier program refuses a store that may hold events of today's form", async () => {
    const url = await oldStore();
    await (await openStore(url)).close();
    expect(await runSql(url, "select version from soakline_schema")).toEqual([{ version: 4 }]);
    expect(STORE_VERSION).toBe(4);
  });
});
