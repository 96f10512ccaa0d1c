import { describe, expect, test } from "vitest";
import { createSwitchKeeper } from "../../src/devices/index.js";
import type { SwitchKeeperOptions } from "../../src/devices/switch-keeper.js";
import type { Finding } from "../../src/findings/index.js";
import type { DurableState, SwitchFact } from "../../src/switching/index.js";
import { english } from "../../src/words/index.js";
import { padSwitch } from "./heater.js";
import { FakeDevice, SteppedClock, settled } from "./stepped.js";

interface Hangar {
  readonly clock: SteppedClock;
  readonly device: FakeDevice;
  readonly saves: DurableState[];
  readonly facts: SwitchFact[];
  readonly log: string[];
  keeper: ReturnType<typeof createSwitchKeeper>;
  passWithReadings(seconds: number): Promise<void>;
}

async function hangar(change: Partial<SwitchKeeperOptions> = {}): Promise<Hangar> {
  const [clock, device] = [new SteppedClock(), new FakeDevice()];
  const saves: DurableState[] = [];
  const facts: SwitchFact[] = [];
  const log: string[] = [];
  const keeper = createSwitchKeeper({
    switch: padSwitch,
    guards: [{ probe: "sump", atMostC: 90, silentAfterS: 60 }],
    device,
    clock,
    saved: undefined,
    saveState: async (saved) => void saves.push(saved),
    record: (fact) => void facts.push(fact),
    onLog: (_, text) => log.push(text),
    ...change,
  });
  let tempC = -20;
  const it: Hangar = {
    clock,
    device,
    saves,
    facts,
    log,
    keeper,
    async passWithReadings(seconds) {
      for (let i = 0; i < seconds; i++) {
        tempC += 0.01;
        if (i % 10 === 0) keeper.reading({ probe: "sump", time: clock.wallMs(), tempC });
        await clock.pass(1);
      }
    },
  };
  await settled();
  device.link(true);
  await it.passWithReadings(2);
  return it;
}

function night(clock: SteppedClock) {
  return { from: clock.wallMs(), to: clock.wallMs() + 8 * 3600_000, planId: "night" };
}

const faultsOf = (facts: readonly SwitchFact[]) =>
  facts.flatMap((fact) => (fact.kind === "fault" ? [fact.fault] : []));

describe("a night", () => {
  test("off first, then on by the plan once it is saved, off before the longest on-time, a rest, on again", async () => {
    const it = await hangar();
    expect(it.device.commands[0]).toBe("off");
    it.keeper.plan(night(it.clock));
    await it.passWithReadings(2);
    expect(it.device.on).toBe(true);
    expect(it.saves.at(-1)).toMatchObject({ mayBeOn: true });
    const begun = it.clock.monotonicS();
    while (it.device.on && it.clock.monotonicS() - begun < 4000) await it.passWithReadings(5);
    // 60 min less the 5 s that a confirmation may take.
    expect(it.clock.monotonicS() - begun).toBeGreaterThan(3580);
    expect(it.clock.monotonicS() - begun).toBeLessThanOrEqual(3600);
    await it.passWithReadings(50);
    expect(it.device.on).toBe(false);
    await it.passWithReadings(15);
    expect(it.device.on).toBe(true);
    const commanded = it.facts.flatMap((fact) => (fact.kind === "switch-commanded" ? [fact.to] : []));
    expect(commanded).toEqual(["off", "on", "off", "on"]);
    expect(faultsOf(it.facts)).toEqual(["longest-on"]);
    await it.keeper.stop();
  });

  test("the clock set forward, back, forward: off each time", async () => {
    const it = await hangar();
    for (const byMs of [3600_000, -3600_000, 5000]) {
      it.keeper.plan({ from: 0, to: Date.UTC(2030, 0, 1), planId: "winter" });
      await it.passWithReadings(70);
      expect(it.device.on).toBe(true);
      it.clock.set(byMs);
      await it.clock.pass(2);
      expect(it.device.on).toBe(false);
    }
    expect(faultsOf(it.facts)).toEqual(["clock-jump", "clock-jump", "clock-jump"]);
    await it.keeper.stop();
  });

  test("nobody gives readings any more: off", async () => {
    const it = await hangar();
    it.keeper.plan(night(it.clock));
    await it.passWithReadings(5);
    expect(it.device.on).toBe(true);
    await it.clock.pass(62);
    expect(it.device.on).toBe(false);
    expect(faultsOf(it.facts)).toEqual(["probe-lost"]);
    await it.keeper.stop();
  });
});

describe("the store", () => {
  test("on waits for the save; off does not", async () => {
    const waiting: (() => void)[] = [];
    const it = await hangar({ saveState: () => new Promise<void>((resolve) => waiting.push(resolve)) });
    it.keeper.plan(night(it.clock));
    await it.passWithReadings(2);
    expect(it.device.commands).not.toContain("on");
    while (waiting.length > 0) {
      for (const done of waiting.splice(0)) done();
      await settled();
    }
    expect(it.device.commands.at(-1)).toBe("on");
    it.keeper.plan(null);
    await settled();
    expect(it.device.commands.at(-1)).toBe("off");
    expect(it.device.on).toBe(false);
    for (const done of waiting.splice(0)) done();
    await it.keeper.stop();
  });

  test("a save that fails: never on; a save that fails while on: off", async () => {
    let fails = false;
    const it = await hangar({
      saveState: async () => {
        if (fails) throw new Error("disk full");
      },
    });
    it.keeper.plan(night(it.clock));
    await it.passWithReadings(2);
    expect(it.device.on).toBe(true);
    fails = true;
    it.keeper.byHand("off", 5);
    await it.passWithReadings(10);
    expect(it.device.on).toBe(false);
    expect(it.device.commands.filter((command) => command === "on")).toHaveLength(1);
    expect(it.keeper.standing().holds.map(english).join()).toContain("nothing can be written down");
    expect(it.log.join()).toContain("disk full");
    await it.keeper.stop();
  });

  test("an event that cannot be written: off, and on again only after a while and a save", async () => {
    let fails = false;
    const it = await hangar({
      record: () => {
        if (fails) throw new Error("no space");
      },
    });
    it.keeper.plan(night(it.clock));
    await it.passWithReadings(2);
    expect(it.device.on).toBe(true);
    fails = true;
    it.keeper.storeFailed();
    await settled();
    expect(it.device.on).toBe(false);
    await it.passWithReadings(30);
    expect(it.device.commands.filter((command) => command === "on")).toHaveLength(1);
    await it.keeper.stop();
  });

  test("saves never overtake each other, and only the newest waits", async () => {
    const order: string[] = [];
    let inside = 0;
    const it = await hangar({
      saveState: async (saved) => {
        expect(++inside).toBe(1);
        await new Promise((resolve) => setTimeout(resolve, 5));
        order.push(JSON.stringify(saved));
        inside--;
      },
    });
    for (let i = 0; i < 5; i++) {
      it.keeper.byHand("off", 100 + i);
      await settled();
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(order.length).toBeLessThan(5);
    expect(JSON.parse(order.at(-1) ?? "{}").offByHandUntil).toBe(it.clock.wallMs() + 104_000);
    await it.keeper.stop();
  });
});

describe("what fails", () => {
  test("commands that cannot be sent: off again and again", async () => {
    const it = await hangar();
    it.keeper.plan(night(it.clock));
    await it.passWithReadings(2);
    it.device.fails = true;
    it.keeper.plan(null);
    const before = it.device.commands.length;
    await it.clock.pass(40);
    expect(it.device.commands.slice(before)).toEqual(["off", "off", "off", "off", "off"]);
    expect(faultsOf(it.facts)).toEqual(["device-offline"]);
    it.device.fails = false;
    await it.clock.pass(40);
    expect(it.keeper.standing().phase).toBe("off");
    await it.keeper.stop();
  });

  test("a clock that breaks the machine: off, and nothing but off from then on", async () => {
    const it = await hangar();
    it.keeper.plan(night(it.clock));
    await it.passWithReadings(2);
    expect(it.device.on).toBe(true);
    it.clock.wallMs = () => {
      throw new Error("no clock");
    };
    await it.clock.pass(2);
    expect(it.device.on).toBe(false);
    expect(said(it.keeper.byHand("on", 60))).toContain("the switching failed: no clock");
    expect(said(it.keeper.standing().holds[0])).toContain("no clock");
    await it.clock.pass(5);
    expect(it.device.commands.slice(-3)).toEqual(["off", "off", "off"]);
  });

  test("a person hears why not", async () => {
    const it = await hangar();
    it.device.says("on");
    await it.clock.pass(10);
    it.device.says("on");
    await it.clock.pass(1);
    expect(said(it.keeper.byHand("on", 60))).toContain("locked since the fault");
    expect(said(it.keeper.acknowledge("probe-stuck"))).toContain("there is no fault");
    expect(it.keeper.acknowledge("switched-by-other")).toBeUndefined();
    expect(it.keeper.byHand("on", 60)).toBeUndefined();
    await it.clock.pass(1);
    expect(it.device.on).toBe(true);
    await it.keeper.stop();
  });
});

describe("stop", () => {
  test("waits for the confirmation, then says goodbye", async () => {
    const it = await hangar();
    it.keeper.plan(night(it.clock));
    await it.passWithReadings(2);
    expect(await it.keeper.stop()).toEqual({ confirmedOff: true });
    expect(it.device.on).toBe(false);
    expect(it.device.closed).toBe("with a goodbye");
    const { length } = it.device.commands;
    await it.clock.pass(100);
    expect(it.device.commands).toHaveLength(length);
  });

  test("without a confirmation the link is cut, so that the broker says off", async () => {
    const it = await hangar();
    it.keeper.plan(night(it.clock));
    await it.passWithReadings(2);
    it.device.obeys = false;
    const stopping = it.keeper.stop(10);
    await it.clock.pass(11);
    expect(await stopping).toEqual({ confirmedOff: false });
    expect(it.device.closed).toBe("abruptly");
  });

  test("what was saved goes on: a second keeper knows the on-time of the first", async () => {
    const it = await hangar();
    it.keeper.plan(night(it.clock));
    await it.passWithReadings(100);
    await it.keeper.stop();
    const saved = JSON.parse(JSON.stringify(it.saves.at(-1)));
    expect(saved.usedS).toBeGreaterThan(90);
    expect(saved.mayBeOn).toBe(false);
    const next = await hangar({ saved });
    expect(next.keeper.state().usedS).toBeCloseTo(saved.usedS, 6);
    await next.keeper.stop();
  });
});

function said(reason: Finding | undefined): string {
  return reason === undefined ? "" : english(reason);
}
