import type { SwitchDescription } from "../../src/switching/description.js";
import {
  type OnOff,
  type SwitchEvent,
  type SwitchFault,
  type SwitchOrder,
  type SwitchState,
  stepSwitch,
  switchRules,
} from "../../src/switching/index.js";
import type { SwitchVia } from "../../src/switching/protocols/index.js";
import type { SwitchRules } from "../../src/switching/rules.js";
import type { Phase } from "../../src/switching/state.js";
import { english } from "../../src/words/index.js";

// One switch on a bench: both clocks run together unless a test steps them.

const START_WALL = Date.UTC(2026, 0, 14, 3);

export const overMqtt: Extract<SwitchVia, { kind: "mqtt" }> = {
  kind: "mqtt",
  say: { topic: "hangar/lynx/pad/set", on: "ON", off: "OFF" },
  hear: { topic: "hangar/lynx/pad/state", on: "ON", off: "OFF" },
};

export const padSwitch: SwitchDescription = {
  id: "pad",
  longest_on_min: 60,
  rest_min: 10,
  confirm_within_s: 10,
  via: overMqtt,
};

const padRules = switchRules(padSwitch, [{ probe: "sump", atMostC: 90, silentAfterS: 120 }]);

export class Bench {
  mono = 1000;
  wall = START_WALL;
  state: SwitchState | undefined;
  /** Of the last step. */
  orders: readonly SwitchOrder[] = [];
  saved: unknown;

  constructor(readonly rules: SwitchRules = padRules) {}

  give(event: SwitchEvent): this {
    const step = stepSwitch(this.rules, this.state, { ...event, mono: this.mono, wall: this.wall });
    this.state = step.state;
    this.orders = step.orders;
    for (const order of step.orders)
      if (order.do === "save") this.saved = JSON.parse(JSON.stringify(order.saved));
    return this;
  }

  pass(seconds: number): this {
    this.mono += seconds;
    this.wall += seconds * 1000;
    return this;
  }

  /** Ticks once a second, with the guarding probe speaking every 20 s, each time a little different. */
  run(seconds: number, tempC = 20): this {
    for (let i = 0; i < seconds; i++) {
      this.pass(1).give({ kind: "tick" });
      if (i % 20 === 0) this.reading(tempC + (i % 40) / 100);
    }
    return this;
  }

  reading(tempC: number): this {
    return this.give({ kind: "reading", probe: "sump", at: this.wall, tempC });
  }

  confirmed(is: OnOff): this {
    return this.give({ kind: "confirmed", is });
  }

  plan(fromS: number, toS: number): this {
    return this.give({
      kind: "plan",
      plan: { from: this.wall + fromS * 1000, to: this.wall + toS * 1000, planId: "p1" },
    });
  }

  savedNow(): this {
    return this.give({ kind: "saved", id: this.now.saveId });
  }

  get now(): SwitchState {
    if (this.state === undefined) throw new Error("missing state (expected a started bench)");
    return this.state;
  }

  get phase(): Phase {
    return this.now.phase;
  }

  get commands(): readonly OnOff[] {
    return this.orders.flatMap((order) => (order.do === "command" ? [order.to] : []));
  }

  get raised(): readonly SwitchFault[] {
    return this.orders.flatMap((order) =>
      order.do === "record" && order.fact.kind === "fault" ? [order.fact.fault] : [],
    );
  }

  get cleared(): readonly SwitchFault[] {
    return this.orders.flatMap((order) =>
      order.do === "record" && order.fact.kind === "fault-cleared" ? [order.fact.fault] : [],
    );
  }

  get refused(): string | undefined {
    for (const order of this.orders) if (order.do === "refuse") return english(order.reason);
    return undefined;
  }
}

/** Started, linked, confirmed off, the probe heard: ready for a plan. */
export function benchOff(rules = padRules): Bench {
  return new Bench(rules)
    .give({ kind: "started", saved: undefined })
    .give({ kind: "device", online: true })
    .reading(-20)
    .pass(1)
    .confirmed("off");
}

export function benchIn(phase: Phase, rules = padRules): Bench {
  const bench = benchOff(rules);
  if (phase === "off") return bench;
  bench.pass(1).plan(0, 7200);
  if (phase === "saving") return bench;
  bench.pass(1).savedNow();
  if (phase === "turning-on") return bench;
  bench.pass(1).confirmed("on");
  if (phase === "on") return bench;
  return bench.pass(1).give({ kind: "plan", plan: null });
}
