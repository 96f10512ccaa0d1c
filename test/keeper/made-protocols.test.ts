import { expect, test, vi } from "vitest";
import { readBaseSetUp } from "../../src/logbook/index.js";
import { until } from "../devices/waiting.js";
import { wire } from "./wire.js";

vi.mock(import("../../src/switching/protocols/all.js"), async (original) => {
  const { SWITCH_PROTOCOLS, PROBE_PROTOCOLS } = await original();
  const { wireSwitch, wireProbe } = await import("./wire.js");
  return {
    SWITCH_PROTOCOLS: [...SWITCH_PROTOCOLS, wireSwitch] as never,
    PROBE_PROTOCOLS: [...PROBE_PROTOCOLS, wireProbe] as never,
  };
});
vi.mock(import("../../src/devices/drivers.js"), async (original) => {
  const { SWITCH_DRIVERS, PROBE_DRIVERS } = await original();
  const { wireSwitches, wireProbes } = await import("./wire.js");
  return {
    SWITCH_DRIVERS: [...SWITCH_DRIVERS, wireSwitches],
    PROBE_DRIVERS: [...PROBE_DRIVERS, wireProbes],
  };
});

const AIRCRAFT = {
  ...{ id: "lynx", name: "Lynx", engine: "four-carburettor-160" },
  kit: { heaters: ["sump-pad-220"], covers: [] },
  known: { at: "2026-01-10T00:00:00Z", place: "ramp", covers_on: [], initial: { all_c: -18 } },
};
const PROBE = { id: "oil", name: "Oil", at: "oil", unit: "c", at_most_c: 90, via: { kind: "wire", pair: 3 } };
const SWITCH = {
  ...{ id: "pad", name: "Pad", heaters: ["sump-pad-220"], longest_on_min: 60 },
  via: { kind: "wire", line: "7", hear: { on: "up", off: "down" } },
};

function setUp(more: object = { on_time_s: 300 }, probe: object = PROBE) {
  const switches = [{ ...SWITCH, ...more }];
  return readBaseSetUp({
    ...{ soakline_base: 3, name: "Test", zone: "UTC", circuits: [], probes: [] },
    aircraft: [{ ...AIRCRAFT, probes: [probe], switches }],
  });
}

test("the set-up takes it, checks it, and names what is wrong with it", () => {
  expect(setUp()).toMatchObject({ ok: true });
  const endless = setUp({});
  expect(endless).toMatchObject({ ok: false, issues: [{ path: "aircraft[0].switches[0].on_time_s" }] });
  const wrong = setUp({ on_time_s: 300 }, { ...PROBE, via: { kind: "wire", pair: "three" } });
  expect(wrong).toMatchObject({ ok: false, issues: [{ path: "aircraft[0].probes[0].via.pair" }] });
});

test("its probe is heard, and its switch heats in the window of the plan", async () => {
  const { createSwitchboard } = await import("../../src/keeper/switchboard.js");
  const { listenToProbes } = await import("../../src/keeper/probes.js");
  const { createClock } = await import("../../src/keeper/clocks.js");
  const reading = setUp();
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  const board = createSwitchboard({
    store: { saveState: async () => undefined, loadState: async () => undefined },
    ...{ brokerUrl: "", clientId: "test", clock: createClock(1).forSwitches, environment: {} },
    ...{ state: () => undefined, record: () => undefined, onLog: () => undefined },
  });
  const probes = listenToProbes({
    ...{ brokerUrl: "", clientId: "test", clock: Date.now, onLog: () => undefined },
    onReading: (reading) => board.read(reading),
    onRefused: () => undefined,
  });
  board.setUp(reading.setUp);
  const now = Date.now();
  board.plan([{ aircraft: "lynx", switch: "pad", from: now, to: now + 60_000, planId: "p" }]);
  await until(() => wire.told.includes("7 off"));
  probes.setUp(reading.setUp);
  await until(() => wire.is === "on", 20_000);
  expect(await board.stop(5)).toBe(true);
  expect(wire.is).toBe("off");
  await probes.close();
});
