import type { SwitchDevice } from "../../src/devices/device.js";
import type { Clock } from "../../src/devices/index.js";
import type { OnOff } from "../../src/switching/index.js";

/** A clock that a test steps: time passes only when told, and the wall clock can be set. */
export class SteppedClock implements Clock {
  private mono = 5000;
  private wall = Date.UTC(2026, 0, 14, 3);
  private readonly timers = new Set<{ every: number; next: number; run: () => void }>();

  monotonicS(): number {
    return this.mono;
  }

  wallMs(): number {
    return this.wall;
  }

  every(ms: number, run: () => void): () => void {
    const timer = { every: ms / 1000, next: this.mono + ms / 1000, run };
    this.timers.add(timer);
    return () => void this.timers.delete(timer);
  }

  set(byMs: number): void {
    this.wall += byMs;
  }

  /** Passes in quarters of a second, so that every timer runs and what is asynchronous gets its turn. */
  async pass(seconds: number): Promise<void> {
    for (let i = 0; i < seconds * 4; i++) {
      this.mono += 0.25;
      this.wall += 250;
      for (const timer of [...this.timers]) {
        if (this.mono < timer.next) continue;
        timer.next += timer.every;
        timer.run();
      }
      await settled();
    }
  }
}

/** Lets promises that wait for nothing run. */
export function settled(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}

/** A device under a test's thumb. */
export class FakeDevice implements SwitchDevice {
  readonly commands: string[] = [];
  closed: "no" | "with a goodbye" | "abruptly" = "no";
  fails = false;
  /** Confirms every command at once. */
  obeys = true;
  on = false;
  private sayState: (is: OnOff) => void = () => {};
  private sayLink: (online: boolean) => void = () => {};

  async command(to: OnOff, { onTimeS }: { readonly onTimeS?: number } = {}): Promise<void> {
    this.commands.push(onTimeS === undefined ? to : `${to} ${onTimeS}`);
    if (this.fails) throw new Error("no link to the broker");
    this.on = to === "on";
    if (this.obeys) this.sayState(to);
  }

  onState(hear: (is: OnOff) => void): void {
    this.sayState = hear;
  }

  onLink(hear: (online: boolean) => void): void {
    this.sayLink = hear;
  }

  async close({ abrupt = false } = {}): Promise<void> {
    this.closed = abrupt ? "abruptly" : "with a goodbye";
  }

  says(is: OnOff): void {
    this.sayState(is);
  }

  link(online: boolean): void {
    this.sayLink(online);
  }
}
