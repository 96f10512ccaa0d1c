import fc from "fast-check";
import { expect, test } from "vitest";
import { createSwitchKeeper } from "../../src/devices/index.js";
import { connectMqttSwitch } from "../../src/devices/mqtt-switch.js";
import { createClock } from "../../src/keeper/clocks.js";
import type { HeaterSwitch } from "../../src/logbook/index.js";
import { createRandom } from "../../src/numerics/index.js";
import { LOCKING_FAULTS } from "../../src/switching/faults.js";
import type { DurableState } from "../../src/switching/index.js";
import { startMosquitto } from "./brokers.js";
import { type Change, Heater, longestOnMs, padSwitch } from "./heater.js";
import { startWire } from "./proxy.js";
import { pause, until } from "./waiting.js";

// One keeper and one heater over a real broker, while the network and the broker misbehave at random. Every word of
// the heater comes twice, late and out of order. A person acknowledges every fault at once, so that it goes on again.

const random = createRandom(77);
const LONGEST_MS = 6000;
/** [ms] One and a half times the keepalive of 2 s, and what brokers take to look. */
const DEAD_LINK_NOTICED_MS = 1.5 * 2000 + 8000;
/** [ms] A message's way on a busy machine. */
const ON_THE_WAY_MS = 500;
const STORM_MS = 25_000;

const plain: HeaterSwitch = { ...padSwitch, longest_on_min: 0.1, rest_min: 0.02, confirm_within_s: 2 };
const timed: HeaterSwitch = {
  ...plain,
  on_time_s: 3,
  confirm_within_s: 1,
  via: { ...plain.via, say: { ...plain.via.say, on: "ON {on_time_s}" } } as HeaterSwitch["via"],
};

const troubles = ["freeze", "freeze", "cut", "forget", "restart", "calm", "calm", "calm"] as const;

test.each<[string, HeaterSwitch, number]>([
  ["with an on-time of its own: never on past its limit", timed, LONGEST_MS + ON_THE_WAY_MS],
  [
    "without: never on past its limit and the time in which a dead link is noticed",
    plain,
    LONGEST_MS + DEAD_LINK_NOTICED_MS,
  ],
])(
  "a heater %s",
  async (_, of, limitMs) => {
    const broker = await startMosquitto();
    const wire = await startWire(broker.port);
    const heater = new Heater(broker.port);
    await heater.start();
    heater.jitterMs = 150;
    let saved: DurableState | undefined;
    const keeper = createSwitchKeeper({
      switch: of,
      guards: [],
      device: connectMqttSwitch(
        of,
        { url: `mqtt://127.0.0.1:${wire.port}`, clientId: "soakline-lynx-pad", keepaliveS: 2 },
        1,
      ),
      clock: createClock(1).forSwitches,
      saved: undefined,
      saveState: async (it) => {
        saved = it;
      },
      record: () => undefined,
    });
    keeper.plan({ from: 0, to: Date.now() + 3600_000, planId: "night" });
    const person = setInterval(() => {
      for (const fault of LOCKING_FAULTS) keeper.acknowledge(fault);
    }, 500);

    const end = performance.now() + STORM_MS;
    const [kinds] = fc.sample(fc.array(fc.constantFrom(...troubles), { minLength: 100, maxLength: 100 }), {
      numRuns: 1,
      seed: 77,
    });
    let restarts = 0;
    for (const trouble of kinds ?? []) {
      if (performance.now() > end) break;
      if (trouble === "freeze") {
        wire.freeze();
        await pause(200 + random.uniform() * 3500);
        wire.thaw();
      } else if (trouble === "cut") wire.cut();
      else if (trouble === "forget") wire.cutClientSide();
      else if (trouble === "restart") {
        restarts++;
        await broker.crash();
        await pause(random.uniform() * 1000);
        await broker.start();
      }
      await pause(500 + random.uniform() * 1500);
    }
    clearInterval(person);
    const { confirmedOff } = await keeper.stop(20);
    const { changes } = heater;
    await heater.stop();
    await wire.close();
    await broker.crash();

    const ons = changes.filter(({ on }) => on).length;
    console.info(
      `on ${ons} times, longest ${Math.round(longestOnMs(changes))} ms, broker restarts ${restarts}`,
    );
    expect(confirmedOff).toBe(true);
    expect(heater.on).toBe(false);
    expect(saved).toMatchObject({ mayBeOn: false });
    // Else the storm kept it off, and nothing was shown.
    expect(ons).toBeGreaterThan(1);
    expect(restarts).toBeGreaterThan(0);
    expect(longestOnMs(changes)).toBeLessThanOrEqual(limitMs);
  },
  120_000,
);

test("the measure itself: the longest stay on, also one that has not ended", () => {
  const changes: Change[] = [
    { at: 0, on: true },
    { at: 10, on: false },
    { at: 30, on: true },
  ];
  expect(longestOnMs(changes, 35)).toBe(10);
  expect(longestOnMs(changes, 50)).toBe(20);
});

test("lost and found in the middle of a stay: off first, and on again by the plan", async () => {
  const broker = await startMosquitto();
  const wire = await startWire(broker.port);
  const heater = new Heater(broker.port);
  await heater.start();
  const keeper = createSwitchKeeper({
    switch: padSwitch,
    guards: [],
    device: connectMqttSwitch(padSwitch, {
      url: `mqtt://127.0.0.1:${wire.port}`,
      clientId: "soakline-lynx-pad",
      keepaliveS: 2,
    }),
    clock: createClock(1).forSwitches,
    saved: undefined,
    saveState: async () => undefined,
    record: () => undefined,
  });
  keeper.plan({ from: 0, to: Date.now() + 3600_000, planId: "night" });
  await until(() => heater.on);
  wire.cut();
  await until(() => !heater.on);
  await until(() => heater.on);
  expect(heater.changes.map(({ on }) => on)).toEqual([true, false, true]);
  const offs = heater.commands.slice(heater.commands.indexOf("ON") + 1, heater.commands.lastIndexOf("ON"));
  // Once from the broker's last will, once from the keeper that came back.
  expect(offs.length).toBeGreaterThanOrEqual(2);
  expect(new Set(offs)).toEqual(new Set(["OFF"]));
  expect(await keeper.stop()).toEqual({ confirmedOff: true });
  await heater.stop();
  await wire.close();
  await broker.crash();
});
