import { type Finding, finding } from "../findings/index.js";
import type { HeaterSwitch } from "../logbook/index.js";
import {
  type DurableState,
  durableOf,
  type Guard,
  type OnOff,
  type PlanWindow,
  type SwitchEvent,
  type SwitchFact,
  type SwitchFault,
  type SwitchOrder,
  type SwitchStanding,
  type SwitchState,
  standingOf,
  stepSwitch,
  switchRules,
} from "../switching/index.js";
import { type Clock, errorText, type Log, type SwitchDevice } from "./device.js";
import { createSaver } from "./saver.js";

export interface SwitchKeeperOptions {
  readonly switch: HeaterSwitch;
  /** The probes that watch what it heats. */
  readonly guards: readonly Guard[];
  readonly device: SwitchDevice;
  readonly clock: Clock;
  /** What saveState was given last, by any process; undefined when it never was. */
  readonly saved: unknown;
  /** Must be durable when it resolves: synced to the disk. */
  readonly saveState: (saved: DurableState) => Promise<void>;
  /** Writes a fact into the logbook. */
  readonly record: (fact: SwitchFact) => Promise<void> | void;
  readonly onLog?: Log;
  /** After every input that changed the phase or what holds it off. */
  readonly onChange?: (standing: SwitchStanding) => void;
}

export interface SwitchKeeper {
  plan(plan: PlanWindow | null): void;
  /** `time`: [ms] since 1970 UTC. Readings of other probes do no harm. */
  reading(reading: { readonly probe: string; readonly time: number; readonly tempC: number }): void;
  /** Gives the reason when it is refused. */
  byHand(to: OnOff | "plan", forS: number): Finding | undefined;
  /** Gives the reason when it is refused. */
  acknowledge(fault: SwitchFault): Finding | undefined;
  /** Something else could not be written down: off until a save succeeds. */
  storeFailed(): void;
  standing(): SwitchStanding;
  state(): SwitchState;
  /** Off, at most so long until it is confirmed; else the link is cut, so that the broker says off. */
  stop(withinS?: number): Promise<{ readonly confirmedOff: boolean }>;
}

const TICK_MS = 1000;
/** [s] Project judgement: long enough for a few repetitions, short enough for a service manager that kills after 90 s. */
const STOP_WITHIN_S = 20;
/** [s] No save counts as proof so soon after something could not be written down. Project judgement. */
const DISTRUST_S = 60;

/** The shell around the machine for one switch: gives it its inputs and carries out its orders. */
export function createSwitchKeeper(options: SwitchKeeperOptions): SwitchKeeper {
  return new SwitchShell(options);
}

class SwitchShell implements SwitchKeeper {
  private readonly rules;
  private readonly saver;
  private readonly queue: SwitchEvent[] = [];
  private current: SwitchState | undefined;
  private busy = false;
  private broken: Finding | undefined;
  private shown = "";
  private distrustUntil = Number.NEGATIVE_INFINITY;
  private proof: NodeJS.Timeout | undefined;
  private readonly stopped: (() => void)[] = [];
  private readonly endTicks: () => void;

  constructor(private readonly options: SwitchKeeperOptions) {
    const { device, clock, saveState } = options;
    this.rules = switchRules(options.switch, options.guards);
    this.saver = createSaver({
      saveState,
      onSaved: (id) => {
        if (clock.monotonicS() >= this.distrustUntil) this.give({ kind: "saved", id });
      },
      onFailed: (error) => {
        this.log("error", `its state cannot be saved: ${errorText(error)}`);
        this.give({ kind: "store", writable: false });
      },
    });
    this.give({ kind: "started", saved: options.saved });
    device.onLink((online) => void this.give({ kind: "device", online }));
    device.onState((is) => void this.give({ kind: "confirmed", is }));
    this.endTicks = clock.every(TICK_MS, () => void this.give({ kind: "tick" }));
  }

  plan(plan: PlanWindow | null): void {
    this.give({ kind: "plan", plan });
  }

  reading({ probe, time, tempC }: Parameters<SwitchKeeper["reading"]>[0]): void {
    this.give({ kind: "reading", probe, at: time, tempC });
  }

  byHand(to: OnOff | "plan", forS: number): Finding | undefined {
    return this.give({ kind: "by-hand", to, forS });
  }

  acknowledge(fault: SwitchFault): Finding | undefined {
    return this.give({ kind: "acknowledge", fault });
  }

  storeFailed(): void {
    this.distrustUntil = this.options.clock.monotonicS() + DISTRUST_S;
    this.give({ kind: "store", writable: false });
    // The proof that it can be written again is a save that succeeds, but not at once: else a store that takes states
    // and refuses events would have the heater go on and off all the time.
    clearTimeout(this.proof);
    this.proof = setTimeout(() => {
      const state = this.current;
      if (state !== undefined) this.saver.save(state.saveId, durableOf(state));
    }, DISTRUST_S * 1000);
    this.proof.unref();
  }

  standing(): SwitchStanding {
    const standing = standingOf(this.rules, this.state());
    return this.broken === undefined ? standing : { ...standing, holds: [this.broken, ...standing.holds] };
  }

  state(): SwitchState {
    if (this.current === undefined) throw new Error("missing state (expected a started switch)");
    return this.current;
  }

  async stop(withinS = STOP_WITHIN_S): Promise<{ readonly confirmedOff: boolean }> {
    const { clock, device } = this.options;
    let endWaiting = () => {};
    const confirmedOff = await new Promise<boolean>((resolve) => {
      this.stopped.push(() => resolve(true));
      const from = clock.monotonicS();
      endWaiting = clock.every(TICK_MS / 4, () => {
        if (clock.monotonicS() - from >= withinS) resolve(false);
      });
      this.give({ kind: "stop" });
    });
    endWaiting();
    this.endTicks();
    clearTimeout(this.proof);
    await Promise.race([this.saver.settled(), new Promise((resolve) => setTimeout(resolve, 2000))]);
    this.saver.close();
    await device.close({ abrupt: !confirmedOff });
    if (!confirmedOff) this.log("error", "stopped, but off was not confirmed");
    return { confirmedOff };
  }

  /** Takes an input; gives the reason when a person's wish was refused. */
  private give(event: SwitchEvent): Finding | undefined {
    this.queue.push(event);
    if (this.busy) return undefined;
    this.busy = true;
    let refusal: Finding | undefined;
    try {
      for (let next = this.queue.shift(); next !== undefined; next = this.queue.shift())
        refusal = this.one(next) ?? refusal;
    } finally {
      this.busy = false;
    }
    return refusal;
  }

  private one(event: SwitchEvent): Finding | undefined {
    if (this.broken !== undefined) {
      // Of a machine that failed nothing is believed any more: off, again and again, until somebody restarts it.
      if (event.kind === "tick" || event.kind === "device" || event.kind === "stop") this.send("off");
      return this.broken;
    }
    const { clock } = this.options;
    try {
      const input = { ...event, mono: clock.monotonicS(), wall: clock.wallMs() };
      const step = stepSwitch(this.rules, this.current, input);
      this.current = step.state;
      let refusal: Finding | undefined;
      for (const order of step.orders) refusal = this.carryOut(order) ?? refusal;
      this.show(step.state);
      return refusal;
    } catch (error) {
      this.broken = finding("switching-failed", { error: errorText(error) });
      this.send("off");
      this.log("error", `the switching failed: ${errorText(error)}`);
      return this.broken;
    }
  }

  private carryOut(order: SwitchOrder): Finding | undefined {
    if (order.do === "command") this.send(order.to, order.onTimeS);
    else if (order.do === "save") this.saver.save(order.id, order.saved);
    else if (order.do === "refuse") return order.reason;
    else this.note(order.fact);
    return undefined;
  }

  private send(to: OnOff, onTimeS?: number): void {
    // Asynchronous even where the device is not: an input must not come out of the middle of another.
    Promise.resolve()
      .then(() => this.options.device.command(to, onTimeS === undefined ? {} : { onTimeS }))
      .catch((error) => {
        this.log("warning", `${to} could not be commanded: ${errorText(error)}`);
        this.give({ kind: "command-failed", to });
      });
  }

  private note(fact: SwitchFact): void {
    Promise.resolve()
      .then(() => this.options.record(fact))
      .catch((error) => {
        this.log("error", `cannot be written into the logbook: ${errorText(error)}`);
        this.storeFailed();
      });
  }

  private show(now: SwitchState): void {
    const standing = standingOf(this.rules, now);
    const text = JSON.stringify(standing);
    if (text === this.shown) return;
    this.shown = text;
    this.options.onChange?.(standing);
    if (now.stopped && now.phase === "off") for (const done of this.stopped.splice(0)) done();
  }

  private log(level: "warning" | "error", text: string): void {
    this.options.onLog?.(level, `${this.options.switch.id}: ${text}`);
  }
}
