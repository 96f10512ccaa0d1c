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
  const { device, clock, onLog } = options;
  const rules = switchRules(options.switch, options.guards);
  const queue: SwitchEvent[] = [];
  let state: SwitchState | undefined;
  let busy = false;
  let broken: Finding | undefined;
  let shown = "";
  let distrustUntil = Number.NEGATIVE_INFINITY;
  let proof: NodeJS.Timeout | undefined;
  const stopped: (() => void)[] = [];

  const saver = createSaver({
    saveState: options.saveState,
    onSaved: (id) => {
      if (clock.monotonicS() >= distrustUntil) give({ kind: "saved", id });
    },
    onFailed: (error) => {
      onLog?.("error", `${options.switch.id}: its state cannot be saved: ${errorText(error)}`);
      give({ kind: "store", writable: false });
    },
  });

  /** Takes an input; gives the reason when a person's wish was refused. */
  function give(event: SwitchEvent): Finding | undefined {
    queue.push(event);
    if (busy) return undefined;
    busy = true;
    let refusal: Finding | undefined;
    try {
      for (let next = queue.shift(); next !== undefined; next = queue.shift()) refusal = one(next) ?? refusal;
    } finally {
      busy = false;
    }
    return refusal;
  }

  function one(event: SwitchEvent): Finding | undefined {
    if (broken !== undefined) {
      // Of a machine that failed nothing is believed any more: off, again and again, until somebody restarts it.
      if (event.kind === "tick" || event.kind === "device" || event.kind === "stop") send("off");
      return broken;
    }
    try {
      const step = stepSwitch(rules, state, { ...event, mono: clock.monotonicS(), wall: clock.wallMs() });
      state = step.state;
      let refusal: Finding | undefined;
      for (const order of step.orders) refusal = carryOut(order) ?? refusal;
      show(step.state);
      return refusal;
    } catch (error) {
      broken = finding("switching-failed", { error: errorText(error) });
      send("off");
      onLog?.("error", `${options.switch.id}: the switching failed: ${errorText(error)}`);
      return broken;
    }
  }

  function carryOut(order: SwitchOrder): Finding | undefined {
    if (order.do === "command") send(order.to, order.onTimeS);
    else if (order.do === "save") saver.save(order.id, order.saved);
    else if (order.do === "refuse") return order.reason;
    else note(order.fact);
    return undefined;
  }

  function send(to: OnOff, onTimeS?: number): void {
    // Asynchronous even where the device is not: an input must not come out of the middle of another.
    Promise.resolve()
      .then(() => device.command(to, onTimeS === undefined ? {} : { onTimeS }))
      .catch((error) => {
        onLog?.("warning", `${options.switch.id}: ${to} could not be commanded: ${errorText(error)}`);
        give({ kind: "command-failed", to });
      });
  }

  function note(fact: SwitchFact): void {
    Promise.resolve()
      .then(() => options.record(fact))
      .catch((error) => {
        onLog?.("error", `${options.switch.id}: cannot be written into the logbook: ${errorText(error)}`);
        storeFailed();
      });
  }

  function storeFailed(): void {
    distrustUntil = clock.monotonicS() + DISTRUST_S;
    give({ kind: "store", writable: false });
    // The proof that it can be written again is a save that succeeds, but not at once: else a store that takes states
    // and refuses events would have the heater go on and off all the time.
    clearTimeout(proof);
    proof = setTimeout(() => {
      if (state !== undefined) saver.save(state.saveId, durableOf(state));
    }, DISTRUST_S * 1000);
    proof.unref();
  }

  function show(now: SwitchState): void {
    const standing = standingOf(rules, now);
    const text = JSON.stringify(standing);
    if (text === shown) return;
    shown = text;
    options.onChange?.(standing);
    if (now.stopped && now.phase === "off") for (const done of stopped.splice(0)) done();
  }

  give({ kind: "started", saved: options.saved });
  device.onLink((online) => void give({ kind: "device", online }));
  device.onState((is) => void give({ kind: "confirmed", is }));
  const endTicks = clock.every(TICK_MS, () => void give({ kind: "tick" }));

  return {
    plan: (plan) => void give({ kind: "plan", plan }),
    reading: ({ probe, time, tempC }) => void give({ kind: "reading", probe, at: time, tempC }),
    byHand: (to, forS) => give({ kind: "by-hand", to, forS }),
    acknowledge: (fault) => give({ kind: "acknowledge", fault }),
    storeFailed,
    standing: () => {
      const standing = standingOf(rules, started());
      return broken === undefined ? standing : { ...standing, holds: [broken, ...standing.holds] };
    },
    state: started,
    async stop(withinS = STOP_WITHIN_S) {
      let endWaiting = () => {};
      const confirmedOff = await new Promise<boolean>((resolve) => {
        stopped.push(() => resolve(true));
        const from = clock.monotonicS();
        endWaiting = clock.every(TICK_MS / 4, () => {
          if (clock.monotonicS() - from >= withinS) resolve(false);
        });
        give({ kind: "stop" });
      });
      endWaiting();
      endTicks();
      clearTimeout(proof);
      await Promise.race([saver.settled(), new Promise((resolve) => setTimeout(resolve, 2000))]);
      saver.close();
      await device.close({ abrupt: !confirmedOff });
      if (!confirmedOff) onLog?.("error", `${options.switch.id}: stopped, but off was not confirmed`);
      return { confirmedOff };
    },
  };

  function started(): SwitchState {
    if (state === undefined) throw new Error("missing state (expected a started switch)");
    return state;
  }
}
