import { describe, expect, test } from "vitest";
import { finding } from "../../src/findings/index.js";
import { switchRules } from "../../src/switching/index.js";
import { PHASES } from "../../src/switching/state.js";
import { Bench, benchIn, benchOff, overMqtt, padSwitch } from "./machine.js";

describe("the way on", () => {
  test("the bench reaches every phase", () => {
    for (const phase of PHASES) expect(benchIn(phase).phase).toBe(phase);
  });

  test("nothing is commanded on before it is written down that it may be on", () => {
    const bench = benchOff().pass(1).plan(0, 600);
    expect(bench.phase).toBe("saving");
    expect(bench.commands).toEqual([]);
    expect(bench.saved).toMatchObject({ mayBeOn: true, onSinceWall: bench.wall });
    bench.savedNow();
    expect(bench.commands).toEqual(["on"]);
    expect(bench.phase).toBe("turning-on");
  });

  test("an older save does not count", () => {
    const bench = benchIn("saving");
    bench.give({ kind: "saved", id: bench.now.saveId - 1 });
    expect(bench.phase).toBe("saving");
  });

  test("a plan withdrawn while it is written down leaves it off", () => {
    const bench = benchIn("saving").pass(1).give({ kind: "plan", plan: null });
    expect(bench.phase).toBe("off");
    expect(bench.saved).toMatchObject({ mayBeOn: false });
    expect(bench.pass(1).savedNow().commands).toEqual([]);
  });

  test("a save that does not come is a store that cannot be written", () => {
    const bench = benchIn("saving").pass(11).give({ kind: "tick" });
    expect(bench.phase).toBe("off");
    expect(bench.raised).toEqual(["store-unwritable"]);
    bench.pass(1).savedNow();
    expect(bench.cleared).toEqual(["store-unwritable"]);
  });

  test("it goes on at the planned minute and not before", () => {
    const bench = benchOff().plan(60, 600).run(59);
    expect(bench.phase).toBe("off");
    expect(bench.run(1).phase).toBe("saving");
  });

  test("it goes off when the window ends", () => {
    const bench = benchOff().plan(0, 30).savedNow().confirmed("on").run(28);
    expect(bench.phase).toBe("on");
    bench.run(3);
    expect(bench.phase).toBe("turning-off");
  });
});

describe("the way off", () => {
  test("a plan withdrawn", () => {
    const bench = benchIn("on").give({ kind: "plan", plan: null });
    expect(bench.commands).toEqual(["off"]);
    expect(bench.orders).toContainEqual({
      do: "record",
      fact: { kind: "switch-commanded", to: "off", reason: finding("plan-was-withdrawn", {}) },
    });
  });

  test("off is repeated after 2, 4, 8, 16, 32, 60 and 60 s until confirmed, and then no more", () => {
    const bench = benchIn("turning-off");
    const times: number[] = [];
    const from = bench.mono;
    for (let i = 0; i < 200; i++) {
      bench.pass(1).give({ kind: "tick" });
      if (bench.commands.includes("off")) times.push(bench.mono - from);
    }
    expect(times).toEqual([2, 6, 14, 30, 62, 122, 182]);
    bench.confirmed("off");
    expect(bench.phase).toBe("off");
    for (let i = 0; i < 200; i++) expect(bench.pass(1).give({ kind: "tick" }).commands).toEqual([]);
  });

  test("above the limit: off, and locked until a person acknowledges", () => {
    const bench = benchIn("on").pass(5).reading(90.5);
    expect(bench.commands).toEqual(["off"]);
    expect(bench.raised).toEqual(["over-temperature"]);
    bench.confirmed("off").run(60, 20);
    expect(bench.phase).toBe("off");
    bench.give({ kind: "acknowledge", fault: "over-temperature" });
    expect(bench.cleared).toEqual(["over-temperature"]);
    expect(bench.phase).toBe("saving");
  });

  test("at the limit it stays on", () => {
    expect(benchIn("on").pass(5).reading(90).phase).toBe("on");
  });

  test("hot after a flight is no fault, but nothing is heated until it has cooled", () => {
    const bench = benchOff().pass(1).reading(110).pass(1).plan(0, 600);
    expect(bench.phase).toBe("off");
    expect(bench.raised).toEqual([]);
    expect(bench.pass(1).reading(80).phase).toBe("saving");
  });

  test("a guarding probe silent for longer than its time: off, and on again once it speaks", () => {
    const bench = benchIn("on");
    for (let i = 0; i < 115; i++) bench.pass(1).give({ kind: "tick" });
    expect(bench.phase).toBe("on");
    for (let i = 0; i < 10 && bench.phase === "on"; i++) bench.pass(1).give({ kind: "tick" });
    expect(bench.commands).toEqual(["off"]);
    expect(bench.raised).toEqual(["probe-lost"]);
    bench.pass(1).confirmed("off").pass(1).reading(-10);
    expect(bench.cleared).toEqual(["probe-lost"]);
    expect(bench.phase).toBe("saving");
  });

  test("old readings do not keep it on: their own time counts", () => {
    const bench = benchIn("on");
    for (let i = 0; i < 130; i++) {
      bench.pass(1).give({ kind: "reading", probe: "sump", at: bench.wall - 121_000, tempC: i / 10 });
    }
    expect(bench.phase).toBe("turning-off");
    expect(bench.now.faults).toContain("probe-lost");
  });

  test("a probe that says exactly the same for an hour with the heater on: off and locked", () => {
    const rules = switchRules({ ...padSwitch, longest_on_min: 300 }, [
      { probe: "sump", atMostC: 90, silentAfterS: 120 },
    ]);
    const bench = benchIn("on", rules).plan(0, 20_000);
    let onFor = 0;
    while (bench.phase === "on" && onFor < 10_000) {
      onFor += 10;
      bench.pass(10).reading(21.5);
    }
    expect(bench.raised).toEqual(["probe-stuck"]);
    expect(onFor).toBe(3610);
  });

  test("the same value again, then another: not stuck", () => {
    const rules = switchRules({ ...padSwitch, longest_on_min: 300 }, [
      { probe: "sump", atMostC: 90, silentAfterS: 120 },
    ]);
    const bench = benchIn("on", rules).plan(0, 20_000);
    for (let i = 0; i < 600; i++) bench.pass(10).reading(i % 300 === 0 ? 21.6 : 21.5);
    expect(bench.phase).toBe("on");
  });

  test("no confirmation of on: off, repeated, locked", () => {
    const bench = benchIn("turning-on").pass(9).give({ kind: "tick" });
    expect(bench.phase).toBe("turning-on");
    bench.pass(1).give({ kind: "tick" });
    expect(bench.commands).toEqual(["off"]);
    expect(bench.raised).toEqual(["no-confirmation"]);
    expect(bench.confirmed("off").phase).toBe("off");
    expect(bench.run(100).phase).toBe("off");
  });

  test("no confirmation of off: the fault is raised, off goes on being repeated", () => {
    const bench = benchIn("turning-off").pass(10).give({ kind: "tick" });
    expect(bench.raised).toEqual(["no-confirmation", "device-offline"]);
    expect(bench.commands).toEqual(["off"]);
    bench.give({ kind: "acknowledge", fault: "no-confirmation" });
    expect(bench.refused).toBe("the switch has not confirmed off yet");
    bench.confirmed("off");
    expect(bench.cleared).toEqual(["device-offline"]);
    bench.give({ kind: "acknowledge", fault: "no-confirmation" });
    expect(bench.now.faults).toEqual([]);
  });

  test("a failed on command may have arrived: off", () => {
    const bench = benchIn("turning-on").give({ kind: "command-failed", to: "on" });
    expect(bench.commands).toEqual(["off"]);
    expect(bench.raised).toEqual(["device-offline"]);
    expect(bench.confirmed("off").cleared).toEqual(["device-offline"]);
  });

  test("a command that fails late, when all is off, has off proved again", () => {
    const bench = benchOff().give({ kind: "command-failed", to: "on" });
    expect(bench.phase).toBe("turning-off");
    expect(bench.commands).toEqual(["off"]);
  });

  test("a lost link: off, and off first when it is back", () => {
    const bench = benchIn("on").give({ kind: "device", online: false });
    expect(bench.commands).toEqual(["off"]);
    expect(bench.raised).toEqual(["device-offline"]);
    bench.run(100).give({ kind: "device", online: true });
    expect(bench.commands).toEqual(["off"]);
    expect(bench.phase).toBe("turning-off");
    bench.pass(1).give({ kind: "tick" });
    expect(bench.now.faults).not.toContain("no-confirmation");
    expect(bench.confirmed("off").phase).toBe("off");
  });

  test("a link lost and found while off: off is proved again", () => {
    const bench = benchOff().give({ kind: "device", online: false });
    expect(bench.phase).toBe("off");
    bench.give({ kind: "device", online: true });
    expect(bench.commands).toEqual(["off"]);
    expect(bench.phase).toBe("turning-off");
  });

  test("the store cannot be written: off at once, without waiting for it", () => {
    const bench = benchIn("on").give({ kind: "store", writable: false });
    expect(bench.orders[0]).toEqual({ do: "command", to: "off" });
    expect(bench.raised).toEqual(["store-unwritable"]);
    bench.confirmed("off").give({ kind: "store", writable: true });
    expect(bench.cleared).toEqual(["store-unwritable"]);
    expect(bench.phase).toBe("saving");
  });

  test.each([
    ["forward", 3600_000],
    ["back", -3600_000],
    ["by three seconds", 3000],
    ["to nothing", Number.NaN],
  ])("the clock jumps %s: off", (_, by) => {
    const bench = benchIn("on").pass(1);
    bench.wall += by;
    bench.give({ kind: "tick" });
    expect(bench.commands).toEqual(["off"]);
    expect(bench.now.faults).toContain("clock-jump");
  });

  test("many small steps are a jump too; a drift of 100 ppm over a night is none", () => {
    const steps = benchIn("on");
    for (let i = 0; i < 20 && steps.phase === "on"; i++) {
      steps.pass(1);
      steps.wall += 500;
      steps.reading(20 + i / 10);
    }
    expect(steps.now.faults).toContain("clock-jump");
    const drift = benchOff();
    let faults = 0;
    for (let i = 0; i < 12 * 360; i++) {
      drift.pass(10);
      drift.wall += 1;
      drift.give({ kind: "tick" });
      faults += drift.now.faults.length + (drift.now.clockSteadyFrom > drift.mono ? 1 : 0);
    }
    expect(faults).toBe(0);
  });

  test("after a jump the hours are believed once both clocks agreed for a minute and the probe spoke again", () => {
    const bench = benchIn("on").pass(1);
    bench.wall += 600_000;
    bench.give({ kind: "tick" }).confirmed("off");
    for (let i = 0; i < 59; i++) bench.pass(1).reading(i / 10);
    expect(bench.phase).toBe("off");
    for (let i = 0; i < 2; i++) bench.pass(1).reading(7 + i / 10);
    expect(bench.phase).toBe("saving");
    expect(bench.now.faults).toEqual([]);
  });

  test("on-time written down by a clock that was set is rewritten by the new one", () => {
    const bench = benchIn("on").pass(100);
    bench.wall -= 7200_000;
    bench.give({ kind: "tick" });
    const { onSinceWall } = bench.saved as { onSinceWall: number };
    // The benches' way on takes two seconds from the save to here.
    expect((bench.wall - onSinceWall) / 1000).toBeCloseTo(102, 6);
  });
});

describe("somebody else", () => {
  test("switched on by somebody else: off and locked", () => {
    const bench = benchOff().pass(60).confirmed("on");
    expect(bench.commands).toEqual(["off"]);
    expect(bench.raised).toEqual(["switched-by-other"]);
  });

  test("an on that comes soon after our own command may be late: off, but no fault", () => {
    const bench = benchIn("turning-off").confirmed("off").pass(5).confirmed("on");
    expect(bench.commands).toEqual(["off"]);
    expect(bench.raised).toEqual([]);
    expect(bench.now.faults).toEqual([]);
  });

  test("switched off by somebody else, perhaps with the hands at the engine: stays off until acknowledged", () => {
    const bench = benchIn("on").pass(60).confirmed("off");
    expect(bench.commands).toEqual(["off"]);
    expect(bench.raised).toEqual(["switched-by-other"]);
    expect(bench.confirmed("off").run(120).phase).toBe("off");
    expect(bench.give({ kind: "acknowledge", fault: "switched-by-other" }).phase).toBe("saving");
  });

  test("an off heard before on was confirmed is from before", () => {
    expect(benchIn("turning-on").confirmed("off").phase).toBe("turning-on");
  });

  test("on heard again and again while off is wanted: off is repeated in its own time, not each time", () => {
    const bench = benchIn("turning-off");
    let commands = 0;
    for (let i = 0; i < 100; i++) commands += bench.pass(0.01).confirmed("on").commands.length;
    expect(commands).toBe(0);
  });
});

describe("longest on-time and rest", () => {
  test("off before the longest on-time is used up, a fault, and a rest before it goes on again", () => {
    const bench = benchIn("on").plan(0, 36_000);
    let onFor = 3;
    while (bench.phase === "on" && onFor < 5000) {
      bench.run(1, onFor / 100);
      onFor++;
    }
    // 60 min less the 10 s that a confirmation may take.
    expect(bench.now.faults).toContain("longest-on");
    expect(onFor).toBeGreaterThan(3580);
    expect(onFor).toBeLessThanOrEqual(3591);
    bench.confirmed("off").run(598, 40);
    expect(bench.phase).toBe("off");
    bench.run(3, 30);
    expect(bench.phase).toBe("saving");
    expect(bench.now.faults).toEqual([]);
  });

  test("on-time adds up over short breaks", () => {
    const bench = benchIn("on").plan(0, 36_000);
    let onFor = 0;
    while (!bench.now.faults.includes("longest-on") && onFor < 10_000) {
      bench.run(600, onFor / 100);
      onFor += 600;
      if (bench.phase !== "on") break;
      bench
        .give({ kind: "plan", plan: null })
        .confirmed("off")
        .run(300, 5)
        .plan(0, 36_000)
        .savedNow()
        .confirmed("on");
    }
    expect(bench.now.faults).toContain("longest-on");
    expect(onFor).toBe(3600);
  });

  test("on-time and rest survive a kill", () => {
    const bench = benchIn("on").pass(1800);
    const next = new Bench();
    next.wall = bench.wall + 600_000;
    next.mono = 5;
    next.give({ kind: "started", saved: bench.saved });
    expect(next.commands).toEqual(["off"]);
    expect(next.now.usedS).toBeCloseTo(2402 * 1.001 + 2, 1);
    next.give({ kind: "device", online: true }).pass(1).confirmed("off");
    const third = new Bench();
    third.mono = 7;
    third.wall = next.wall + 601_600;
    third
      .give({ kind: "started", saved: next.saved })
      .give({ kind: "device", online: true })
      .confirmed("off");
    expect(third.pass(0.5).give({ kind: "tick" }).now.usedS).toBeGreaterThan(2400);
    expect(third.pass(1).give({ kind: "tick" }).now.usedS).toBe(0);
  });

  test("a wall clock that went back over a kill uses up the on-time", () => {
    const bench = benchIn("on").pass(10);
    const next = new Bench();
    next.wall = bench.wall - 3600_000;
    next.give({ kind: "started", saved: bench.saved });
    expect(next.now.usedS).toBe(3600);
  });

  test.each([[{ format: 2 }], ["rubbish"], [null], [{ mayBeOn: false }]])(
    "what was saved and cannot be read locks: %j",
    (saved) => {
      const bench = new Bench().give({ kind: "started", saved });
      expect(bench.orders[0]).toEqual({ do: "command", to: "off" });
      expect(bench.raised).toEqual(["no-confirmation"]);
      bench.give({ kind: "device", online: true }).confirmed("off").plan(0, 3600).run(700);
      expect(bench.phase).toBe("off");
    },
  );

  test("a lock survives a kill", () => {
    const bench = benchIn("on").reading(95).confirmed("off");
    const next = new Bench();
    next.wall = bench.wall + 1000;
    next
      .give({ kind: "started", saved: bench.saved })
      .give({ kind: "device", online: true })
      .confirmed("off");
    next.plan(0, 3600).run(100);
    expect(next.phase).toBe("off");
    expect(next.give({ kind: "acknowledge", fault: "over-temperature" }).phase).toBe("saving");
  });
});

describe("a device with an on-time of its own", () => {
  const sent = switchRules(
    { ...padSwitch, on_time_s: 300, via: { ...overMqtt, say: { ...overMqtt.say, on: "ON {on_time_s}" } } },
    [],
  );
  const fixed = switchRules({ ...padSwitch, on_time_s: 300 }, []);

  test("is renewed at a third of it, and no more once it is off", () => {
    const bench = benchIn("on", sent);
    const times: number[] = [];
    for (let i = 0; i < 350; i++) {
      bench.pass(1).give({ kind: "tick" });
      if (bench.commands.includes("on")) times.push(i + 1);
    }
    expect(times).toEqual([99, 199, 299]);
    bench.give({ kind: "plan", plan: null }).confirmed("off");
    for (let i = 0; i < 400; i++) expect(bench.pass(1).give({ kind: "tick" }).commands).toEqual([]);
  });

  test("never gets an on-time that reaches past the longest", () => {
    const bench = benchIn("on", sent).plan(0, 36_000);
    let last = 0;
    for (let i = 0; i < 3700; i++) {
      bench.pass(1).give({ kind: "tick" });
      for (const order of bench.orders) {
        if (order.do !== "command" || order.to !== "on" || bench.now.onSince === null) continue;
        last = order.onTimeS ?? 0;
        expect(bench.mono - bench.now.onSince.mono + last).toBeLessThanOrEqual(3600);
      }
    }
    expect(last).toBeGreaterThan(0);
    expect(last).toBeLessThan(300);
  });

  test("of fixed length is not renewed past the longest; going off by itself then is no fault", () => {
    const bench = benchIn("on", fixed).plan(0, 36_000);
    let renewed = bench.mono;
    const begun = bench.now.onSince?.mono ?? 0;
    for (let i = 0; i < 3590 && bench.phase === "on"; i++) {
      bench.pass(1).give({ kind: "tick" });
      if (bench.commands.includes("on")) renewed = bench.mono;
      if (bench.mono - renewed >= 299) {
        bench.confirmed("off");
        break;
      }
    }
    expect(renewed + 300 - begun).toBeLessThanOrEqual(3600);
    expect(bench.phase).toBe("off");
    expect(bench.now.faults).not.toContain("switched-by-other");
    expect(bench.run(500).phase).toBe("off");
  });
});

describe("by hand", () => {
  test("on for a time, then off again by itself", () => {
    const bench = benchOff().give({ kind: "by-hand", to: "on", forS: 120 });
    expect(bench.phase).toBe("saving");
    bench.savedNow().confirmed("on").run(118);
    expect(bench.phase).toBe("on");
    expect(bench.run(3).phase).toBe("turning-off");
  });

  test("never longer than the longest on-time", () => {
    const bench = benchOff().give({ kind: "by-hand", to: "on", forS: 1e9 });
    expect(bench.now.byHand?.until).toBe(bench.mono + 3600);
  });

  test("off holds against the plan, over a kill as well", () => {
    const bench = benchIn("on").give({ kind: "by-hand", to: "off", forS: 900 });
    expect(bench.commands).toEqual(["off"]);
    expect(bench.confirmed("off").run(600).phase).toBe("off");
    const next = new Bench();
    next.wall = bench.wall;
    next
      .give({ kind: "started", saved: bench.saved })
      .give({ kind: "device", online: true })
      .confirmed("off");
    next.plan(0, 7200).run(290);
    expect(next.phase).toBe("off");
    expect(next.run(20).phase).toBe("saving");
  });

  test("back to the plan", () => {
    const bench = benchIn("on").give({ kind: "by-hand", to: "off", forS: 900 }).confirmed("off");
    expect(bench.give({ kind: "by-hand", to: "plan", forS: 0 }).phase).toBe("saving");
  });

  test("on is refused while something holds it off, and does not come later by itself", () => {
    const bench = benchOff().pass(1).reading(95).give({ kind: "by-hand", to: "on", forS: 600 });
    expect(bench.refused).toContain("above its limit");
    expect(bench.reading(20).run(60).phase).toBe("off");
  });

  test("on by hand does not come back after a fault, nor after a kill", () => {
    const bench = benchOff().give({ kind: "by-hand", to: "on", forS: 1200 }).savedNow().confirmed("on");
    bench.give({ kind: "device", online: false }).give({ kind: "device", online: true }).confirmed("off");
    expect(bench.run(60).phase).toBe("off");
    const other = benchOff().give({ kind: "by-hand", to: "on", forS: 1200 }).savedNow().confirmed("on");
    const next = new Bench();
    next.wall = other.wall;
    next
      .give({ kind: "started", saved: other.saved })
      .give({ kind: "device", online: true })
      .confirmed("off");
    expect(next.run(120).phase).toBe("off");
  });
});

describe("start and stop", () => {
  test("the first order of every start is off", () => {
    const bench = new Bench().give({ kind: "started", saved: undefined });
    expect(bench.orders[0]).toEqual({ do: "command", to: "off" });
  });

  test("a device that answers late after a start is offline, not locked", () => {
    const bench = new Bench()
      .give({ kind: "started", saved: undefined })
      .give({ kind: "device", online: true });
    bench.run(60);
    expect(bench.now.faults).toEqual(["device-offline"]);
    bench.confirmed("off");
    expect(bench.now.faults).toEqual([]);
  });

  test.each(PHASES)("stop in %s: off, and never on again", (phase) => {
    const bench = benchIn(phase).give({ kind: "stop" });
    expect(bench.commands).toEqual(["off"]);
    bench.confirmed("off").plan(0, 7200).run(100);
    expect(bench.phase).toBe("off");
    expect(bench.give({ kind: "by-hand", to: "on", forS: 60 }).refused).toBe("the server stops");
  });

  test("a device that is not there when the server stops is not locked for it; one that was on is", () => {
    const away = benchOff().give({ kind: "stop" }).run(20);
    expect(away.now.faults).toEqual(["device-offline"]);
    const lost = benchIn("on").give({ kind: "stop" }).run(20);
    expect(lost.now.faults).toContain("no-confirmation");
  });

  test("a fault that ends by itself cannot be acknowledged", () => {
    expect(benchOff().give({ kind: "acknowledge", fault: "probe-lost" }).refused).toContain("ends by itself");
    expect(benchOff().give({ kind: "acknowledge", fault: "probe-stuck" }).refused).toContain(
      "there is no fault",
    );
  });

  test("the first input must be the start", () => {
    expect(() => new Bench().give({ kind: "tick" })).toThrow("invalid input: tick");
  });
});
