import { LOCKING_FAULTS } from "../../src/switching/faults.js";
import {
  isLocking,
  type OnOff,
  type SwitchEvent,
  type SwitchFault,
  type SwitchState,
  stepSwitch,
} from "../../src/switching/index.js";
import type { InputKind } from "../../src/switching/inputs.js";
import {
  CLOCK_STEADY_S,
  CLOCK_TOLERANCE_S,
  REPEAT_LONGEST_S,
  type SwitchRules,
} from "../../src/switching/rules.js";
import type { Phase } from "../../src/switching/state.js";
import type { Transition } from "../../src/switching/table.js";

// A world around the machine that keeps its own books and never looks into the machine's state to judge it.

export type Action =
  | { readonly do: "event"; readonly event: SwitchEvent }
  /** Time in which the machine is given a tick every second. */
  | { readonly do: "ticks"; readonly seconds: number }
  /** Time in which the process hangs. */
  | { readonly do: "hang"; readonly seconds: number }
  | { readonly do: "set clock"; readonly byS: number }
  | { readonly do: "read"; readonly tempC: number; readonly ageS: number }
  | { readonly do: "plan"; readonly fromS: number; readonly toS: number }
  /** Time in which nothing is given: the next input finds it late. */
  | { readonly do: "lapse"; readonly seconds: number }
  /** A plan, and so many answers as come where everything works. */
  | { readonly do: "go on"; readonly answers: number }
  | { readonly do: "acknowledge all" }
  /** What a device and a store that work would answer now. */
  | { readonly do: "good answer" }
  | { readonly do: "save" }
  | { readonly do: "save fails" }
  | { readonly do: "kill"; readonly deadS: number };

interface Taken {
  readonly phase: Phase;
  readonly input: InputKind;
  readonly row: Transition;
}

export class World {
  readonly taken: Taken[] = [];
  onCommands = 0;
  kills = 0;
  private steps = 0;
  private time = 0;
  private monoZero = 0;
  private clockError = 0;
  private state: SwitchState | undefined;
  private durable: unknown;
  private ordered: { id: number; saved: unknown } | undefined;
  /** Own books. */
  private onAllowed = false;
  private stopped = false;
  private powered = false;
  private onFrom: number | undefined;
  private usedS = 0;
  private offFrom: number | undefined;
  private lastOff = 0;
  private locks = new Set<SwitchFault>();
  private plan: { from: number; to: number } | undefined;
  private hand: { to: OnOff; until: number } | undefined;
  private heard: { from: number; at: number; tempC: number } | undefined;
  private online = false;
  private writable = true;
  private steadyFrom = 0;

  constructor(readonly rules: SwitchRules) {
    this.give({ kind: "started", saved: undefined });
  }

  act(action: Action): void {
    if (action.do === "event") this.give(action.event);
    else if (action.do === "ticks") for (let i = 0; i < action.seconds; i++) this.tickAfter(1);
    else if (action.do === "hang") this.tickAfter(action.seconds);
    else if (action.do === "lapse") this.time += action.seconds;
    else if (action.do === "go on") this.goOn(action.answers);
    else if (action.do === "acknowledge all") {
      for (const fault of LOCKING_FAULTS) this.give({ kind: "acknowledge", fault });
    } else if (action.do === "set clock") this.setClock(action.byS);
    else if (action.do === "good answer") this.goodAnswer();
    else if (action.do === "save") this.save();
    else if (action.do === "kill") this.kill(action.deadS);
    else if (action.do === "save fails") {
      this.ordered = undefined;
      this.give({ kind: "store", writable: false });
    } else if (action.do === "read") {
      const { tempC, ageS } = action;
      this.give({ kind: "reading", probe: "sump", at: this.wall - ageS * 1000, tempC });
    } else {
      const [from, to] = [this.wall + action.fromS * 1000, this.wall + action.toS * 1000];
      this.give({ kind: "plan", plan: { from, to, planId: "p" } });
    }
  }

  private goOn(answers: number): void {
    this.act({ do: "plan", fromS: -10, toS: 400 });
    for (let i = 0; i < answers; i++) {
      this.goodAnswer();
      this.tickAfter(1);
    }
  }

  private tickAfter(seconds: number): void {
    this.time += seconds;
    this.give({ kind: "tick" });
  }

  private setClock(byS: number): void {
    this.clockError += byS;
    if (Math.abs(byS) > CLOCK_TOLERANCE_S) {
      this.steadyFrom = this.time + CLOCK_STEADY_S;
      this.heard = undefined;
    }
    this.give({ kind: "tick" });
    // What the clock was set to is written down at once here: a kill within the same instant is left out.
    this.save();
  }

  private get wall(): number {
    return 1_700_000_000_000 + (this.time + this.clockError) * 1000;
  }

  private get mono(): number {
    return this.time - this.monoZero;
  }

  private goodAnswer(): void {
    const { phase } = this.machine;
    this.give({ kind: "device", online: true });
    if (!this.writable) this.give({ kind: "store", writable: true });
    this.give({ kind: "reading", probe: "sump", at: this.wall, tempC: 10 + (this.time % 7) });
    if (phase === "saving") this.save();
    if (phase === "turning-on" || phase === "on") this.give({ kind: "confirmed", is: "on" });
    if (phase === "turning-off") this.give({ kind: "confirmed", is: "off" });
  }

  private save(): void {
    if (this.ordered === undefined) return;
    const { id, saved } = this.ordered;
    this.ordered = undefined;
    this.durable = saved;
    this.give({ kind: "saved", id });
  }

  private kill(deadS: number): void {
    this.kills++;
    this.time += deadS;
    this.monoZero = this.time - 3;
    // A start forgets whatever it is given of a machine before it.
    if (deadS > 0) this.state = undefined;
    this.ordered = undefined;
    this.onAllowed = false;
    this.stopped = false;
    this.powered = false;
    this.plan = undefined;
    this.hand = undefined;
    this.heard = undefined;
    this.online = false;
    this.writable = true;
    this.steadyFrom = this.time;
    const kept = (this.durable as { faults?: SwitchFault[] } | undefined)?.faults ?? [];
    this.locks = new Set(kept.filter(isLocking));
    this.give({ kind: "started", saved: this.durable });
  }

  private get machine(): SwitchState {
    if (this.state === undefined) throw new Error("missing state (expected a started machine)");
    return this.state;
  }

  private give(event: SwitchEvent): void {
    const before = this.state;
    this.note(event);
    const step = stepSwitch(this.rules, before, { ...event, mono: this.mono, wall: this.wall });
    this.state = step.state;
    // As JSON and back: the state must lose nothing by it.
    if (this.steps++ % 16 === 0) {
      const text = JSON.stringify(step.state);
      this.state = JSON.parse(text) as SwitchState;
      must(JSON.stringify(this.state) === text, "the state is plain JSON");
    }
    if (step.transition !== undefined && before !== undefined) {
      this.taken.push({ phase: before.phase, input: event.kind, row: step.transition });
    }
    const raised: SwitchFault[] = [];
    let commandedOff = false;
    const wasPowered = this.powered;
    step.orders.forEach((order, i) => {
      if (event.kind === "started" && i === 0) {
        must(order.do === "command" && order.to === "off", "off is the first order of a start");
      }
      if (order.do === "save")
        this.ordered = { id: order.id, saved: JSON.parse(JSON.stringify(order.saved)) };
      if (order.do === "record" && order.fact.kind === "fault") raised.push(order.fact.fault);
      if (order.do !== "command") return;
      if (order.to === "on") this.checkOn(order.onTimeS);
      else {
        commandedOff = true;
        this.powered = false;
        this.onAllowed = false;
        this.lastOff = this.time;
      }
    });
    for (const fault of raised) if (isLocking(fault)) this.locks.add(fault);
    if (raised.length > 0 && wasPowered) must(commandedOff, `off at the fault ${raised}`);
    this.checkStanding(event.kind);
  }

  /** Takes an event into the world's own books. */
  private note(event: SwitchEvent): void {
    if (event.kind === "plan") this.plan = event.plan ?? undefined;
    if (event.kind === "device") this.online = event.online;
    if (event.kind === "command-failed") this.online = false;
    if (event.kind === "confirmed") this.online = true;
    if (event.kind === "store") this.writable = event.writable;
    if (event.kind === "saved") this.writable = true;
    if (event.kind === "stop") this.stopped = true;
    if (event.kind === "by-hand") {
      this.hand = event.to === "plan" ? undefined : { to: event.to, until: this.time + event.forS };
    }
    if (event.kind === "reading" && (this.heard === undefined || event.at > this.heard.at)) {
      const from = this.time - Math.max(0, (this.wall - event.at) / 1000);
      this.heard = { from, at: event.at, tempC: event.tempC };
    }
    if (event.kind === "acknowledge" && this.machine.phase === "off") this.locks.delete(event.fault);
    if (event.kind === "confirmed" && event.is === "off") this.noteOff();
    if (this.offFrom !== undefined && this.time - this.offFrom >= this.rules.restS) this.usedS = 0;
  }

  private noteOff(): void {
    // An off heard while on is being commanded may be an old one: it proves nothing.
    if (this.machine.phase === "turning-on") return;
    this.powered = false;
    if (this.onFrom !== undefined) {
      this.usedS += this.time - this.onFrom;
      this.onFrom = undefined;
      this.offFrom = this.time;
    }
    this.onAllowed = true;
  }

  /** Everything that must be true when on is commanded, renewed as well. */
  private checkOn(onTimeS: number | undefined): void {
    this.onCommands++;
    must(this.onAllowed, "off confirmed since the last off command");
    must(!this.stopped, "not on after stop");
    must(this.locks.size === 0, `not on while locked by ${[...this.locks]}`);
    must((this.durable as { mayBeOn?: boolean } | undefined)?.mayBeOn === true, "written down before on");
    this.powered = true;
    this.onFrom ??= this.time;
    this.offFrom = undefined;
    const reaches = this.usedS + this.time - this.onFrom + (onTimeS ?? 0);
    must(reaches <= this.rules.longestOnS + 1e-6, `no on-time that reaches to ${reaches} s`);
  }

  private checkStanding(after: string): void {
    if (!this.powered) {
      const waits = this.machine.phase === "turning-off" ? this.time - this.lastOff : 0;
      must(waits <= REPEAT_LONGEST_S, `off repeated, not silent for ${waits} s (${after})`);
      return;
    }
    const { heard, hand, plan } = this;
    const onForS = this.usedS + this.time - (this.onFrom ?? this.time);
    must(onForS <= this.rules.longestOnS, `not on for ${onForS} s (${after})`);
    must(this.online && this.writable, "not on without link and store");
    must(this.time >= this.steadyFrom, "not on while the clock is not steady");
    const guard = this.rules.guards[0];
    if (guard !== undefined) {
      const heardAgoS = heard === undefined ? Number.POSITIVE_INFINITY : this.time - heard.from;
      must((heard?.tempC ?? Number.NaN) <= guard.atMostC, "not on above the limit of a probe");
      must(heardAgoS <= guard.silentAfterS + 1e-6, "not on with a silent probe");
    }
    const byPlan = plan !== undefined && plan.from <= this.wall && this.wall < plan.to;
    const onByHand = hand !== undefined && hand.to === "on" && this.time <= hand.until;
    const offByHand = hand !== undefined && hand.to === "off" && this.time < hand.until;
    must((byPlan && !offByHand) || onByHand, `not on unless wanted (${after})`);
  }
}

/** Much cheaper than an assertion library over millions of steps. */
function must(holds: boolean, text: string): void {
  if (!holds) throw new Error(`broken: ${text}`);
}
