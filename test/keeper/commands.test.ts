import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { eventsToJson, type HeaterSwitch, type LogbookEvent, readEvents } from "../../src/logbook/index.js";
import { openStore } from "../../src/store/index.js";
import { opening } from "../base/example-base.js";
import { soakline } from "../cli/run.js";

const folder = mkdtempSync(join(tmpdir(), "soakline-commands-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const path = (name: string) => join(folder, name);

async function filled(name: string): Promise<string> {
  const data = path(name);
  const store = await openStore(data);
  await store.append(opening.events);
  await store.appendReadings(
    Array.from({ length: 50 }, (_, k) => ({
      ...{ aircraft: "lynx", probe: "oil", time: 1.8e12 + 1000 * k, tempC: -k / 10 },
    })),
  );
  await store.close();
  return data;
}

test.each(["book.json", "book.csv"])(
  "a logbook goes out as %s and comes back whole; taken in twice, nothing changes",
  async (name) => {
    const data = await filled(`${name}.sqlite`);
    const file = path(name);
    const count = opening.events.length;
    const out = await soakline(["export", file, "--data", data]);
    expect(out).toMatchObject({ code: 0, stdout: `${count} events written to ${file}\n` });
    const other = path(`${name}.other.sqlite`);
    const first = await soakline(["import", file, "--data", other]);
    expect(first.stdout).toBe(`${count} events imported, 0 were there already\n`);
    const second = await soakline(["import", file, "--data", other]);
    expect(second.stdout).toBe(`0 events imported, ${count} were there already\n`);
    const store = await openStore(other);
    expect((await store.eventsAfter(0, 100)).map(({ event }) => event)).toEqual(opening.events);
    await store.close();
    if (name.endsWith("json")) expect(readEvents(readFileSync(file, "utf8")).issues).toEqual([]);
  },
  120_000,
);

test("readings go out and come back", async () => {
  const data = await filled("b.sqlite");
  const file = path("readings.csv");
  const out = await soakline(["export", file, "--readings", "raw", "--data", data]);
  expect(out.stdout).toMatch(/^50 readings written/);
  const back = await soakline(["import", file, "--data", path("c.sqlite")]);
  expect(back.stdout).toMatch(/^50 readings imported, 0 were/);
}, 120_000);

test("a backup fills an empty store, and no other", async () => {
  const data = await filled("d.sqlite");
  const file = path("backup");
  expect((await soakline(["backup", file, "--data", data])).code).toBe(0);
  const filling = await soakline(["restore", file, "--data", path("e.sqlite")]);
  expect(filling.stdout).toMatch(/events and 50 readings restored/);
  expect(await soakline(["restore", file, "--data", data])).toMatchObject({
    code: 2,
    stderr: expect.stringMatching(/--data: expected a store that can be used, received .*empty/),
  });
}, 120_000);

test("an export whose set-up has a switch without an end is refused with its place; a backup of one is kept, and it is said", async () => {
  const [setUp] = opening.events;
  if (setUp.kind !== "set-up") throw new Error("expected the set-up first");
  const [lynx, ...others] = setUp.base.aircraft;
  const [{ on_time_s: _, ...lead }] = lynx.switches;
  const to = (what: string) => ({ method: "POST", url: `http://lead.lan/${what}` }) as const;
  const hear = { request: { method: "GET", url: "http://lead.lan/" } as const, on: "1", off: "0" };
  const endless: HeaterSwitch = {
    ...lead,
    via: { kind: "http", say: { on: to("on"), off: to("off") }, hear },
  };
  const old: LogbookEvent = {
    ...setUp,
    base: { ...setUp.base, aircraft: [{ ...lynx, switches: [endless] }, ...others] },
  };
  writeFileSync(path("endless.json"), eventsToJson([old]));
  const taken = await soakline(["import", path("endless.json"), "--data", path("h.sqlite")]);
  expect(taken).toMatchObject({
    code: 2,
    stderr: expect.stringMatching(
      /events\[0\]\.base\.aircraft\[0\]\.switches\[0\]\.on_time_s: expected the time/,
    ),
  });
  const store = await openStore(path("i.sqlite"));
  await store.append([old]);
  await store.close();
  expect((await soakline(["backup", path("endless"), "--data", path("i.sqlite")])).code).toBe(0);
  const back = await soakline(["restore", path("endless"), "--data", path("j.sqlite")]);
  expect(back).toMatchObject({
    code: 0,
    stdout: expect.stringMatching(
      /^1 events .*restored .*\nSwitch lynx\/lead stays off: its set-up is not safe/,
    ),
  });
  const [{ on_time_s: __, ...quiet }] = lynx.switches;
  const mqtt = { ...setUp, base: { ...setUp.base, aircraft: [{ ...lynx, switches: [quiet] }, ...others] } };
  writeFileSync(path("quiet.json"), eventsToJson([mqtt]));
  const warned = await soakline(["import", path("quiet.json"), "--data", path("k.sqlite")]);
  expect(warned.stdout).toMatch(
    /^1 events imported, .*\nCaution, switch lynx\/lead: This switch does not go off/,
  );
}, 120_000);

test("what cannot be read or written is said with its place", async () => {
  writeFileSync(path("bad.json"), '{"soakline_logbook":1,"events":[{"kind":"note"}]}');
  const bad = await soakline(["import", path("bad.json"), "--data", path("f.sqlite")]);
  expect(bad).toMatchObject({ code: 2, stderr: expect.stringMatching(/events\[0\]/) });
  expect((await soakline(["export", path("book.txt"), "--data", path("f.sqlite")])).code).toBe(2);
  expect((await soakline(["serve", "--speed", "5", "--data", path("f.sqlite")])).code).toBe(2);
  const open = await soakline(["serve", "--host", "0.0.0.0", "--data", path("f.sqlite")]);
  expect(open).toMatchObject({ code: 2, stderr: expect.stringMatching(/set up the owner/) });
}, 120_000);

test("an owner is set up from standard input and can be given a new password; a weak one is refused", async () => {
  const args = ["owner", "Maija", "--data", path("g.sqlite")];
  const weak = await soakline(args, { input: "winter\n" });
  expect(weak).toMatchObject({ code: 2, stderr: expect.stringMatching(/at least 12 characters/) });
  const good = await soakline(args, { input: "lantern moss ferry oblong\n" });
  expect(good.stdout).toBe("Maija is set up as owner.\n");
  const again = await soakline(args, { input: "pewter sled harbour quince\n" });
  expect(again.stdout).toMatch(/new password/);
  const store = await openStore(path("g.sqlite"));
  expect(await store.users()).toMatchObject([{ name: "Maija", role: "owner" }]);
  expect(JSON.stringify(await store.users())).not.toMatch(/pewter/);
  await store.close();
}, 120_000);
