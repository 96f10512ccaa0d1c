import { randomUUID } from "node:crypto";
import SQLite from "better-sqlite3";
import { afterEach, expect, test } from "vitest";
import { finding } from "../../src/findings/index.js";
import { english } from "../../src/words/index.js";
import { Relay } from "../devices/relay.js";
import { pause, until } from "../devices/waiting.js";
import { type Hangar, HEAT_BEFORE, openHangar } from "./hangar.js";
import { aNight, commands } from "./night.js";

// The whole keeper on a real store, a real broker and a switch with a real connection, in real time.

let hangar: Hangar;
afterEach(() => hangar.close());

test("wanted, planned, on at its time, confirmed, off when it is to be unplugged, all of it written down", async () => {
  hangar = await openHangar();
  await aNight(hangar);
}, 60_000);

test("the same with a switch that is told over HTTP", async () => {
  hangar = await openHangar({ over: "http" });
  await aNight(hangar);
}, 60_000);

test("off when the departure is dropped, and when the aircraft was flown", async () => {
  hangar = await openHangar();
  const { heater, keeper } = hangar;
  const common = () => ({ id: randomUUID(), at: new Date().toISOString(), aircraft: "lynx" });
  const first = await hangar.want(HEAT_BEFORE + 500);
  await until(() => heater.on);
  await keeper.live.record([{ ...common(), kind: "departure-dropped", of: first }]);
  await until(() => !heater.on, 3000);
  await pause(1500);
  expect(await hangar.events("plan-withdrawn")).toMatchObject([
    { reason: finding("departure-no-longer-wanted", {}) },
  ]);
  await hangar.want(HEAT_BEFORE + 500);
  await until(() => heater.on);
  await keeper.live.record([{ ...common(), kind: "started", how: "easy" }]);
  await until(() => !heater.on, 3000);
}, 60_000);

test("off before it stops, and everything is written down by then", async () => {
  hangar = await openHangar();
  const { heater, keeper, data } = hangar;
  await hangar.want(HEAT_BEFORE + 500);
  await until(() => heater.on);
  await keeper.close();
  expect(heater.on).toBe(false);
  const kept = new SQLite(data, { readonly: true });
  const last = kept.prepare("select content from events order by sequence desc limit 2").all() as {
    content: string;
  }[];
  kept.close();
  expect(last.map(({ content }) => JSON.parse(content).kind)).toEqual([
    "switch-confirmed",
    "switch-commanded",
  ]);
}, 60_000);

test("off when nothing can be written down any more; what happened meanwhile is written when it can be", async () => {
  hangar = await openHangar();
  const { heater, keeper, data } = hangar;
  const other = new SQLite(data);
  const rename = (from: string, to: string) => other.exec(`alter table ${from} rename to ${to}`);
  await until(() => keeper.live.health().ready);
  await pause(500);
  const order = { aircraft: "lynx", switch: "pad", to: "on", minutes: 5, by: "test" } as const;
  expect(await keeper.live.switchByHand(order)).toEqual({ status: "done" });
  await until(() => heater.on);
  await pause(500);
  for (const table of ["events", "readings", "states"]) rename(table, `${table}_away`);
  await until(() => !heater.on, 5000);
  expect(keeper.live.health()).toMatchObject({ ready: false });
  await expect(hangar.want(60_000)).rejects.toThrow();
  for (const table of ["events", "readings", "states"]) rename(`${table}_away`, table);
  other.close();
  await until(() => keeper.live.health().ready, 40_000);
  const faults = await hangar.events("fault");
  expect(faults.map(({ fault }) => fault)).toContain("store-unwritable");
  expect(await commands(hangar)).toEqual(["off", "on", "off"]);
}, 90_000);

test("off above a probe's limit, until somebody acknowledges", async () => {
  hangar = await openHangar();
  const { heater, keeper } = hangar;
  await until(() => keeper.live.health().ready);
  await pause(500);
  const order = { aircraft: "lynx", switch: "pad", by: "test" };
  expect(await keeper.live.switchByHand({ ...order, to: "on" })).toEqual({ status: "done" });
  await until(() => heater.on);
  hangar.say(95);
  await until(() => !heater.on, 3000);
  await pause(1000);
  const [fault] = await hangar.events("fault");
  expect(fault).toMatchObject({ fault: "over-temperature", aircraft: "lynx", switch: "pad", probe: "oil" });
  hangar.say(20);
  await pause(500);
  expect(await keeper.live.switchByHand({ ...order, to: "on" })).toMatchObject({ status: "refused" });
  expect(await keeper.live.acknowledge(fault.id, "test")).toEqual({ status: "done" });
  await pause(500);
  expect(keeper.live.state()?.aircraft.get("lynx")?.faults).toEqual([]);
  expect(await keeper.live.switchByHand({ ...order, to: "on" })).toEqual({ status: "done" });
  await until(() => heater.on);
  expect(await keeper.live.switchByHand({ ...order, switch: "other", to: "off" })).toEqual({
    status: "unknown",
  });
}, 60_000);

test("a switch of an older logbook that never goes off by itself: off at once, on by nothing, until it is mended", async () => {
  hangar = await openHangar({ over: "http", endless: true });
  const { heater, keeper } = hangar;
  await until(() => !heater.on, 5000);
  await hangar.want(HEAT_BEFORE + 500);
  await pause(4000);
  const order = { aircraft: "lynx", switch: "pad", by: "test" };
  const refused = await keeper.live.switchByHand({ ...order, to: "on" });
  if (refused.status !== "refused") throw new Error(`expected a refusal, received ${refused.status}`);
  expect(english(refused.reason)).toMatch(
    /^its set-up is not safe \(on_time_s: expected the time after which/,
  );
  expect(await keeper.live.switchByHand({ ...order, to: "off" })).toEqual({ status: "done" });
  await pause(1500);
  if (!(heater instanceof Relay)) throw new Error("expected the relay");
  expect(heater.seen.filter(({ url }) => url.includes("turn=on"))).toEqual([]);
  expect(heater.seen.filter(({ url }) => url.includes("turn=off")).length).toBeGreaterThan(0);
  const [fault] = await hangar.events("fault");
  expect(fault).toMatchObject({ fault: "plan-failed", aircraft: "lynx", switch: "pad" });
  expect(english(fault.text)).toMatch(/^The plan is not switched: its set-up is not safe/);
  const { ready, reasons } = keeper.live.health();
  expect(ready).toBe(false);
  expect(english(reasons[0])).toMatch(/^The switch lynx\/pad stays off: its set-up is not safe/);
  const base = keeper.live.state()!.setUp;
  const [lynx] = base.aircraft;
  const mended = { ...base, aircraft: [{ ...lynx, switches: [{ ...lynx.switches[0], on_time_s: 300 }] }] };
  await keeper.live.record([
    { kind: "set-up", id: randomUUID(), at: new Date().toISOString(), base: mended },
  ]);
  await until(() => keeper.live.health().ready, 30_000);
  await pause(500);
  await until(() => !heater.on, 5000);
  expect(await keeper.live.switchByHand({ ...order, to: "on" })).toEqual({ status: "done" });
  await until(() => heater.on, 10_000);
  // The mended switch begins anew, and may say that it does not answer yet.
  expect((await hangar.events("fault-cleared")).map(({ of }) => of)).toContain(fault.id);
}, 90_000);

/** What the switch was told, repetitions apart: off is said again until it is confirmed. */
