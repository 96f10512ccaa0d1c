import { afterEach, expect, test } from "vitest";
import { createClock } from "../../src/keeper/clocks.js";
import { createSwitchboard } from "../../src/keeper/switchboard.js";
import type { HeaterSwitch } from "../../src/logbook/index.js";
import { english } from "../../src/words/index.js";
import { padSwitch } from "../devices/heater.js";
import { Relay } from "../devices/relay.js";
import { pause, until } from "../devices/waiting.js";
import { setUp } from "./hangar.js";

const relay = new Relay();
afterEach(() => relay.stop());

/** A relay over HTTP that never goes off by itself; asked for its state by this. */
async function boardWith(asked: string) {
  const url = await relay.start();
  const get = (query: string) => ({ method: "GET", url: `${url}/r${query}` }) as const;
  const hear = { request: get(asked), pointer: "/ison", on: "true", off: "false" };
  const one: HeaterSwitch = {
    ...padSwitch,
    via: { kind: "http", say: { on: get("?turn=on"), off: get("?turn=off") }, hear },
  };
  const board = createSwitchboard({
    store: { saveState: async () => undefined, loadState: async () => undefined },
    ...{ brokerUrl: "mqtt://127.0.0.1:9", clientId: "test", clock: createClock(1).forSwitches },
    ...{ state: () => undefined, record: () => undefined, environment: {}, onLog: () => undefined },
  });
  board.setUp({ ...setUp, aircraft: [{ ...setUp.aircraft[0], switches: [one] }] });
  return board;
}

const order = { aircraft: "lynx", switch: "pad", by: "test" } as const;

test("a switch whose question could put it on is left alone, and says why", async () => {
  const board = await boardWith("?turn=on");
  const now = Date.now();
  board.plan([{ aircraft: "lynx", switch: "pad", from: now, to: now + 60_000, planId: "p" }]);
  await pause(2500);
  expect(relay.seen).toEqual([]);
  for (const to of ["on", "off"] as const) {
    const outcome = await board.byHand({ ...order, to });
    if (outcome.status !== "refused") throw new Error(outcome.status);
    expect(english(outcome.reason)).toMatch(/via\.hear\.request: expected another request than say\.on/);
  }
  expect(board.troubles().map(english)).toEqual([
    expect.stringMatching(/^The switch lynx\/pad stays off: its set-up/),
  ]);
  expect(await board.stop(1)).toBe(true);
}, 30_000);

test("one that only has no end is told off, and never on, though its window is open", async () => {
  relay.on = true;
  const board = await boardWith("");
  const now = Date.now();
  board.plan([{ aircraft: "lynx", switch: "pad", from: now, to: now + 60_000, planId: "p" }]);
  await until(() => !relay.on, 10_000);
  expect(await board.byHand({ ...order, to: "on" })).toMatchObject({ status: "refused" });
  await pause(2500);
  expect(relay.seen.filter(({ url }) => url.includes("turn=on"))).toEqual([]);
  expect(await board.stop(5)).toBe(true);
}, 30_000);
