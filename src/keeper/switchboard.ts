import { randomUUID } from "node:crypto";
import { isDeepStrictEqual } from "node:util";
import { isoOf } from "../base/index.js";
import {
  type Clock,
  createSwitchKeeper,
  errorText,
  type Log,
  SWITCH_DRIVERS,
  type SwitchDriver,
  type SwitchKeeper,
} from "../devices/index.js";
import { type Finding, finding } from "../findings/index.js";
import {
  type BaseSetUp,
  type BaseState,
  type HeaterSwitch,
  type LogbookEvent,
  type ProbeReading,
  unsafeSwitches,
} from "../logbook/index.js";
import type { HandOutcome, HandSwitching } from "../server/index.js";
import type { Store } from "../store/index.js";
import { canBeToldOff, isLocking, type SwitchFact, type SwitchFault } from "../switching/index.js";
import { english } from "../words/index.js";
import { type GuardedSwitch, guardedSwitches } from "./guards.js";
import type { SwitchWindow } from "./windows.js";

/** All switches of the base: each with its own machine, all hearing what the base knows. */
export interface Switchboard {
  /** Takes on the switches of a set-up; one that is changed or gone is switched off first. */
  setUp(base: BaseSetUp): void;
  plan(windows: readonly SwitchWindow[]): void;
  read(reading: ProbeReading): void;
  /** Something could not be written down. */
  storeFailed(): void;
  byHand(order: HandSwitching): Promise<HandOutcome>;
  acknowledge(fault: string, by: string): Promise<HandOutcome>;
  /** Why heaters cannot be switched. */
  troubles(): readonly Finding[];
  /** All off; whether every one confirmed it within [s] by the base's clock. */
  stop(withinS: number): Promise<boolean>;
}

export interface SwitchboardOptions {
  readonly store: Pick<Store, "saveState" | "loadState">;
  readonly brokerUrl: string;
  /** Begins the names under which switches are known to the broker. */
  readonly clientId: string;
  readonly clock: Clock;
  readonly state: () => BaseState | undefined;
  /** Writes an event down; it is kept until it can be. */
  readonly record: (event: LogbookEvent) => void;
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly onLog: Log;
}

interface Place {
  readonly guarded: GuardedSwitch;
  readonly text: string;
  /** Why it must not put a heater on; it is told off all the same. */
  readonly unsafe: Finding | undefined;
  keeper?: SwitchKeeper;
  trouble?: Finding;
  window: SwitchWindow | undefined;
}

/** [min] by hand, where nothing is said; project judgement. Off holds through a night, on is short. */
const ON_BY_HAND = 60;
const OFF_BY_HAND = 12 * 60;
/** [s] a switch that is changed or taken out may take to confirm that it is off. */
const LEAVE_WITHIN = 20;

export function createSwitchboard(options: SwitchboardOptions): Switchboard {
  return new Board(options);
}

class Board implements Switchboard {
  private readonly places = new Map<string, Place>();
  private readonly openFaults = new Map<string, string>();
  private readonly leaving = new Set<Promise<unknown>>();
  private stopping = false;

  constructor(private readonly options: SwitchboardOptions) {}

  setUp(base: BaseSetUp): void {
    if (this.stopping) return;
    const wanted = new Map(guardedSwitches(base).map((guarded) => [nameOf(guarded), guarded]));
    const unsafe = unsafeSwitches(base);
    for (const [name, place] of this.places) {
      const guarded = wanted.get(name);
      const isSame = guarded !== undefined && JSON.stringify(guarded) === place.text;
      if (isSame && isDeepStrictEqual(unsafe.get(name), place.unsafe)) continue;
      this.places.delete(name);
      this.leave(name, place);
    }
    for (const [name, guarded] of wanted) {
      if (this.places.has(name)) continue;
      const text = JSON.stringify(guarded);
      const place: Place = { guarded, text, unsafe: unsafe.get(name), window: undefined };
      this.places.set(name, place);
      void this.begin(name, place);
    }
  }

  plan(windows: readonly SwitchWindow[]): void {
    const byName = new Map(windows.map((window) => [`${window.aircraft}/${window.switch}`, window]));
    for (const [name, place] of this.places) {
      const window = byName.get(name);
      if (JSON.stringify(window) === JSON.stringify(place.window)) continue;
      place.window = window;
      place.keeper?.plan(windowOf(place));
    }
  }

  read(reading: ProbeReading): void {
    for (const { guarded, keeper } of this.places.values()) {
      if (guarded.aircraft === reading.aircraft) keeper?.reading(reading);
    }
  }

  storeFailed(): void {
    for (const { keeper } of this.places.values()) keeper?.storeFailed();
  }

  async byHand({ aircraft, switch: id, to, minutes, by }: HandSwitching): Promise<HandOutcome> {
    const place = this.places.get(`${aircraft}/${id}`);
    if (place === undefined) return { status: "unknown" };
    if (to === "on" && place.unsafe !== undefined) return { status: "refused", reason: place.unsafe };
    if (place.keeper === undefined) {
      const reason = place.trouble ?? place.unsafe ?? finding("switch-not-ready", {});
      return { status: "refused", reason };
    }
    this.options.onLog("info", `${aircraft}/${id}: ${to} by hand, asked by ${by}`);
    return outcomeOf(place.keeper.byHand(to, 60 * (minutes ?? (to === "on" ? ON_BY_HAND : OFF_BY_HAND))));
  }

  async acknowledge(id: string, by: string): Promise<HandOutcome> {
    const state = this.options.state();
    const ofAircraft = [...(state?.aircraft.values() ?? [])].flatMap(({ faults }) => faults);
    const fault = [...(state?.faults ?? []), ...ofAircraft].find((one) => one.id === id);
    if (fault === undefined) return { status: "unknown" };
    const place =
      fault.switch === undefined ? undefined : this.places.get(`${fault.aircraft}/${fault.switch}`);
    const code = fault.fault as SwitchFault;
    // The machine clears what it still holds; what it no longer knows is only cleared in the logbook.
    if (place?.keeper?.state().faults.includes(code)) {
      if (isLocking(code)) return outcomeOf(place.keeper.acknowledge(code));
      return { status: "refused", reason: finding("fault-ends-itself", { fault: code }) };
    }
    const { record, clock } = this.options;
    record({ kind: "fault-cleared", id: randomUUID(), at: isoOf(clock.wallMs()), by, of: id });
    return { status: "done" };
  }

  troubles(): readonly Finding[] {
    return [...this.places].flatMap(([name, { keeper, trouble, unsafe }]) => {
      if (trouble !== undefined) return [trouble];
      if (unsafe !== undefined) return [finding("switch-stays-off", { switch: name, reason: unsafe })];
      const answers = keeper?.state().online === true;
      return answers ? [] : [finding("switch-no-answer", { switch: name })];
    });
  }

  async stop(withinS: number): Promise<boolean> {
    this.stopping = true;
    const keepers = [...this.places.values()].flatMap(({ keeper }) => keeper ?? []);
    const results = await Promise.all(keepers.map((keeper) => keeper.stop(withinS)));
    await Promise.allSettled(this.leaving);
    return results.every(({ confirmedOff }) => confirmedOff);
  }

  private leave(name: string, { keeper }: Place): void {
    if (keeper === undefined) return;
    const left = keeper.stop(LEAVE_WITHIN).then(({ confirmedOff }) => {
      if (!confirmedOff)
        this.options.onLog("error", `${name} was taken out, but did not confirm that it is off`);
    });
    this.leaving.add(left);
    void left.finally(() => this.leaving.delete(left));
  }

  private async begin(name: string, place: Place): Promise<void> {
    const { store, clock, onLog, brokerUrl, clientId, environment } = this.options;
    const { guarded, unsafe } = place;
    if (unsafe !== undefined) onLog("error", `${name} stays off: ${english(unsafe)}`);
    // Where off, or asking for the state, could mean on it is best left alone.
    if (!canBeToldOff(guarded.switch)) return;
    try {
      // The switch that was here before has to be off and gone: both would be one client to the broker.
      await Promise.allSettled(this.leaving);
      const saved = await store.loadState(stateKey(name));
      if (this.places.get(name) !== place || this.stopping) return;
      const link = { brokerUrl, clientId: `${clientId}-${name.replace("/", "-")}`, environment, onLog };
      place.keeper = createSwitchKeeper({
        switch: guarded.switch,
        guards: guarded.guards,
        device: driverOf(guarded.switch).connect(guarded.switch, link),
        clock,
        saved,
        onLog,
        saveState: (state) => store.saveState(stateKey(name), state),
        record: (fact) => this.note(guarded, fact),
      });
      place.keeper.plan(windowOf(place));
    } catch (error) {
      place.trouble = finding("switch-cannot-be-used", { switch: name, error: errorText(error) });
      onLog("error", english(place.trouble));
    }
  }

  /** Writes down what a switch did or met. */
  private note({ aircraft, switch: { id } }: GuardedSwitch, fact: SwitchFact): void {
    const { record, clock } = this.options;
    const common = { id: randomUUID(), at: isoOf(clock.wallMs()), by: "keeper" };
    const of = { ...common, aircraft, switch: id };
    if (fact.kind !== "fault-cleared") {
      if (fact.kind === "fault") this.openFaults.set(`${aircraft}/${id} ${fact.fault}`, of.id);
      record({ ...of, ...fact });
      return;
    }
    const key = `${aircraft}/${id} ${fact.fault}`;
    const fault = this.openFaults.get(key) ?? this.openFault(aircraft, id, fact.fault);
    this.openFaults.delete(key);
    if (fault !== undefined) record({ ...common, kind: "fault-cleared", of: fault });
  }

  private openFault(aircraft: string, id: string, code: SwitchFault): string | undefined {
    const faults = this.options.state()?.aircraft.get(aircraft)?.faults ?? [];
    return faults.find((fault) => fault.switch === id && fault.fault === code)?.id;
  }
}

function outcomeOf(refusal: Finding | undefined): HandOutcome {
  return refusal === undefined ? { status: "done" } : { status: "refused", reason: refusal };
}

function windowOf({ window, unsafe }: Place) {
  return window === undefined || unsafe !== undefined
    ? null
    : { from: window.from, to: window.to, planId: window.planId };
}

function nameOf({ aircraft, switch: { id } }: GuardedSwitch): string {
  return `${aircraft}/${id}`;
}

function driverOf({ id, via: { kind } }: HeaterSwitch): SwitchDriver {
  const driver = SWITCH_DRIVERS.find((one) => one.kind === kind);
  if (driver === undefined) throw new Error(`unknown kind: ${kind} (of the switch ${id})`);
  return driver;
}

function stateKey(name: string): string {
  return `switch:${name}`;
}
