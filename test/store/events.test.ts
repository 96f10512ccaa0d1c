import { expect, test } from "vitest";
import type { LogbookEvent } from "../../src/logbook/index.js";
import { openStore, type Store } from "../../src/store/index.js";
import { id, note, START, shutDown } from "./example-events.js";
import { describeStores, runSql } from "./stores.js";

describeStores("events", (place) => {
  async function opened(options = {}): Promise<{ store: Store; url: string }> {
    const url = await place.freshUrl();
    return { store: await openStore(url, options), url };
  }

  test("new events are kept in the order given, with sequences that grow and the time they came", async () => {
    const { store, url } = await opened({ clock: () => START });
    const result = await store.append([shutDown(2), shutDown(1)]);
    expect(result).toEqual({
      kept: [
        { sequence: 1, received: "2026-01-11T00:00:00.000Z", event: shutDown(2) },
        { sequence: 2, received: "2026-01-11T00:00:00.000Z", event: shutDown(1) },
      ],
      known: [],
      conflicting: [],
    });
    await store.close();
    const again = await openStore(url);
    expect(await again.eventsAfter(0, 10)).toEqual(result.kept);
    expect((await again.append([shutDown(3)])).kept[0].sequence).toBe(3);
    await again.close();
  });

  test("the same again is known, whatever the order of its keys; other content under its id changes nothing", async () => {
    const { store } = await opened();
    const { kept } = await store.append([note(1, "frost")]);
    const { id, at, kind } = note(1, "frost");
    const turned = { note: "frost", kind, at, id } as LogbookEvent;
    expect(
      await store.append([turned, note(1, "no frost"), note(2, "ice"), note(2, "ice"), note(2, "rime")]),
    ).toEqual({
      kept: [expect.objectContaining({ sequence: 2, event: note(2, "ice") })],
      known: [id, note(2, "").id],
      conflicting: [id, note(2, "").id],
    });
    expect(await store.event(id)).toEqual(kept[0]);
    expect(await store.event(note(3, "").id)).toBeUndefined();
    await store.close();
  });

  test("any text comes back as it was", async () => {
    const { store } = await opened();
    const texts = [
      "−18 °C",
      "zero \u0000 inside",
      "half \ud800 a pair",
      "line\u2028apart",
      "'; drop table events; --",
    ];
    await store.append(texts.map((text, i) => note(i, text)));
    const back = (await store.eventsAfter(0, 10)).map(({ event }) => event.note);
    expect(back).toEqual(texts);
    await store.close();
  });

  test("all of a batch or none", async () => {
    const { store } = await opened();
    const broken = { ...shutDown(3), at: "never" };
    await expect(store.append([shutDown(1), shutDown(2), broken])).rejects.toThrow();
    expect(await store.eventsAfter(0, 10)).toEqual([]);
    await store.append([shutDown(1)]);
    expect(await store.eventsAfter(0, 10)).toHaveLength(1);
    await store.close();
  });

  test("pages go on from the highest sequence", async () => {
    const { store } = await opened();
    const many = Array.from({ length: 1234 }, (_, i) => shutDown(i));
    expect((await store.append(many)).kept).toHaveLength(1234);
    const seen: LogbookEvent[] = [];
    for (let last = 0; ; ) {
      const page = await store.eventsAfter(last, 500);
      if (page.length === 0) break;
      seen.push(...page.map(({ event }) => event));
      last = page[page.length - 1].sequence;
    }
    expect(seen).toEqual(many);
    expect((await store.append([...many, shutDown(2000)])).known).toHaveLength(1234);
    await store.close();
  });

  test("the newest first, of an aircraft, of kinds, before a sequence", async () => {
    const { store } = await opened();
    await store.append([shutDown(1), shutDown(2, "wren"), note(3, "x"), shutDown(4), shutDown(5, "wren")]);
    const numbers = async (request: Omit<Parameters<Store["eventsBefore"]>[0], "limit">, limit = 10) =>
      (await store.eventsBefore({ ...request, limit })).map(({ event }) => Number(event.id.slice(-2)));
    expect(await numbers({})).toEqual([5, 4, 3, 2, 1]);
    expect(await numbers({}, 2)).toEqual([5, 4]);
    expect(await numbers({ before: 4 })).toEqual([3, 2, 1]);
    expect(await numbers({ aircraft: "wren" })).toEqual([5, 2]);
    expect(await numbers({ aircraft: "wren", before: 5 })).toEqual([2]);
    expect(await numbers({ kinds: ["note", "fault"] })).toEqual([3]);
    expect(await numbers({ kinds: [] })).toEqual([]);
    await store.close();
  });

  test("a correction and a cleared fault stand on the page of the aircraft that they are about", async () => {
    const { store } = await opened();
    const { at } = shutDown(1);
    const fault = {
      id: id(2),
      at,
      kind: "fault",
      aircraft: "lynx",
      fault: "probe-lost",
      text: "oil",
    } as const;
    await store.append([shutDown(1, "wren"), fault]);
    await store.append([
      { id: id(3), at, kind: "correction", of: id(1), instead: null },
      { id: id(4), at, kind: "correction", of: id(1), instead: { ...shutDown(5, "lynx") } as never },
      { id: id(6), at, kind: "fault-cleared", of: id(2) },
      // About an event of the same batch.
      { id: id(7), at, kind: "correction", of: id(8), instead: null },
      shutDown(8, "heron"),
      { id: id(9), at, kind: "correction", of: id(99), instead: null },
    ]);
    const page = async (aircraft: string) =>
      (await store.eventsBefore({ aircraft, limit: 10 })).map(({ event }) => Number(event.id.slice(-2)));
    expect(await page("wren")).toEqual([3, 1]);
    expect(await page("lynx")).toEqual([6, 4, 2]);
    expect(await page("heron")).toEqual([8, 7]);
    await store.close();
  });

  test("what was written cannot be changed or removed, not even beside the program", async () => {
    const { store, url } = await opened();
    await store.append([shutDown(1)]);
    await expect(runSql(url, "update events set content = '{}'")).rejects.toThrow("only ever added");
    await expect(runSql(url, "delete from events")).rejects.toThrow("only ever added");
    expect(await store.eventsAfter(0, 10)).toHaveLength(1);
    await store.close();
  });

  test("bases of one database know nothing of each other", async () => {
    const url = await place.freshUrl();
    const [north, south] = [await openStore(url, { base: "north" }), await openStore(url, { base: "south" })];
    await north.append([note(1, "snow")]);
    expect((await south.append([note(1, "sun")])).kept[0].sequence).toBe(1);
    expect((await north.eventsAfter(0, 9)).map(({ event }) => event.note)).toEqual(["snow"]);
    expect((await south.event(id(1)))?.event.note).toBe("sun");
    await north.close();
    await south.close();
  });
});
