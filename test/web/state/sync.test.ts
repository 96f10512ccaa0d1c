import { beforeEach, describe, expect, test, vi } from "vitest";
import type { LogbookEvent } from "../../../src/logbook/index.js";
import { clearBook, type Db, eventsOf, keepOwn, openBook } from "../../../src/web/data/db.js";
import { Sync } from "../../../src/web/data/sync.svelte.js";
import { base, goes, tellNews } from "./device.js";

let db: Db;
let sync: Sync;
let news = 0;

beforeEach(async () => {
  goes("online");
  db = await openBook("own", () => {});
  await clearBook(db);
  sync = new Sync();
  news = 0;
  return () => {
    sync.stop();
    db.close();
  };
});

describe("a device and its base", () => {
  test("what waits is sent once, in order, and waits no more", async () => {
    await keepOwn(db, [noteOf("a"), noteOf("b")]);
    await begin();
    expect(base.posted).toEqual(["a", "b"]);
    expect([sync.server, sync.waiting, sync.hasServer]).toEqual(["joined", 0, true]);
    await sync.send();
    expect(base.posted).toEqual(["a", "b"]);
  });

  test("without a network it waits, and goes when the network comes", async () => {
    goes("offline");
    await keepOwn(db, [noteOf("a")]);
    await begin();
    expect([base.posted.length, sync.waiting, sync.isOnline]).toEqual([0, 1, false]);
    goes("online");
    await vi.waitFor(() => expect(sync.waiting).toBe(0));
    expect(base.posted).toEqual(["a"]);
  });

  test("an answer that was lost makes it send again, and the base has it once", async () => {
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
    base.losesNext = true;
    await keepOwn(db, [noteOf("a")]);
    sync.start(db, () => {});
    await vi.waitFor(() => expect([sync.server, sync.waiting]).toEqual(["unreachable", 1]));
    vi.advanceTimersByTime(10_000);
    vi.useRealTimers();
    await vi.waitFor(() => expect(sync.server).toBe("joined"));
    expect(base.events.map(({ id }) => id)).toEqual(["a"]);
    expect(base.posted).toEqual(["a", "a"]);
    expect(sync.waiting).toBe(0);
  });

  test("what the base has with other content, or refuses, stays here and is said, never sent again", async () => {
    base.conflicting = ["a"];
    base.refused = ["b"];
    await keepOwn(db, [noteOf("a"), noteOf("b"), noteOf("c")]);
    await begin();
    expect(sync.conflicts).toEqual(["a"]);
    expect(sync.refusals).toEqual(["at: expected a time, received later"]);
    await sync.send();
    expect(base.posted).toEqual(["a", "b", "c"]);
    expect((await eventsOf(db)).map(({ id }) => id)).toEqual(["a", "b", "c"]);
  });

  test("what others wrote comes, once, and is told; the stream of changes brings more", async () => {
    base.events = [noteOf("theirs")];
    await begin();
    expect((await eventsOf(db)).map(({ id }) => id)).toEqual(["theirs"]);
    expect(news).toBe(1);
    base.events.push(noteOf("later"));
    tellNews();
    await vi.waitFor(() => expect(news).toBe(2));
    expect((await eventsOf(db)).map(({ id }) => id)).toEqual(["later", "theirs"]);
  });

  test("signed out it asks for nothing by itself until somebody signs in", async () => {
    base.status = 401;
    await keepOwn(db, [noteOf("a")]);
    await begin();
    expect([sync.server, sync.waiting]).toEqual(["signed-out", 1]);
    base.status = 200;
    await sync.send();
    expect([sync.server, sync.waiting]).toEqual(["joined", 0]);
  });

  test("a base that is down is tried again, and known to be there", async () => {
    await begin();
    base.isDown = true;
    await sync.send();
    expect([sync.server, sync.hasServer]).toEqual(["unreachable", true]);
  });
});

/** Starts and waits until it has talked to the base, or found that it cannot. */
async function begin(): Promise<void> {
  sync.start(db, () => {
    news++;
  });
  await sync.send();
}

function noteOf(id: string): LogbookEvent {
  return { kind: "note", id, at: "2027-01-14T20:00:00Z", note: id };
}
